// The time of the run: with --at, in the kitchen's zone; nothing is made after it, and it moves no date.
#include "small_kitchen.h"

using namespace lardiner::command;

TEST_CASE("--at refuses what is no instant: no time, a local time that occurs twice or never, no date",
          "[command][at][src:practice]") {
  const SmallKitchen kitchen;
  const std::vector<std::pair<QString, QString>> cases = {
      {"2026-11-25", "--at: \"2026-11-25\" has no time of day\n  write it as 2026-02-28T14:30\n"},
      {"2026-11-01T01:30",
       "--at: 2026-11-01 01:30 occurs twice in America/New_York: the clocks go back\n"
       "  write the offset: 2026-11-01 01:30-04:00 or 2026-11-01 01:30-05:00\n"},
      {"2026-03-08T02:30",
       "--at: 2026-03-08 02:30 does not exist in America/New_York: the clocks go from "
       "2026-03-08 02:00 to 2026-03-08 03:00\n"
       "  write a time before 2026-03-08 02:00 or from 2026-03-08 03:00 on\n"}};
  for (const auto& [at, said] : cases) {
    const Ran ran = kitchen.labels({"records.csv", "--out", "labels", "--at", at});
    INFO(at.toStdString());
    CHECK(ran.status == 2);
    CHECK(ran.out == "");
    CHECK(ran.err == said);
    CHECK(kitchen.as_it_was());
  }
}

TEST_CASE("the hint for a doubled local time is read when it is followed", "[command][at][src:practice]") {
  const SmallKitchen kitchen;
  kitchen.folder.write("records.csv",
                       "product,number,quantity,made_at,by,containers\n"
                       "seed-rub,4,400 g,2026-10-31 12:00,MK,4 tub 100 g\n");
  const auto run = [&](const QString& at) {
    return kitchen.labels({"records.csv", "--out", "labels", "--replace", "--at", at});
  };
  const QString hint = run("2026-11-01 01:30").err.section("write the offset: ", 1).trimmed();
  const QStringList times = hint.split(" or ");
  CHECK(times.size() == 2);
  for (const QString& at : times) CHECK(run(at).err == "");
}

TEST_CASE("--at takes a doubled local time with its offset", "[command][at][src:practice]") {
  const SmallKitchen kitchen;
  kitchen.folder.write("records.csv",
                       "product,number,quantity,made_at,by,containers\n"
                       "seed-rub,4,400 g,2026-11-01 01:10-04:00,MK,4 tub 100 g\n");
  const Ran earlier = kitchen.labels({"records.csv", "--out", "labels", "--at", "2026-11-01T01:30-04:00"});
  INFO(earlier.err.toStdString());
  CHECK(earlier.status == 0);
  kitchen.folder.write("records.csv",
                       "product,number,quantity,made_at,by,containers\n"
                       "seed-rub,4,400 g,2026-11-01 01:10-05:00,MK,4 tub 100 g\n");
  CHECK(kitchen.labels({"records.csv", "--out", "later", "--at", "2026-11-01T01:30-04:00"}).status == 1);
}

TEST_CASE("a batch made after the time of the run is refused", "[command][at][src:practice]") {
  const SmallKitchen kitchen;
  const Ran ran = kitchen.labels({"records.csv", "--out", "labels", "--at", "2026-11-25T07:59"});
  CHECK(ran.status == 1);
  CHECK(ran.err ==
        "records.csv:4:19: \"2026-11-25 08:00\" is in the future: it is now Wed 25 Nov 2026 07:59\n"
        "  ,seed-rub,2,400 g,2026-11-25 08:00,MK,4 tub 100 g,,,,\n"
        "                    ^^^^^^^^^^^^^^^^\n"
        "  write when it happened\n");
  CHECK(kitchen.as_it_was());
  CHECK(kitchen.labels({"records.csv", "--out", "labels", "--at", "2026-11-25T08:00"}).status == 0);
}

TEST_CASE("the day of printing moves no date: a run a day later prints the same labels",
          "[command][at][src:food-code-2022/3-501.17]") {
  const SmallKitchen kitchen;
  REQUIRE(kitchen.labels({"records.csv", "--out", "today"}).status == 0);
  REQUIRE(kitchen.labels({"records.csv", "--out", "later", "--at", "2026-11-26T23:00"}).status == 0);
  CHECK(printed(kitchen.folder, "today") == printed(kitchen.folder, "later"));
}
