// Places and checks from the command line, and inputs whose lot nobody wrote, on the demo kitchen's day.
#include "program.h"

using namespace lardiner::command;

namespace {

struct Kitchen {
  Folder folder;

  Kitchen() { folder.copy_book(kDemoKitchen, "kitchen"); }

  Ran at(const QString& time, const QStringList& rest) const {
    return folder.lardiner(QStringList{"--kitchen", "kitchen", "--at", time} + rest);
  }
  Ran evening(const QStringList& rest) const { return at("2026-11-25T21:45", rest); }
  void record_day() const {
    REQUIRE(at("2026-11-25T06:30", {"record", kDemoKitchen + "/events/morning.csv"}).status == 0);
    REQUIRE(at("2026-11-25T20:00", {"record", kDemoDay}).status == 0);
  }
  // As JSON, each space and each minus an ordinary one.
  QString day_record() const {
    const Ran ran = evening({"--json", "day-record", "2026-11-25"});
    INFO(ran.err.toStdString());
    REQUIRE(ran.status == 0);
    return ran.out.simplified().replace(QChar(0x2212), u'-');
  }
  void move(const QString& lot, const QString& place) const {
    REQUIRE(evening({"record", "event=moved", "lot=" + lot, "place=" + place, "by=JO", "at=2026-11-25 21:00"}).status ==
            0);
  }
  Ran read(const QString& place, const QString& temperature) const {
    return evening({"record", "event=place-temperature", "place=" + place, "temperature=" + temperature, "by=RT",
                    "at=2026-11-25 21:30"});
  }
};

}  // namespace

TEST_CASE("a place out of its limit is warned of, with the lots that stand there and how to hold them",
          "[command][place]") {
  const Kitchen kitchen;
  kitchen.record_day();
  kitchen.move("A26329CLB03L", "freezer 1");
  const Ran warm = kitchen.read("freezer 1", "12 °F");
  CHECK(warm.status == 0);
  CHECK(warm.err ==
        "record: warning: freezer 1 was at 12 °F on Wed 25 Nov 2026 21:30, and is held to 0 °F (-18 °C) or below\n"
        "  event=place-temperature\n"
        "  1 lot stands in it that is not on hold: A26329CLB03L; to hold all that stands there: lardiner record "
        "event=hold "
        "\"place=freezer 1\" at=… by=… reason=…\n");
  REQUIRE(kitchen.evening({"record", "event=hold", "place=freezer 1", "by=RT", "at=2026-11-25 21:35", "reason=warm"})
              .status == 0);
  CHECK(kitchen.evening({"scan", "A26329CLB03L"}).out.contains("HOLD"));
  CHECK(kitchen.read("freezer 1", "12 °F").err.endsWith("  all that stands in it is on hold already\n"));
  CHECK(kitchen.read("walk-in 2", "40 °F").err.contains("warning: walk-in 2 was at 40 °F"));
  CHECK(kitchen.read("van", "42 °F").err.endsWith("  nothing that is recorded stands in it\n"));
}

TEST_CASE("a place within its limit, without one, or held in the same file is not warned of", "[command][place]") {
  const Kitchen kitchen;
  CHECK(kitchen.read("freezer 1", "0 °F").err == "");
  CHECK(kitchen.read("walk-in 2", "39 °F").err == "");
  CHECK(kitchen.read("van", "41 °F").err == "");
  CHECK(kitchen.read("pot wash", "90 °F").err == "");
  const QByteArray reading =
      R"({"event": "place-temperature", "place": "van", "temperature": "50 °F", "by": "RT", "at": "2026-11-25 13:00"})"
      "\n";
  const QByteArray hold = R"({"event": "hold", "place": "van", "reason": "warm", "by": "RT", "at": "2026-11-25 13:05"})"
                          "\n";
  kitchen.folder.write("held.jsonl", reading + hold);
  const Ran held = kitchen.evening({"record", "held.jsonl"});
  CHECK_FALSE(held.err.contains("was at"));
  CHECK(held.err.contains("nothing that is recorded stands in van: nothing is on hold"));
  kitchen.folder.write("before.jsonl", reading + QByteArray(hold).replace("13:05", "12:00"));
  CHECK(kitchen.evening({"record", "before.jsonl"}).err.contains("warning: van was at 50 °F"));
}

TEST_CASE("a place that the book does not have is refused, with the nearest", "[command][place]") {
  const Kitchen kitchen;
  const Ran ran = kitchen.read("walkin 1", "38 °F");
  CHECK(ran.status == 1);
  CHECK(ran.err.contains("\"walkin 1\" is not a place of the book\n"));
  CHECK(ran.err.endsWith("  did you mean walk-in 1?\n"));
}

