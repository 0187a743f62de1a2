// What was held and is free again: its labels, and the note that it left with.
#include "recorded_day.h"

using namespace lardiner::command;

namespace {

struct Day : RecordedDay {
  // The entry that it became, "A-36".
  QString record(const QString& time, const QStringList& words) const {
    const Ran ran = at("2026-11-25T" + time, QStringList{"record", "by=MK", "at=2026-11-25 " + time} + words);
    if (words.contains("event=hold"))  // fish cakes were made of it
      CHECK(ran.err.contains("made of lot A26329CLB03L before this was known"));
    else
      CHECK(ran.err == "");
    REQUIRE(ran.status == 0);
    return ran.out;
  }
};

const QString kLot = QStringLiteral("lot=A26329CLB03L");

}  // namespace

TEST_CASE("what was held and released is not asked to be labelled anew while its label is true",
          "[command][ledger][hold]") {
  const Day day;
  CHECK(day.record("20:01", {"event=frozen", kLot, "containers=5"}).contains("new label needed"));
  const QString held = day.record("20:02", {"event=hold", kLot, "reason=found open"});
  CHECK(held.contains("new label needed: lot A26329CLB03L, containers 4-30 "));
  const QString of = "of=" + held.section(' ', 0, 0);
  const QString released = day.record("20:03", {"event=release", kLot, of, "reason=closed in time"});
  CHECK(released.contains("new label needed: lot A26329CLB03L, containers 5 "));
  const QString due = day.at("2026-11-25T20:04", {"due", "--days", "0"}).out;
  CHECK(due.contains("Chilli-lime butter, lot A26329CLB03L, tub 5"));
  CHECK_FALSE(due.contains("lot A26329CLB03L, tub 1-"));
}

TEST_CASE("a note says what left with it also when that came back and left with another", "[command][ledger][note]") {
  const Day day;
  const QStringList load{"event=dispatched", kLot, "containers=10-12", "site=mill-road-school", "temperature=38 °F"};
  day.record("20:01", load + QStringList{"note=DN-1"});
  const Ran first = day.at("2026-11-25T20:02", {"--json", "dispatch-note", "DN-1", "--out", "1.pdf"});
  CHECK(first.err == "");
  REQUIRE(first.status == 0);
  CHECK(first.out.contains("A26329CLB03L"));
  day.record("20:03", {"event=returned", kLot, "containers=10-12", "site=mill-road-school", "reason=released",
                       "temperature=39 °F"});
  day.record("20:04", {"event=part-used", kLot, "containers=10", "quantity=1 lb"});
  day.record("20:05", load + QStringList{"note=DN-2"});
  const Ran again = day.at("2026-11-25T20:06", {"--json", "dispatch-note", "DN-1", "--out", "2.pdf"});
  CHECK(again.out == QString(first.out).replace("1.pdf", "2.pdf"));
  CHECK(day.at("2026-11-25T20:06", {"--json", "dispatch-note", "DN-2", "--out", "3.pdf"}).status == 0);
  const Ran none = day.at("2026-11-25T20:06", {"dispatch-note", "DN-3", "--out", "4.pdf"});
  CHECK(none.status == 1);
  CHECK(
      none.err ==
      "nothing was dispatched with the note \"DN-3\"\n  write the number that stands in the record of the dispatch\n");
}
