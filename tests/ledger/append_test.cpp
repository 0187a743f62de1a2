// Appending: what is refused, with the whole text, and that everything or nothing of an append is there.
#include <QFile>
#include <QTemporaryDir>

#include "ledger/lineage.h"
#include "ledger/on_hand.h"
#include "ledger/schema.h"
#include "show.h"
#include "small_history.h"

using namespace lardiner;
using namespace lardiner::ledger;
using history::Kind;
using history::Where;

namespace {

struct OneLot {
  QTemporaryDir folder;
  QString path = folder.filePath(QStringLiteral("ledger.sqlite"));
  problem::Expected<Ledger> ledger = Ledger::open(path, Access::Write);

  OneLot() {
    REQUIRE(ledger);
    REQUIRE(append({received("tomatillo", "T-1", kMorning, 5000),
                    made("A26329SAL01K", "salsa", kMorning, 4, {{"tomatillo", "T-1"}})})
                .isEmpty());
  }

  // The text of what was refused; empty: it was recorded.
  QString append(std::vector<history::Event> events, const QDateTime& now = kMorning.addSecs(3600)) {
    const auto entries = ledger->append(std::move(events), stamp(now));
    return entries ? QString() : problem::text(entries.error());
  }
  std::vector<Standing> standings_of(const QString& code, const QString& item) {
    return standings(ledger->store(), {*ledger->lots().id(code, item)});
  }
};

}  // namespace

TEST_CASE("entries of a station are numbered from 1 without a gap", "[ledger][append]") {
  OneLot one;
  const auto more = one.ledger->append({of_lot(Kind::Moved, "A26329SAL01K", kMorning)}, stamp(kMorning.addSecs(3600)));
  REQUIRE(more);
  CHECK(more->front().id.text() == "A-3");
  const auto other =
      one.ledger->append({of_lot(Kind::Moved, "A26329SAL01K", kMorning)},
                         {QStringLiteral("B"), kMorning.addSecs(3600), QStringLiteral("America/New_York")});
  REQUIRE(other);
  CHECK(other->front().id.text() == "B-1");
}

TEST_CASE("an entry names the containers that it reached", "[ledger][append]") {
  OneLot one;
  REQUIRE(one.append({of_lot(Kind::Dispatched, "A26329SAL01K", kMorning, {2})}).isEmpty());
  const auto rest = one.ledger->append({of_lot(Kind::Moved, "A26329SAL01K", kMorning)}, stamp(kMorning.addSecs(3600)));
  REQUIRE(rest);
  CHECK(rest->front().event.containers == std::vector<int>{1, 3, 4});
}

TEST_CASE("a lot that is recorded already is refused", "[ledger][append]") {
  OneLot one;
  CHECK(one.append({made("A26329SAL01K", "salsa", kMorning, 4)}) ==
        "lot A26329SAL01K is recorded already, as entry A-2\n"
        "  what was recorded is not edited: record a correction of that entry\n");
}

TEST_CASE("a slip in a lot is told with the lot that is near", "[ledger][append]") {
  OneLot one;
  CHECK(one.append({of_lot(Kind::Moved, "A26329SAL01X", kMorning)}) ==
        "no lot A26329SAL01X is recorded\n  did you mean A26329SAL01K?\n");
  CHECK(one.append({of_lot(Kind::Moved, "ZZ", kMorning)}) ==
        "no lot ZZ is recorded\n  record its making or its receipt first\n");
}

TEST_CASE("everything of an append or nothing is recorded, and every fault is told", "[ledger][append]") {
  OneLot one;
  const QStringList before = dump_projections(one.ledger->store());
  const std::vector<Head> heads = one.ledger->heads();
  CHECK(one.append({of_lot(Kind::Moved, "A26329SAL01K", kMorning), of_lot(Kind::Moved, "NO-1", kMorning),
                    of_lot(Kind::Moved, "NO-2", kMorning)}) ==
        "no lot NO-1 is recorded\n  record its making or its receipt first\n"
        "no lot NO-2 is recorded\n  record its making or its receipt first\n");
  CHECK(dump_projections(one.ledger->store()) == before);
  CHECK(one.ledger->heads() == heads);
}

TEST_CASE("a clock that stands before the last entry records nothing", "[ledger][append]") {
  OneLot one;
  CHECK(one.append({of_lot(Kind::Moved, "A26329SAL01K", kMorning)}, kMorning) ==
        one.path +
            ": the clock stands at 2026-11-25T12:00:00Z, but the last entry was recorded at 2026-11-25T13:00:00Z\n"
            "  set the clock right: nothing is recorded before what was recorded already\n");
  CHECK(one.append({of_lot(Kind::Moved, "A26329SAL01K", kMorning)}).isEmpty());
}

