// A lot that two suppliers use alike is asked about, not taken for unknown.
#include <QJsonArray>
#include <QJsonDocument>

#include "program.h"

using namespace lardiner::command;
using namespace Qt::StringLiterals;

namespace {

// The morning's receipts, and milk under the lot of the butter.
struct SharedLot {
  Folder folder;

  SharedLot() {
    folder.copy_book(kDemoKitchen, "kitchen");
    REQUIRE(lardiner({"record", kDemoKitchen + "/events/morning.csv"}).status == 0);
    const Ran milk =
        lardiner({"record", "event=received", "lot=MB-5521", "item=milk-whole", "quantity=12 gal", "count=3",
                  "kind=case", "state=chilled", "temperature=39 °F", "use_by=2027-01-27", "place=walk-in 1",
                  "from=Meadowfold Dairy", "note=MF-20990", "accepted=yes", "by=RT", "at=2026-11-25 05:30"});
    INFO(milk.err.toStdString());
    REQUIRE(milk.status == 0);
  }

  Ran lardiner(const QStringList& rest) const {
    return folder.lardiner(QStringList{"--kitchen", "kitchen", "--at", "2026-11-25T21:45"} + rest);
  }
};

const QString kWhich = QStringLiteral("lot MB-5521 is of butter-unsalted and of milk-whole");
const QString kAsk = kWhich + "\n  name one of them with --item\n";
const QString kTheirs = QStringLiteral("https://id.example.org/01/04006381333931/10/MB-5521");

}  // namespace

TEST_CASE("a lot of two items is told with both, and opens the one that is named", "[command][scan]") {
  const SharedLot kitchen;
  const Ran both = kitchen.lardiner({"scan", "mb-5521"});
  CHECK(both.status == 1);
  CHECK(both.out == kWhich + u'\n');
  CHECK(both.err == kAsk);
  const Ran milk = kitchen.lardiner({"scan", "mb-5521", "--item", "milk-whole"});
  CHECK(milk.status == 0);
  CHECK(milk.err == "");
  CHECK(milk.out.startsWith("lot MB-5521\nWhole milk, lot MB-5521, received "));
  CHECK(kitchen.lardiner({"scan", "MB-5521", "--item", "butter-unsalted"})
            .out.contains("Unsalted butter, lot MB-5521, received "));
}

TEST_CASE("a supplier's code of a lot of two items is asked about too", "[command][scan]") {
  const SharedLot kitchen;
  const QString what = "a GS1 Digital Link of https://id.example.org: item number 04006381333931, lot MB-5521";
  const Ran both = kitchen.lardiner({"scan", kTheirs});
  CHECK(both.status == 1);
  CHECK(both.out == what + u'\n');
  CHECK(both.err == kAsk);
  const Ran json = kitchen.lardiner({"--json", "scan", kTheirs, "--item", "milk-whole"});
  CHECK(json.status == 0);
  CHECK(QJsonDocument::fromJson(json.out.toUtf8())["codes"_L1][0]["history"_L1]["item"_L1] == "milk-whole");
}

TEST_CASE("an item that is not of that lot opens nothing", "[command][scan]") {
  const SharedLot kitchen;
  for (const QStringList& command : {QStringList{"scan", "MB-5521"}, {"history", "MB-5521"}, {"trace", "MB-5521"}}) {
    const Ran ran = kitchen.lardiner(command + QStringList{"--item", "egg-shell"});
    CHECK(ran.status == 1);
    CHECK(ran.err == kWhich + ", not of egg-shell\n  name one of them with --item\n");
  }
  CHECK(kitchen.lardiner({"scan", "SE-2093", "--item", "milk-whole"}).err ==
        "lot SE-2093 is of egg-shell, not of milk-whole\n  name one of them with --item\n");
  CHECK(kitchen.lardiner({"scan", "SE-2093"}).status == 0);
}
