// Labels that a printer was asked for: open until they are done, sent once, ended once.
#include "ledger/prints.h"

#include <QTemporaryDir>

#include "show.h"
#include "small_history.h"

using namespace lardiner;
using namespace lardiner::ledger;
using history::EntryId;
using history::Event;
using history::Kind;

namespace {

const QString kSalsa = QStringLiteral("A26329SAL01K");

struct Asked {
  QTemporaryDir folder;
  problem::Expected<Ledger> ledger = Ledger::open(folder.filePath(QStringLiteral("ledger.sqlite")), Access::Write);
  EntryId print;

  Asked() {
    REQUIRE(ledger);
    REQUIRE(ledger->append({made(kSalsa, "salsa", kMorning, 4)}, stamp(kMorning)));
    const auto entries = ledger->append({asked()}, stamp(kMorning));
    REQUIRE(entries);
    print = entries->front().id;
  }

  static Event asked() {
    Event event = of_lot(Kind::PrintAsked, kSalsa, kMorning, {1, 2, 3});
    event.printer = QStringLiteral("labels");
    event.medium = QStringLiteral("side");
    event.count = 1;
    return event;
  }
  Event of_print(Kind kind, std::vector<int> containers) const {
    Event event = of_lot(kind, kSalsa, kMorning, std::move(containers));
    event.of = print;
    event.count = static_cast<int>(event.containers.size());
    return event;
  }
  QString append(Event event) {
    const auto entries = ledger->append({std::move(event)}, stamp(kMorning));
    return entries ? QString() : problem::text(entries.error());
  }
  Print now() {
    const auto found = print_named(ledger->store(), print);
    REQUIRE(found);
    REQUIRE(found->has_value());
    return **found;
  }
  size_t open() {
    const auto found = open_prints(ledger->store());
    REQUIRE(found);
    return found->size();
  }
};

}  // namespace

TEST_CASE("a print is open until it is done, and tells in which order its labels were sent", "[ledger][prints]") {
  Asked asked;
  CHECK(asked.open() == 1);
  CHECK(is_open_print(asked.ledger->store(), asked.print));
  CHECK_FALSE(asked.now().sent);
  CHECK(asked.now().containers == std::vector<int>{1, 2, 3});
  CHECK(asked.now().job_name.startsWith(asked.print.text() + u'-'));
  REQUIRE(asked.append(asked.of_print(Kind::PrintSent, {3, 1, 2})).isEmpty());
  CHECK(asked.now().sent);
  CHECK(asked.now().containers == std::vector<int>{3, 1, 2});
  CHECK(asked.open() == 1);
  REQUIRE(asked.append(asked.of_print(Kind::PrintDone, {3})).isEmpty());
  CHECK(asked.open() == 0);
  CHECK_FALSE(is_open_print(asked.ledger->store(), asked.print));
  REQUIRE(asked.now().done);
  CHECK(asked.now().done->event.count == 1);
}

TEST_CASE("a print is sent once and ends once, and only one that was asked for", "[ledger][prints]") {
  Asked asked;
  REQUIRE(asked.append(asked.of_print(Kind::PrintSent, {1, 2, 3})).isEmpty());
  CHECK(asked.append(asked.of_print(Kind::PrintSent, {1, 2, 3})).startsWith("print A-2 is sent already"));
  REQUIRE(asked.append(asked.of_print(Kind::PrintDone, {1, 2, 3})).isEmpty());
  CHECK(asked.append(asked.of_print(Kind::PrintDone, {})).startsWith("print A-2 is over already"));
  CHECK(asked.append(asked.of_print(Kind::PrintSent, {1})).startsWith("print A-2 is over already"));
  asked.print = {QStringLiteral("A"), 1};
  CHECK(asked.append(asked.of_print(Kind::PrintSent, {1})).startsWith("print A-1 is over already"));
  asked.print = {QStringLiteral("A"), 99};
  CHECK(asked.append(asked.of_print(Kind::PrintSent, {1})).startsWith("there is no entry A-99"));
  const auto none = print_named(asked.ledger->store(), asked.print);
  REQUIRE(none);
  CHECK_FALSE(none->has_value());
}

TEST_CASE("two prints of the same labels have jobs of different names", "[ledger][prints]") {
  Asked first, second;
  second.append(Asked::asked());
  const auto open = open_prints(second.ledger->store());
  REQUIRE(open);
  REQUIRE(open->size() == 2);
  CHECK((*open)[0].job_name != (*open)[1].job_name);
  CHECK((*open)[0].asked.id.number < (*open)[1].asked.id.number);
}

TEST_CASE("what a printer is loaded with is what was said last, and may be nothing", "[ledger][prints]") {
  Asked asked;
  Store& store = asked.ledger->store();
  const auto medium = [&](const QString& printer) {
    const auto found = loaded(store, printer);
    REQUIRE(found);
    return *found ? (*found)->event.medium : QStringLiteral("never said");
  };
  const auto load = [&](const QString& printer, const QString& is) {
    Event event;
    event.kind = Kind::MediumLoaded;
    event.at = kMorning;
    event.by = QStringLiteral("MK");
    event.printer = printer;
    event.medium = is;
    REQUIRE(asked.append(event).isEmpty());
  };
  CHECK(medium("labels") == "never said");
  load("labels", "side");
  load("office", "sheet");
  CHECK(medium("labels") == "side");
  load("labels", "lid");
  CHECK(medium("labels") == "lid");
  load("labels", {});
  CHECK(medium("labels") == "");
  CHECK(medium("office") == "sheet");
}

TEST_CASE("prints and media are the same when they are computed anew", "[ledger][prints]") {
  Asked asked;
  REQUIRE(asked.append(asked.of_print(Kind::PrintSent, {1, 2, 3})).isEmpty());
  REQUIRE(asked.append(Asked::asked()).isEmpty());
  REQUIRE(asked.append(asked.of_print(Kind::PrintDone, {1})).isEmpty());
  Event load;
  load.kind = Kind::MediumLoaded;
  load.at = kMorning;
  load.by = QStringLiteral("MK");
  load.printer = QStringLiteral("labels");
  load.medium = QStringLiteral("side");
  REQUIRE(asked.append(load).isEmpty());
  const QStringList before =
      asked.ledger->store().rows("SELECT * FROM print") + asked.ledger->store().rows("SELECT * FROM loaded");
  CHECK(before.size() == 2);
  REQUIRE(asked.ledger->rebuild());
  CHECK(asked.ledger->store().rows("SELECT * FROM print") + asked.ledger->store().rows("SELECT * FROM loaded") ==
        before);
}

TEST_CASE("asking for a print, sending and ending it leave the lot's containers and labels as they are",
          "[ledger][prints]") {
  Asked asked;
  const auto id = asked.ledger->lots().id(kSalsa, QStringLiteral("salsa"));
  REQUIRE(id);
  const auto holders = [&] {
    QStringList all;
    for (const history::Holder& one : asked.ledger->lots().lot(*id)->holders)
      all << QStringLiteral("%1 %2 %3").arg(one.number).arg(one.label.text()).arg(one.seen.toString(Qt::ISODate));
    return all;
  };
  const QStringList before = holders();
  REQUIRE(asked.append(asked.of_print(Kind::PrintSent, {1, 2, 3})).isEmpty());
  REQUIRE(asked.append(asked.of_print(Kind::PrintDone, {1, 2, 3})).isEmpty());
  CHECK(holders() == before);
}