TEST_CASE("a batch takes what went into it from the containers of its inputs", "[ledger][append]") {
  OneLot one;
  CHECK(one.standings_of("T-1", "tomatillo").front().left == grams(4500));
  REQUIRE(one.append({made("A26329TIN024", "tinga", kMorning, 2, {{"salsa", "A26329SAL01K", 2500}})}).isEmpty());
  const std::vector<Standing> salsa = one.standings_of("A26329SAL01K", "salsa");
  REQUIRE(salsa.size() == 2);
  CHECK(salsa.at(0).where == Where::Used);
  CHECK(salsa.at(0).containers == std::vector<int>{1, 2});
  CHECK(salsa.at(1).where == Where::Here);
  CHECK(salsa.at(1).left == grams(1500));
}

TEST_CASE("what went into a batch before its receipt was recorded is taken from it then", "[ledger][append]") {
  OneLot one;
  REQUIRE(one.append({made("A26329SAL02M", "salsa", kMorning, 2, {{"tomatillo", "T-9", 700}})}).isEmpty());
  REQUIRE(one.append({received("tomatillo", "T-9", kMorning, 2000)}).isEmpty());
  CHECK(one.standings_of("T-9", "tomatillo").front().left == grams(1300));
}

TEST_CASE("a recall holds what was made of a lot, and what is made of it later", "[ledger][recall]") {
  OneLot one;
  history::Event recall = of_lot(Kind::RecallOpened, "T-1", kMorning);
  recall.item = "tomatillo";
  recall.reason = "the supplier called";
  REQUIRE(one.append({recall}).isEmpty());
  REQUIRE(one.append({made("A26329TIN024", "tinga", kMorning, 2, {{"salsa", "A26329SAL01K"}})}).isEmpty());
  for (const auto& [code, item] : {std::pair("A26329SAL01K", "salsa"), std::pair("A26329TIN024", "tinga")}) {
    const history::Lot* lot = one.ledger->lots().lot(*one.ledger->lots().id(code, item));
    CHECK(history::good(*lot, lot->holders.front(), kMorning).state == history::Good::State::Recalled);
  }
  CHECK(on_hand(*one.ledger, kMorning, kZone)->empty());
  history::Event closed = of_lot(Kind::RecallClosed, "", kMorning);
  closed.of = {"A", 3};
  closed.reason = "it was another lot";
  REQUIRE(one.append({closed}).isEmpty());
  const history::Lot* lot = one.ledger->lots().lot(*one.ledger->lots().id("A26329TIN024", "tinga"));
  CHECK(history::good(*lot, lot->holders.front(), kMorning).state == history::Good::State::Good);
}

TEST_CASE("a batch that names no lot of an item is a suspect of its recall", "[ledger][recall]") {
  OneLot one;
  REQUIRE(one.append({made("A26329SAL02M", "salsa", kMorning, 1, {{"tomatillo", ""}}),
                      made("A26329SAL03P", "salsa", kMorning.addDays(-3), 1, {{"tomatillo", ""}}),
                      made("A26329SAL04R", "salsa", kMorning, 1, {{"tomatillo", "T-2"}})})
              .isEmpty());
  history::Event recall = of_lot(Kind::RecallOpened, "T-1", kMorning);
  recall.item = "tomatillo";
  recall.reason = "the supplier called";
  REQUIRE(one.append({recall}).isEmpty());
  const auto recalled = [&](const QString& code) {
    return !one.ledger->lots().lot(*one.ledger->lots().id(code, "salsa"))->recalls.empty();
  };
  CHECK(recalled("A26329SAL01K"));
  CHECK(recalled("A26329SAL02M"));
  CHECK_FALSE(recalled("A26329SAL03P"));  // begun before the lot came
  CHECK_FALSE(recalled("A26329SAL04R"));
}

TEST_CASE("a place that is put on hold holds every lot in it", "[ledger][hold]") {
  OneLot one;
  REQUIRE(one.append({of_lot(Kind::Moved, "A26329SAL01K", kMorning, {1})}).isEmpty());
  history::Event hold;
  hold.kind = Kind::Hold;
  hold.at = kMorning;
  hold.by = "MK";
  hold.place = "walk-in 1";
  hold.reason = "46 °F for five hours";
  REQUIRE(one.append({hold}).isEmpty());
  CHECK(on_hand(*one.ledger, kMorning, kZone)->size() == 1);  // the tomatillos, which stand elsewhere
  history::Event release = of_lot(Kind::Release, "", kMorning);
  release.of = {"A", 4};
  release.reason = "core temperatures were at 40 °F";
  REQUIRE(one.append({release}).isEmpty());
  CHECK(on_hand(*one.ledger, kMorning, kZone)->size() == 3);
  CHECK(one.append({release}) ==
        "entry A-4 holds nothing any more\n  write the entry that opened the hold or the recall\n");
}

