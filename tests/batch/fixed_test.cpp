// Tests of batch/fixed: what happens to a lot after it was recorded, dated by what was fixed then.
#include "batch/fixed.h"

#include "fixed_kitchen.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

namespace {

QByteArray dip(const QByteArray& more = {}) {
  return made("dip", 1, "2026-11-01 09:00", input("mayonnaise", "2026-12-20"), more);
}

QByteArray stock(const QByteArray& readings, const QByteArray& more = {}) {
  return made("stock", 1, "2026-06-01 09:00", input("chicken-thigh", "2026-06-03"),
              cooked("2026-06-01 11:00") + ", \"cooled\": [" + readings + "]" + more);
}

const char* const kHot = R"({"at": "2026-06-01 12:00", "core": "135 °F"})";

CoolReading reading(const char* time, int fahrenheit) { return {at(time), {fahrenheit * 10, measure::Scale::Fahrenheit}, {}}; }

// All that a date says, and on which container.
void check_same_dates(const Fixed& one, const Fixed& other) {
  CHECK(one.batch.use_bys == other.batch.use_bys);
  CHECK(one.withheld == other.withheld);
  CHECK(one.question_of == other.question_of);
  CHECK(one.batch.warnings == other.batch.warnings);
  CHECK(one.batch.previously_frozen == other.batch.previously_frozen);
  CHECK(one.batch.missing == other.batch.missing);
  for (size_t i = 0; i < one.batch.containers.size(); ++i) {
    CHECK(one.batch.containers[i].use_by == other.batch.containers[i].use_by);
    CHECK(one.batch.containers[i].discarded == other.batch.containers[i].discarded);
  }
}

}  // namespace

TEST_CASE("a released lot fixes the dates that computing gives", "[batch][fixed]") {
  const Fixed fixed = fix(dip());
  const Batch batch = good(dip());
  CHECK(fixed.batch.use_bys == batch.use_bys);
  CHECK(fixed.batch.lot == batch.lot);
  CHECK(fixed.name == QStringLiteral("dip"));
  CHECK(fixed.question_of == std::vector<int>{0, 0, 0, 0});
  CHECK(use_by_of(fixed, 3)->date == date("2026-11-07"));
  CHECK_FALSE(held_for_cooling_alone(fixed));
}

TEST_CASE("what happens to some containers dates those alone, by the limits that were fixed", "[batch][fixed]") {
  Fixed fixed = fix(dip());
  CHECK(happen(fixed, {event(Happening::Frozen, "2026-11-02 10:00", {2, 3})}).empty());
  CHECK(fixed.question_of == std::vector<int>{0, 1, 1, 0});
  CHECK(use_by_of(fixed, 0)->date == date("2026-11-07"));
  CHECK(use_by_of(fixed, 1)->form == UseBy::Form::Frozen);
  CHECK(use_by_of(fixed, 1)->days_left == 5);
  CHECK(happen(fixed, {event(Happening::Thawed, "2026-12-01 10:00", {2})}).empty());
  CHECK(fixed.question_of == std::vector<int>{0, 1, 2, 0});
  CHECK(use_by_of(fixed, 1)->date == date("2026-12-05"));
  CHECK(use_by_of(fixed, 2)->form == UseBy::Form::Frozen);
}

TEST_CASE("an event that cannot have happened changes nothing, not even of the containers it could befall", "[batch][fixed]") {
  Fixed fixed = fix(dip());
  const Fixed before = fixed;
  const problem::Errors late = happen(fixed, {event(Happening::Frozen, "2026-11-02 10:00", {1}), event(Happening::Opened, "2026-11-09 10:00", {2})});
  CHECK(problem::text(late) ==
        QStringLiteral("opened at Mon 9 Nov 2026 10:00, after its end, Sat 7 Nov 2026: chilled, 7 days, day 1 is Sun 1 Nov 2026\n"
                       "  discard it, or correct the time if it was written wrongly\n"));
  check_same_dates(fixed, before);
  CHECK(fixed.batch.record.events.empty());
  CHECK(problem::text(happen(fixed, {event(Happening::Frozen, "2026-11-02 10:00", {4, 5})})) ==
        QStringLiteral("there is no container 5: the record has 4\n  correct the numbers of the containers\n"));
  check_same_dates(fixed, before);
}

