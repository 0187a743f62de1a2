// check: a sound book, and one fault put into it; the whole text, as a person reads it, and as JSON.
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "small_kitchen.h"

using namespace lardiner::command;
using namespace Qt::StringLiterals;

namespace {

// A copy of the demo kitchen's book.
struct DemoBook {
  Folder folder;

  DemoBook() { folder.copy_book(kDemoKitchen, "kitchen"); }
  Ran check(const QStringList& more = {}) const {
    return folder.lardiner(QStringList{"--kitchen", "kitchen", "check"} + more);
  }
};

QJsonObject json_of(const Ran& ran) {
  QJsonParseError error;
  const QJsonDocument document = QJsonDocument::fromJson(ran.out.toUtf8(), &error);
  INFO(ran.out.toStdString());
  CHECK(error.error == QJsonParseError::NoError);
  return document.object();
}

}  // namespace

TEST_CASE("check finds nothing wrong with the demo kitchen, and says what it holds", "[command][check][src:practice]") {
  const DemoBook book;
  const Ran ran = book.check();
  CHECK(ran.status == 0);
  CHECK(ran.err == "");
  CHECK(ran.out.startsWith("Quarry Lane Commissary: "));
  CHECK(ran.out.endsWith(" media; rule set FDA Food Code 2022\nNo problems found.\n"));
  const QJsonObject report = json_of(book.check({"--json"}));
  CHECK(report["errors"_L1].toArray().isEmpty());
  CHECK(report["gaps"_L1].toArray().isEmpty());
  CHECK(report["kitchen"_L1].toString() == "Quarry Lane Commissary");
  CHECK(report["book"_L1].toString().size() == 64);
}

TEST_CASE("an unknown id is told once, with its place and the nearest id", "[command][check][src:practice]") {
  const DemoBook book;
  const QString file = "kitchen/products-seasonings-and-butters.toml";
  book.folder.put_fault(file, "\"sesame-black\"", "\"sesame-blak\"");
  const Ran ran = book.check();
  CHECK(ran.status == 1);
  CHECK(ran.err == fault_text(file, book.folder.read(file), "\"sesame-blak\"",
                              "no ingredient or product has the id \"sesame-blak\"", "did you mean \"sesame-black\"?"));
  CHECK(ran.out.endsWith("\n1 error, 0 gaps.\n"));
  const QJsonArray errors = json_of(book.check({"--json"}))["errors"_L1].toArray();
  REQUIRE(errors.size() == 1);
  CHECK(errors[0]["file"_L1].toString() == file);
  CHECK(errors[0]["what"_L1].toString() == "no ingredient or product has the id \"sesame-blak\"");
  CHECK(errors[0]["hint"_L1].toString() == "did you mean \"sesame-black\"?");
}

TEST_CASE("a supplier item without its allergens is a gap: check fails, naming the item and what to add",
          "[command][check][src:practice]") {
  const DemoBook book;
  const QString file = "kitchen/ingredients-dry-goods.toml";
  const QString item = "{ id = \"kestrel-cornstarch-25\", supplier = \"Kestrel Dry Goods\", ";
  book.folder.put_fault(file, item + "contains = \"none\", ", item);
  const Ran ran = book.check();
  CHECK(ran.status == 1);
  const QString whole = QString::fromUtf8(book.folder.read(file));
  const QString table = whole.mid(whole.indexOf(item)).section(u'}', 0, 0) + u'}';
  CHECK(ran.err ==
        fault_text(file, whole.toUtf8(), table,
                   "supplier item \"kestrel-cornstarch-25\" of ingredient \"cornstarch\" does not declare its "
                   "allergens",
                   "add contains = [\"milk\"] or contains = \"none\", with checked and source"));
  CHECK(ran.out.endsWith("\n0 errors, 1 gap.\n"));
  const QJsonObject report = json_of(book.check({"--json"}));
  CHECK(report["errors"_L1].toArray().isEmpty());
  CHECK(report["gaps"_L1].toArray().size() == 1);
}