TEST_CASE("a file that is no ledger, of a newer program, or missing is told", "[ledger][open]") {
  const QTemporaryDir folder;
  const QString path = folder.filePath("x.sqlite");
  const auto refused = [&](Access access) {
    const auto opened = Ledger::open(path, access);
    return opened ? QString() : problem::text(opened.error());
  };
  CHECK(refused(Access::Read) == path +
                                     ": there is no ledger yet\n  record something first (lardiner record), or name "
                                     "the file with --ledger");
  QFile file(path);
  REQUIRE(file.open(QIODevice::WriteOnly));
  file.write(QByteArray(5000, 'x'));
  file.close();
  CHECK(refused(Access::Write) == path + ": this file is no ledger\n  name the ledger's file with --ledger");
  file.remove();
  {
    const auto other = Store::open(path, Access::Write);
    (*other)->run("CREATE TABLE recipe (id INTEGER)");
  }
  CHECK(refused(Access::Write) == path + ": this SQLite file is no ledger\n  name the ledger's file with --ledger");
  QFile::remove(path);
  { const auto newer = Ledger::open(path, Access::Write); }
  {
    const auto newer = Store::open(path, Access::Write);
    (*newer)->run("PRAGMA user_version = 99");
  }
  CHECK(refused(Access::Write) == path +
                                      ": this ledger was written by a newer Lardiner (tables of version 99; this one "
                                      "knows 2)\n  use the newer one");
  CHECK(Ledger::open(folder.filePath("no/x.sqlite"), Access::Write).error().what ==
        QStringLiteral("the folder \"%1\" is not there").arg(folder.filePath("no")));
}

TEST_CASE("an arrival by note is of what is still on its way", "[ledger][append]") {
  OneLot one;
  const auto of_note = [](Kind kind, const QString& lot) {
    history::Event event = of_lot(kind, lot, kMorning.addSecs(600));
    event.note = QStringLiteral("DN-1");
    event.site = QStringLiteral("mill-road");
    return event;
  };
  REQUIRE(one.append({made("A26329RPD01K", "rice-pudding", kMorning, 2),
                      of_note(Kind::Dispatched, QStringLiteral("A26329SAL01K")),
                      of_note(Kind::Dispatched, QStringLiteral("A26329RPD01K")),
                      of_note(Kind::Arrived, QStringLiteral("A26329RPD01K"))})
              .isEmpty());
  CHECK(one.append({of_note(Kind::Arrived, QString())}) == QString());
  for (const char* code : {"A26329SAL01K", "A26329RPD01K"})
    for (const ledger::LotName& lot : one.ledger->lots().named(QString::fromLatin1(code)))
      for (const Standing& standing : standings(one.ledger->store(), {lot.id})) CHECK(standing.where == Where::AtSite);
  CHECK(one.append({of_note(Kind::Arrived, QString())})
            .contains(QStringLiteral("nothing is on its way with the note DN-1")));
}

TEST_CASE("what a site refused does not arrive with the rest of its note, but by its number", "[ledger][append]") {
  OneLot one;
  const auto arrived = [](bool accepted, std::vector<int> containers, const QString& lot) {
    history::Event event = of_lot(Kind::Arrived, lot, kMorning.addSecs(600), std::move(containers));
    event.note = QStringLiteral("DN-1");
    event.accepted = accepted;
    return event;
  };
  const QString lot = QStringLiteral("A26329SAL01K");
  const auto where = [&](int number) {
    for (const Standing& standing : one.standings_of(lot, QStringLiteral("salsa")))
      for (const int one_of : standing.containers)
        if (one_of == number) return standing.where;
    return Where::Missing;
  };
  history::Event dispatched = of_lot(Kind::Dispatched, lot, kMorning.addSecs(300), {1, 2, 3});
  dispatched.note = QStringLiteral("DN-1");
  REQUIRE(one.append({dispatched, arrived(false, {2}, lot), arrived(true, {}, QString())}).isEmpty());
  CHECK(where(1) == Where::AtSite);
  CHECK(where(2) == Where::Dispatched);
  CHECK(
      one.append({arrived(true, {}, QString())}).contains(QStringLiteral("nothing is on its way with the note DN-1")));
  CHECK(one.append({arrived(true, {2}, lot)}).isEmpty());
  CHECK(where(2) == Where::AtSite);
}

TEST_CASE("a lot that was named for one input and may have been another counts with what was taken of it",
          "[ledger][append]") {
  OneLot one;
  const Went named{QStringLiteral("tomatillo"), QStringLiteral("T-1"), 700};
  const Went unsaid{QStringLiteral("tomatillo"), QString(), 200, {QStringLiteral("T-1")}};
  REQUIRE(one.append({made("A26329SAL02K", "salsa", kMorning, 1, {unsaid, named}),
                      made("A26329SAL03K", "salsa", kMorning, 1, {named, unsaid})})
              .isEmpty());
  const qint64 tomatillo = *one.ledger->lots().id(QStringLiteral("T-1"), QStringLiteral("tomatillo"));
  CHECK(drawn(one.ledger->store(), tomatillo, measure::Dimension::Mass) == grams(500 + 700 + 700));
}