TEST_CASE("an event of no named container befalls all that are not discarded", "[batch][fixed]") {
  Fixed fixed = fix(dip());
  CHECK(happen(fixed, {event(Happening::Discarded, "2026-11-02 10:00", {2})}).empty());
  CHECK(happen(fixed, {event(Happening::Frozen, "2026-11-02 11:00")}).empty());
  CHECK(use_by_of(fixed, 0)->form == UseBy::Form::Frozen);
  CHECK(use_by_of(fixed, 1)->form == UseBy::Form::None);
  CHECK(fixed.batch.containers[1].discarded);
  CHECK_FALSE(fixed.batch.containers[0].discarded);
  CHECK(problem::text(happen(fixed, {event(Happening::Frozen, "2026-11-02 12:00", {2})})) ==
        QStringLiteral("frozen at Mon 2 Nov 2026 12:00, after it was discarded\n  correct the times, or the numbers of the containers\n"));
}

TEST_CASE("an opened food without a rule of its own falls under the rule set's from then on",
          "[batch][fixed][src:food-code-2022/3-501.17]") {
  Fixed fixed = fix(made("three-day-dip", 1, "2026-11-01 09:00", input("mayonnaise", "2026-11-20")));
  REQUIRE(fixed.when_opened);
  CHECK(fixed.questions.front().rules.size() == 2);
  CHECK(happen(fixed, {event(Happening::Opened, "2026-11-02 10:00", {1})}).empty());
  CHECK(fixed.questions[0].rules.size() == 3);
  CHECK(fixed.questions[1].rules.size() == 2);
  Fixed own = fix(dip());
  CHECK(happen(own, {event(Happening::Opened, "2026-11-02 10:00", {1})}).empty());
  CHECK(own.questions[0].rules.size() == own.questions[1].rules.size());
  CHECK(use_by_of(own, 0)->date == date("2026-11-04"));
}

TEST_CASE("a reduced-oxygen pack keeps the start that it was fixed with", "[batch][fixed]") {
  Fixed fixed = fix(made("vac-dip", 1, "2026-11-01 09:00", input("mayonnaise", "2026-12-20")));
  const QDateTime end = use_by_of(fixed, 0)->end;
  CHECK(happen(fixed, {event(Happening::Packed, "2026-11-03 10:00")}).empty());
  CHECK(use_by_of(fixed, 0)->end == end);
}

TEST_CASE("what happens later dates a lot as if it had stood in its record", "[batch][fixed][property]") {
  std::mt19937 random(1);
  int accepted = 0;
  int refused = 0;
  for (int round = 0; round < 120; ++round) {
    static const char* const products[] = {"dip", "three-day-dip", "vac-dip"};
    Record record = records_of(made(products[round % 3], 1, "2026-11-01 09:00", input("mayonnaise", "2026-11-20"))).front();
    Fixed fixed = fix_records({record}).front();
    for (int i = 0; i < 8; ++i) {
      const Event next = random_event(random, 4);
      Record with = record;
      with.events.push_back(next);
      const Fixed anew = fix_records({with}).front();
      const problem::Errors errors = happen(fixed, {next});
      CHECK(errors.empty() == anew.batch.refused.empty());
      if (!errors.empty()) {
        ++refused;
        continue;
      }
      ++accepted;
      record = with;
      check_same_dates(fixed, anew);
    }
    check_same_dates(fixed, fix_records({record}).front());
  }
  CHECK(accepted > 150);
  CHECK(refused > 150);
}

TEST_CASE("a lot whose cooling is to be shown is held for that alone, and dated when it is shown",
          "[batch][fixed][src:food-code-2022/3-501.14]") {
  Fixed fixed = fix(stock(kHot), kitchen(), "2026-06-01 12:30");
  CHECK(held_for_cooling_alone(fixed));
  CHECK(fixed.batch.use_bys.empty());
  CHECK(cooling_due(fixed) == at("2026-06-01 14:00"));
  REQUIRE(use_by_of(fixed, 0));
  CHECK(use_by_of(fixed, 0)->date == date("2026-06-07"));
  cool(fixed, {reading("2026-06-01 13:00", 70)}, {}, {}, at("2026-06-01 13:00"));
  CHECK(held_for_cooling_alone(fixed));
  CHECK(cooling_due(fixed) == at("2026-06-01 18:00"));
  cool(fixed, {reading("2026-06-01 17:00", 41)}, {}, {}, at("2026-06-01 17:00"));
  CHECK(fixed.batch.refused.empty());
  CHECK(fixed.batch.missing.isEmpty());
  CHECK_FALSE(cooling_due(fixed));
  const QByteArray all = QByteArray(kHot) + R"(, {"at": "2026-06-01 13:00", "core": "70 °F"}, {"at": "2026-06-01 17:00", "core": "41 °F"})";
  check_same_dates(fixed, fix(stock(all), kitchen(), "2026-06-01 17:00"));
}

