// What food that came, left or was reheated asks for is told as it is recorded.
#include "recorded_day.h"

using namespace lardiner::command;

namespace {

const QString kButter = QStringLiteral("A26329CLB03L");  // 30 tubs, of which 1 to 3 are used

struct Evening : RecordedDay {
  Ran record(const QStringList& words) const {
    return evening(QStringList{"record", "by=JO", "at=2026-11-25 21:00"} + words);
  }
  Ran dispatch(const QString& temperature, const QString& container = "4") const {
    return record({"event=dispatched", "lot=" + kButter, "containers=" + container, "site=mill-road-school",
                   "note=DN-401", "temperature=" + temperature});
  }
  Ran receive(const QString& item, const QString& temperature) const {
    return record({"event=received", "lot=X-1", "item=" + item, "quantity=10 kg", "use_by=2026-12-04", "from=a farm",
                   "note=" + temperature, "temperature=" + temperature, "place=walk-in 1"});
  }
  Ran reheat(const QString& temperature, const QString& held) const {
    return record({"event=reheated", "lot=A26329CTN081", "containers=1", "temperature=" + temperature, "held=" + held});
  }
};

}  // namespace

TEST_CASE("food that leaves cold and good is not warned of", "[command][ledger][warned]") {
  const Evening day;
  const Ran ran = day.dispatch("41 °F");
  CHECK(ran.status == 0);
  CHECK(ran.err == QString());
}

TEST_CASE("a dispatch of what must not be served is recorded, and warned of", "[command][ledger][warned]") {
  const Evening day;
  REQUIRE(day.record({"event=hold", "lot=" + kButter, "reason=a smell"}).status == 0);
  const Ran held = day.dispatch("38 °F");
  CHECK(held.status == 0);
  CHECK(held.err ==
        "record: warning: container 4 of lot A26329CLB03L left for mill-road-school, and must not be served: on hold "
        "since Wed 25 Nov 2026 21:00: a smell (JO)\n"
        "  event=dispatched\n"
        "  call the site and have it set aside; record its return\n");
  CHECK(day.record({"event=recall", "lot=" + kButter, "item=chilli-lime-butter", "reason=a letter"}).status == 0);
  CHECK(day.dispatch("38 °F", "5").err.contains("must not be served: recalled by entry A-"));
  const Ran past =
      day.at("2026-12-20T08:00", {"record", "by=JO", "at=2026-12-20 07:00", "event=dispatched", "lot=A26329CTN081",
                                  "containers=1", "site=mill-road-school", "temperature=38 °F"});
  CHECK(past.status == 0);
  CHECK(past.err.contains("must not be served: past since "));
}

TEST_CASE("food that is neither cold nor hot on its way is warned of", "[command][ledger][warned][src:practice/held]") {
  const Evening day;
  CHECK(day.dispatch("42 °F").err.startsWith(
      "record: warning: lot A26329CLB03L was at 42 °F when it was dispatched, neither 41 °F (5 °C) or below nor 135 °F "
      "(57 °C) or above\n"));
  CHECK(day.record({"event=arrived", "note=DN-401", "accepted=yes", "temperature=70 °F"})
            .err.contains("what came with note DN-401 was at 70 °F when it was arrived"));
  CHECK(day.dispatch("135 °F", "5").err == QString());
  CHECK(day.dispatch("134 °F", "6").err.contains("was at 134 °F"));
}

TEST_CASE("a receipt is held to cold holding, or to what the book says a law allows", "[command][ledger][warned]") {
  const Evening day;
  CHECK(day.receive("egg-shell", "45 °F").err == QString());
  CHECK(day.receive("egg-shell", "46 °F").err.contains("came at 46 °F, and is held to 45 °F (7 °C) or below"));
  CHECK(day.receive("chicken-thigh", "45 °F").err.contains("came at 45 °F, and is held to 41 °F (5 °C) or below"));
  CHECK(day.receive("chicken-thigh", "41 °F").err == QString());
  CHECK(day.receive("chicken-thigh", "140 °F").err.contains("came at 140 °F"));
  const QStringList cod{"event=received", "lot=F-1",      "item=cod-fillet", "quantity=10 kg",
                        "from=a boat",    "state=frozen", "place=freezer 1"};
  CHECK(day.record(cod + QStringList{"use_by=2027-03-01", "temperature=39 °F", "note=1"})
            .err.contains("came at 39 °F, as frozen food, and is held to 32 °F (0 °C) or below"));
  CHECK(day.record(cod + QStringList{"use_by=2027-03-01", "temperature=31 °F", "note=2"}).err == QString());
  CHECK(day.record(cod + QStringList{"use_by=2026-11-20", "temperature=31 °F", "note=3"})
            .err.contains("came on Wed 25 Nov 2026 21:00, and was good until Sat 21 Nov 2026 00:00"));
}

TEST_CASE("a reheat short of its temperature or of its time is warned of", "[command][ledger][warned]") {
  const Evening day;
  CHECK(day.reheat("165 °F", "15 s").err == QString());
  CHECK(day.reheat("164 °F", "15 s").err.contains("was reheated to 164 °F, and at least 165 °F (74 °C) is asked for"));
  CHECK(day.reheat("165 °F", "14 s").err.contains("was reheated to 165 °F for 14 s, and 15 s are asked for"));
}

TEST_CASE("what its site did not take is not good there until it is back", "[command][ledger][warned]") {
  const Evening day;
  REQUIRE(day.dispatch("38 °F").status == 0);
  REQUIRE(
      day.record({"event=arrived", "lot=" + kButter, "containers=4", "accepted=no", "temperature=50 °F", "reason=warm"})
          .status == 0);
  CHECK(day.evening({"history", kButter})
            .out.contains("mill-road-school did not take it, and its return is not recorded"));
}

TEST_CASE("a receipt without a place, or of what needs control without a date, is warned of",
          "[command][ledger][warned]") {
  const Evening day;
  const QStringList salt{"event=received", "lot=X-2", "item=salt-fine", "quantity=25 lb"};
  CHECK(day.record(salt).err.contains("where lot X-2 stands is not recorded: no hold of a place reaches it"));
  CHECK(day.record(QStringList{"event=received", "lot=X-3", "item=salt-fine", "quantity=25 lb", "place=walk-in 1"})
            .err.isEmpty());
  const QStringList cream{"event=received", "lot=X-4",           "item=cream-36",
                          "quantity=4 L",   "temperature=38 °F", "place=walk-in 1"};
  CHECK(day.record(cream).err.contains("lot X-4 has no date, and cream-36 needs time and temperature control"));
  CHECK(day.record({"event=correction", "lot=X-4", "item=cream-36", "use_by=2026-12-01", "reason=its label"}).status ==
        0);
  CHECK(day.evening({"history", "X-4"}).out.contains("GOOD; use by Tue 01 Dec 2026"));
  CHECK(day.record(cream + QStringList{"note=next"}).err.isEmpty());  // of the same lot
}