TEST_CASE("a file that cannot be read is one fault: nothing is told that only follows from it",
          "[command][check][src:practice]") {
  for (const char* name : {"kitchen/kitchen.toml", "kitchen/ingredients.toml"}) {
    const SmallKitchen kitchen;
    const QByteArray whole = kitchen.folder.read(name);
    kitchen.folder.write(name, whole + "broken = \"no end\n");
    const Ran ran = kitchen.folder.lardiner({"--kitchen", "kitchen", "check"});
    INFO(ran.err.toStdString());
    CHECK(ran.status == 1);
    CHECK(ran.err.startsWith(QStringLiteral("%1:%2:").arg(name).arg(whole.count('\n') + 1)));
    CHECK(ran.err.count(".toml:") == 1);
  }
}

TEST_CASE("an undeclared allergen stops the dated labels of what holds it, and of nothing else",
          "[command][check][labels][src:practice]") {
  const SmallKitchen kitchen;
  kitchen.folder.put_fault("kitchen/ingredients.toml", "contains = [\"sesame\"], ", "");
  const Ran all = kitchen.labels({"records.csv", "--out", "labels"});
  CHECK(all.status == 1);
  CHECK(kitchen.as_it_was());
  const Ran some = kitchen.labels({"records.csv", "--out", "labels", "--hold-labels"});
  CHECK(some.status == 3);
  CHECK(some.err.contains("supplier item \"sesame-1kg\" of ingredient \"sesame\" does not declare its allergens"));
  int dated = 0, held = 0;
  for (const Page& page : page_texts(kitchen.folder, "labels/lid.pdf")) {
    INFO(page.text.toStdString());
    ++(page.text.startsWith("Lime butter") ? dated : held);
    CHECK(band(page).has_value() == page.text.startsWith("Lime butter"));
    if (page.text.startsWith("Lime butter")) continue;
    CHECK(page.text.startsWith("Seed rub HOLD DO NOT USE "));
    CHECK(page.text.contains("No date: the allergens are not known. Ask the chef."));
  }
  CHECK(dated == 4);
  CHECK(held == 4);
}

TEST_CASE("check --json, dates --json and labels --json are JSON and nothing else", "[command][json][src:practice]") {
  const SmallKitchen kitchen;
  const Ran check = kitchen.folder.lardiner({"--kitchen", "kitchen", "--json", "check"});
  CHECK(check.status == 0);
  CHECK(json_of(check)["kitchen"_L1].toString() == "Weir House Kitchen");
  const Ran dates = kitchen.folder.lardiner({"--kitchen", "kitchen", "--json", "dates", "records.csv"});
  CHECK(dates.status == 0);
  const QJsonArray batches = json_of(dates)["batches"_L1].toArray();
  REQUIRE(batches.size() == 2);
  const QJsonObject butter = batches[0].toObject();
  CHECK(butter["lot"_L1].toString() == "A26329LBU01C");
  CHECK(butter["dates"_L1][0]["date"_L1].toString() == "2026-12-01");
  CHECK(butter["dates"_L1][0]["reasons"_L1].toArray().size() == 3);
  const Ran labels = kitchen.labels({"records.csv", "--out", "labels", "--json"});
  CHECK(labels.status == 0);
  CHECK(json_of(labels)["labels"_L1].toInt() == 8);
}

TEST_CASE("dates prints the end of each batch with the rule that decided, the rules that lost, and their authority",
          "[command][dates][src:food-code-2022/3-501.17]") {
  const SmallKitchen kitchen;
  const Ran ran = kitchen.folder.lardiner({"--kitchen", "kitchen", "dates", "records.csv"});
  CHECK(ran.status == 0);
  CHECK(ran.err == "");
  CHECK(ran.out ==
        "A26329LBU01C  lime-butter, made Wed 25 Nov 2026 07:40\n"
        "  containers 1-4: use by Tue 01 Dec 2026\n"
        "    decided Tue 01 Dec 2026  butter, lot MB-5521: opened, 7 days, day 1 is Wed 25 Nov 2026, "
        "FDA Food Code 2022 3-501.17(B)\n"
        "    decided Tue 01 Dec 2026  chilled, 7 days, day 1 is Wed 25 Nov 2026 [FDA Food Code 2022 3-501.17(A)]\n"
        "       lost Sun 20 Dec 2026  butter, lot MB-5521: maker's use-by\n"
        "A26329RUB02S  seed-rub, made Wed 25 Nov 2026 08:00\n"
        "  containers 1-4: best before Thu 25 Feb 2027\n"
        "    decided Thu 25 Feb 2027  ambient, 3 months from Wed 25 Nov 2026 [kitchen rule]\n");
}