TEST_CASE("a cooling that was pending is missed when its time is over, and a corrective reheat is judged afresh",
          "[batch][fixed][src:food-code-2022/3-501.14]") {
  Fixed fixed = fix(stock(kHot), kitchen(), "2026-06-01 12:30");
  judge_at(fixed, at("2026-06-01 14:00"));
  CHECK(fixed.batch.cooling.state == Cooling::State::Pending);
  judge_at(fixed, at("2026-06-01 14:01"));
  CHECK(fixed.batch.cooling.state == Cooling::State::Missed);
  CHECK(fixed.batch.refused.size() == 1);
  CHECK_FALSE(cooling_due(fixed));
  Event reheated = event(Happening::Reheated, "2026-06-01 15:00");
  reheated.temperature = measure::Temperature{1650, measure::Scale::Fahrenheit};
  reheated.seconds = 15;
  CHECK(happen(fixed, {reheated}).empty());
  cool(fixed, {reading("2026-06-01 15:10", 150)}, QStringLiteral("reheated"), {}, at("2026-06-01 15:10"));
  CHECK(fixed.batch.cooling.state == Cooling::State::Missed);
  cool(fixed, {}, {}, QStringLiteral("MK"), at("2026-06-01 15:10"));
  CHECK(fixed.batch.cooling.state == Cooling::State::Pending);
  cool(fixed, {reading("2026-06-01 16:00", 70), reading("2026-06-01 18:00", 40)}, {}, {}, at("2026-06-01 18:00"));
  CHECK(fixed.batch.refused.empty());
  cool(fixed, {reading("2026-06-01 20:00", 60)}, {}, {}, at("2026-06-01 20:00"));
  CHECK(fixed.batch.cooling.state == Cooling::State::Missed);
  CHECK(fixed.batch.use_bys.empty());
  CHECK(held_for_cooling_alone(fixed));
}

TEST_CASE("a lot that is refused for more than its cooling has no date even when that is shown", "[batch][fixed]") {
  Fixed fixed = fix(stock(kHot).replace("2026-06-03", "2026-05-30"), kitchen(), "2026-06-01 12:30");
  CHECK_FALSE(held_for_cooling_alone(fixed));
  CHECK(use_by_of(fixed, 0) == nullptr);
  cool(fixed, {reading("2026-06-01 13:00", 70), reading("2026-06-01 17:00", 41)}, {}, {}, at("2026-06-01 17:00"));
  CHECK(fixed.batch.cooling.state == Cooling::State::Passed);
  CHECK(fixed.batch.missing == QStringList{QStringLiteral("missing.past_its_date")});
  CHECK(use_by_of(fixed, 0) == nullptr);
}

TEST_CASE("a lot that was over before it was cooked is not released by its cooling", "[batch][fixed]") {
  const auto late = [](const QByteArray& readings) {
    return made("stock", 1, "2026-06-01 09:00",
                input("chicken-thigh", "2026-06-03") + "," + input("mayonnaise", "2026-06-01", "\"agreed_by\": \"MK\""),
                cooked("2026-06-02 08:00") + ", \"cooled\": [" + readings + "]");
  };
  const QByteArray hot = R"({"at": "2026-06-02 08:30", "core": "135 °F"})";
  Fixed fixed = fix(late(hot), kitchen(), "2026-06-02 09:00");
  REQUIRE(held_for_cooling_alone(fixed));
  cool(fixed, {reading("2026-06-02 10:00", 40)}, {}, {}, at("2026-06-02 10:00"));
  CHECK(fixed.batch.missing == QStringList{QStringLiteral("missing.past_its_date")});
  CHECK(use_by_of(fixed, 0) == nullptr);
  const Fixed once = fix(late(hot + R"(, {"at": "2026-06-02 10:00", "core": "40 °F"})"), kitchen(), "2026-06-02 10:00");
  CHECK(problem::text(once.batch.refused) == problem::text(fixed.batch.refused));
  check_same_dates(fixed, once);
}

TEST_CASE("a lot of which no date can be told is still discarded, once", "[batch][fixed]") {
  Fixed fixed = fix(made("puzzle", 1, "2026-11-01 09:00", input("butter", "2026-11-20") + "," + input("mystery-spice")));
  REQUIRE(!fixed.batch.refused.empty());
  CHECK(happen(fixed, {event(Happening::Discarded, "2026-11-02 10:00")}).empty());
  CHECK(fixed.batch.containers[3].discarded);
  CHECK(happen(fixed, {event(Happening::Frozen, "2026-11-02 11:00", {1})}).size() == 1);
}