TEST_CASE("the record of a day judges each place by its own limits, and prints the checks", "[command][place]") {
  const Kitchen kitchen;
  kitchen.record_day();
  const Ran recorded = kitchen.evening({"record", kDemoKitchen + "/events/evening.csv"});
  REQUIRE(recorded.status == 0);
  CHECK_FALSE(recorded.err.contains("nothing is on hold"));  // what was held is released in the same file
  REQUIRE(kitchen.read("freezer 1", "12 °F").status == 0);
  REQUIRE(kitchen.read("pot wash", "60 °F").status == 0);
  const QString record = kitchen.day_record();
  CHECK(record.contains("\"freezer 1\", \"-2 °F\", \"within its limit · 0 °F (-18 °C) or below\""));
  CHECK(record.contains("\"freezer 1\", \"12 °F\", \"OUT OF LIMIT · 0 °F (-18 °C) or below\""));
  CHECK(record.contains("\"walk-in 2\", \"46 °F\", \"OUT OF LIMIT · 39 °F (4 °C) or below\""));
  CHECK(record.contains("\"pot wash\", \"60 °F\", \"LIMIT NOT KNOWN\""));
  CHECK(
      record.contains("\"sanitizer strength · pot wash\", \"\", \"NOT IN ORDER · 150 ppm; made anew, then 300 ppm\""));
  CHECK(record.contains("\"probe thermometers in ice water\", \"\", \"in order · all three at 32 °F\""));
}

TEST_CASE("a later edit of the book judges no temperature anew", "[command][place]") {
  const Kitchen kitchen;
  REQUIRE(kitchen.read("walk-in 2", "41 °F").status == 0);
  CHECK(kitchen.day_record().contains("39 °F (4 °C) or below"));
  kitchen.folder.put_fault("kitchen/kitchen.toml", "at_most = \"39 °F (4 °C)\"\n", "\n");
  CHECK(kitchen.day_record().contains("39 °F (4 °C) or below"));
  CHECK_FALSE(kitchen.day_record().contains("41 °F (5 °C) or below"));
  REQUIRE(kitchen.read("walk-in 2", "41 °F").status == 0);
  CHECK(kitchen.day_record().contains("41 °F (5 °C) or below"));
}

TEST_CASE("an input without a lot is dated from the lot that was made earlier in the recorded file",
          "[command][ledger]") {
  const Kitchen kitchen;
  REQUIRE(kitchen.at("2026-11-25T06:30", {"record", kDemoKitchen + "/events/morning.csv"}).status == 0);
  const QByteArray named = "input,,,,15,A26329MPT13F,,";
  QByteArray day = bytes_of(kDemoDay);
  REQUIRE(day.count(named) == 1);
  day.replace(named, "input,,,,15,,,");
  kitchen.folder.write("day.csv", day);
  const Ran ran = kitchen.at("2026-11-25T20:00", {"record", "day.csv"});
  INFO(ran.err.toStdString());
  CHECK(ran.status == 0);
  CHECK(kitchen.evening({"verify", "--rebuild"}).status == 0);
  CHECK(kitchen.evening({"trace", "A26329MPT13F"}).out.contains("A26329FCK15Q"));
  const Kitchen other;
  other.folder.write("late.csv", QByteArray(day).replace(",mashed-potato,,,13,,14 kg,2026-11-25 07:20,",
                                                         ",mashed-potato,,,13,,14 kg,2026-11-25 15:20,"));
  const Ran late = other.at("2026-11-25T20:00", {"record", "late.csv"});
  CHECK(late.status == 1);
  CHECK(late.err.contains("\"mashed-potato\" needs time and temperature control, and its date is not written\n"));
}

TEST_CASE("a hold of a place that is recorded late tells what stood there then and has left it", "[command][place]") {
  const Kitchen kitchen;
  kitchen.record_day();
  const auto move = [&](const QString& place, const QString& time) {
    REQUIRE(
        kitchen
            .evening({"record", "event=moved", "lot=A26329CLB03L", "place=" + place, "by=JO", "at=2026-11-25 " + time})
            .status == 0);
  };
  const auto hold = [&](const QString& time) {
    return kitchen.evening(
        {"record", "event=hold", "place=walk-in 2", "by=RT", "reason=warm", "at=2026-11-25 " + time});
  };
  move("walk-in 2", "12:20");
  move("walk-in 1", "15:20");
  CHECK(
      hold("13:05").err.contains("warning: stood in walk-in 2 on Wed 25 Nov 2026 13:05 and has left it since: "
                                 "Chilli-lime butter, lot A26329CLB03L"));
  CHECK_FALSE(hold("12:00").err.contains("A26329CLB03L"));
  CHECK_FALSE(hold("15:30").err.contains("A26329CLB03L"));
}
