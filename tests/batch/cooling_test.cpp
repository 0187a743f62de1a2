// Tests of batch/cooling: the stages of cooling, the corrective action, and whether a cook met its minimum.
#include "batch/cooling.h"

#include "use_by_question.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::ask;
using State = Cooling::State;

namespace {

book::TimeAtTemperature way(int fahrenheit, int celsius, int seconds) { return {limit(fahrenheit, celsius), seconds}; }

// Figures of the FDA Food Code 2022: 3-501.14, 3-403.11, 3-401.12.
book::RuleSet food_code() {
  book::RuleSet rules;
  rules.cooling.resize(2);
  rules.cooling[0].from = limit(135, 57);
  rules.cooling[0].to = limit(70, 21);
  rules.cooling[0].within_seconds = 2 * 3600;
  rules.cooling[1].from = limit(70, 21);
  rules.cooling[1].to = limit(41, 5);
  rules.cooling[1].within_seconds = 6 * 3600;
  rules.cooling_from_ambient.resize(1);
  rules.cooling_from_ambient[0].from = limit(41, 5);
  rules.cooling_from_ambient[0].to = limit(41, 5);
  rules.cooling_from_ambient[0].within_seconds = 4 * 3600;
  rules.reheat = {{QStringLiteral("hot-holding"), way(165, 74, 15), 0, 2 * 3600, {}}};
  rules.microwave_cook = book::CookMinimum{QStringLiteral("microwave"), {}, {way(165, 74, 0)}, 0};
  rules.microwave_stand_seconds = 120;
  return rules;
}

QDateTime clock(const char* time) { return at(QStringLiteral("2026-11-25 ") + QString::fromLatin1(time)); }

CoolReading cool(const char* time, measure::Temperature core) { return {clock(time), core, {}}; }

Record record(std::vector<CoolReading> readings) {
  Record made;
  made.made_at = clock("09:00");
  made.made_to = clock("11:00");
  CookReading cook;
  cook.at = clock("11:30");
  cook.core = fahrenheit(180);
  made.cooked = {cook};
  made.cooled = std::move(readings);
  return made;
}

Record log(const char* at_135, const char* at_70, const char* at_41) {
  return record({cool(at_135, fahrenheit(135)), cool(at_70, fahrenheit(70)), cool(at_41, fahrenheit(41))});
}

Cooling next_day(const Record& made) { return cooling(food_code(), made, at("2026-11-26 09:00")); }

Event reheat(const char* time, measure::Temperature core, int seconds) {
  Event event;
  event.what = Happening::Reheated;
  event.at = clock(time);
  event.temperature = core;
  event.seconds = seconds;
  return event;
}

// Missed the first stage at 14:00, reheated at 14:30, cooled again.
Record corrected() {
  Record made = record({cool("12:00", fahrenheit(135)), cool("14:05", fahrenheit(75)), cool("15:00", fahrenheit(135)),
                        cool("16:30", fahrenheit(70)), cool("20:30", fahrenheit(40))});
  made.corrective_action = QStringLiteral("reheated and cooled in an ice bath");
  made.corrective_by = QStringLiteral("MR");
  made.events = {reheat("14:30", fahrenheit(168), 15)};
  return made;
}

CookReading core(measure::Temperature temperature, int seconds) {
  CookReading reading;
  reading.at = clock("11:30");
  reading.core = temperature;
  reading.seconds = seconds;
  return reading;
}

CookReading microwaved(measure::Temperature temperature, int stood_seconds) {
  CookReading reading = core(temperature, 0);
  reading.microwave = true;
  reading.stood_seconds = stood_seconds;
  return reading;
}

book::CookMinimum ground_beef() {
  return {
      QStringLiteral("ground-meat"), {}, {way(145, 63, 180), way(150, 66, 60), way(155, 68, 17), way(158, 70, 0)}, 0};
}

}  // namespace

TEST_CASE("135 at 12:00, 70 at 13:00, 41 at 18:00 passes", "[batch][cooling][src:food-code-2022/3-501.14(A)]") {
  CHECK(next_day(log("12:00", "13:00", "18:00")).state == State::Passed);
  CHECK(next_day(log("12:00", "14:00", "18:00")).state == State::Passed);
}

TEST_CASE("70 at 14:05 fails the first stage", "[batch][cooling][src:food-code-2022/3-501.14(A)]") {
  const Cooling judged = next_day(log("12:00", "14:05", "18:00"));
  CHECK(judged.state == State::Missed);
  CHECK(judged.why ==
        QStringLiteral("70 °F (21 °C) was not reached within 2 h, by Wed 25 Nov 2026 14:00: at 14:05 it read "
                       "70 °F"));
}

TEST_CASE("70 at 13:30 and 41 at 18:10 fails the six hours", "[batch][cooling][src:food-code-2022/3-501.14(A)]") {
  const Cooling judged = next_day(log("12:00", "13:30", "18:10"));
  CHECK(judged.state == State::Missed);
  CHECK(judged.why ==
        QStringLiteral("41 °F (5 °C) was not reached within 6 h, by Wed 25 Nov 2026 18:00: at 18:10 it read "
                       "41 °F"));
}

TEST_CASE("each reading is judged in its own scale", "[batch][cooling]") {
  CHECK(next_day(record({cool("12:00", celsius(57)), cool("13:00", celsius(21)), cool("18:00", celsius(5))})).state ==
        State::Passed);
  CHECK(next_day(record({cool("12:00", celsius(57)), cool("13:00", celsius(22)), cool("18:00", celsius(5))})).state ==
        State::Missed);
}

TEST_CASE("the order in which readings are written does not matter", "[batch][cooling]") {
  const Record made =
      record({cool("18:00", fahrenheit(41)), cool("12:00", fahrenheit(135)), cool("13:00", fahrenheit(70))});
  CHECK(next_day(made).state == State::Passed);
}

TEST_CASE("cooling starts at the last reading that was still hot", "[batch][cooling]") {
  const Record made = record({cool("11:40", fahrenheit(190)), cool("13:00", fahrenheit(140)),
                              cool("14:50", fahrenheit(70)), cool("18:50", fahrenheit(41))});
  CHECK(next_day(made).state == State::Passed);
}

TEST_CASE("warming up again does not restart the clock", "[batch][cooling]") {
  const Record made =
      record({cool("12:00", fahrenheit(135)), cool("13:30", fahrenheit(90)), cool("15:00", fahrenheit(140)),
              cool("16:00", fahrenheit(70)), cool("18:00", fahrenheit(41))});
  CHECK(next_day(made).state == State::Missed);
}

TEST_CASE("readings before the end of the cook do not count", "[batch][cooling][src:food-code-2022/3-501.14(A)]") {
  Record made = log("08:50", "10:00", "13:10");
  made.made_at = clock("08:00");
  made.made_to = std::nullopt;
  made.cooked[0].at = clock("14:00");
  const Cooling judged = next_day(made);
  CHECK(judged.state == State::Missed);
  CHECK(
      judged.why.endsWith(QStringLiteral("readings before the end of the cook, Wed 25 Nov 2026 14:00, do not count")));
  CHECK(cooling(food_code(), made, clock("15:00")).state == State::Pending);
  made.cooked[0].at = clock("08:50");
  CHECK(next_day(made).state == State::Passed);
}

TEST_CASE("the last hot reading of a cook ends it, a cold one does not", "[batch][cooling]") {
  Record made = log("12:00", "13:00", "18:00");
  made.cooked.push_back(made.cooked[0]);
  made.cooked[1].at = clock("13:30");
  CHECK(next_day(made).state == State::Missed);  // since then nothing at 70 is written until 18:00
  made.cooked[1].core = fahrenheit(120);
  CHECK(next_day(made).state == State::Passed);
}

TEST_CASE("food that was at 41 and is warmer again has missed its cooling",
          "[batch][cooling][src:food-code-2022/3-501.16]") {
  for (const int warm : {110, 60, 42}) {
    Record made = log("12:00", "13:00", "16:00");
    made.cooled.push_back(cool("17:00", fahrenheit(warm)));
    const Cooling judged = next_day(made);
    CHECK(judged.state == State::Missed);
    CHECK(judged.why.endsWith(QStringLiteral(" and was warmer again: at 17:00 it read %1 °F").arg(warm)));
    made.cooled.push_back(cool("17:30", fahrenheit(40)));
    CHECK(next_day(made).state == State::Missed);
  }
  Record cold = log("12:00", "13:00", "16:00");
  cold.cooled.push_back(cool("17:00", fahrenheit(41)));
  CHECK(next_day(cold).state == State::Passed);
}

TEST_CASE("food that was at 70 in time and is warmer after that time has missed the first stage", "[batch][cooling]") {
  const auto again = [](const char* time) {
    return next_day(record({cool("12:00", fahrenheit(135)), cool("13:00", fahrenheit(70)), cool(time, fahrenheit(75)),
                            cool("17:00", fahrenheit(41))}))
        .state;
  };
  CHECK(again("14:01") == State::Missed);
  CHECK(again("13:30") == State::Passed);
}

TEST_CASE("from room temperature too, food that is warmer again has missed its cooling", "[batch][cooling]") {
  const auto judged = [](int later) {
    const Record made =
        record({cool("11:10", fahrenheit(68)), cool("14:00", fahrenheit(41)), cool("15:00", fahrenheit(later))});
    return cooling_from_ambient(food_code(), made, at("2026-11-26 09:00")).state;
  };
  CHECK(judged(50) == State::Missed);
  CHECK(judged(40) == State::Passed);
}

TEST_CASE("food that was cooled and reheated is judged by the readings after that too", "[batch][cooling]") {
  Record made = log("12:00", "13:00", "16:00");
  made.events = {reheat("17:00", fahrenheit(168), 15)};
  CHECK(next_day(made).state == State::Passed);
  made.cooled.push_back(cool("20:00", fahrenheit(60)));
  CHECK(next_day(made).state == State::Missed);
  made.cooled.back() = cool("18:30", fahrenheit(70));
  made.cooled.push_back(cool("21:30", fahrenheit(41)));
  CHECK(next_day(made).state == State::Passed);
}

TEST_CASE("without a hot reading cooling starts at the end of the cook", "[batch][cooling]") {
  CHECK(next_day(record({cool("13:30", fahrenheit(70)), cool("17:30", fahrenheit(41))})).state == State::Passed);
  CHECK(next_day(record({cool("13:31", fahrenheit(70)), cool("17:30", fahrenheit(41))})).state == State::Missed);
}

TEST_CASE("without cook and hot reading cooling starts at the end of the making", "[batch][cooling]") {
  Record made = record({cool("13:00", fahrenheit(70)), cool("17:00", fahrenheit(41))});
  made.cooked.clear();
  CHECK(next_day(made).state == State::Passed);
  made.cooled[0] = cool("13:01", fahrenheit(70));
  CHECK(next_day(made).state == State::Missed);
}

TEST_CASE("while time still runs and readings lack, cooling is pending", "[batch][cooling]") {
  const Record made = record({cool("12:00", fahrenheit(135))});
  const Cooling judged = cooling(food_code(), made, clock("14:00"));
  CHECK(judged.state == State::Pending);
  CHECK(judged.why == QStringLiteral("70 °F (21 °C) is to be reached by Wed 25 Nov 2026 14:00"));
  const Record first_stage = record({cool("12:00", fahrenheit(135)), cool("13:00", fahrenheit(70))});
  CHECK(cooling(food_code(), first_stage, clock("17:59")).state == State::Pending);
}

TEST_CASE("when the time is over without a reading, cooling is missed", "[batch][cooling]") {
  const Record made = record({cool("12:00", fahrenheit(135)), cool("13:50", fahrenheit(80))});
  const Cooling judged = cooling(food_code(), made, clock("14:01"));
  CHECK(judged.state == State::Missed);
  CHECK(judged.why.endsWith(QStringLiteral("at 13:50 it read 80 °F")));
  const Cooling unread = cooling(food_code(), record({}), clock("13:31"));
  CHECK(unread.state == State::Missed);
  CHECK(unread.why.endsWith(QStringLiteral(": no reading")));
}

TEST_CASE("a reading that shows the miss is not waited out", "[batch][cooling]") {
  const Record made = record({cool("12:00", fahrenheit(135)), cool("14:05", fahrenheit(75))});
  CHECK(cooling(food_code(), made, clock("12:30")).state == State::Missed);
}

TEST_CASE("without stages there is nothing to cool", "[batch][cooling]") {
  CHECK(cooling(book::RuleSet(), record({}), clock("20:00")).state == State::NotNeeded);
  CHECK(cooling_from_ambient(book::RuleSet(), record({}), clock("20:00")).state == State::NotNeeded);
}

TEST_CASE("the figures of cooling are the rule set's", "[batch][cooling]") {
  book::RuleSet stricter = food_code();
  stricter.cooling[1].within_seconds = 4 * 3600;
  CHECK(cooling(stricter, log("12:00", "13:00", "18:00"), clock("20:00")).state == State::Missed);
  CHECK(cooling(stricter, log("12:00", "13:00", "16:00"), clock("20:00")).state == State::Passed);
}

TEST_CASE("food made from room-temperature ingredients reaches 41 within 4 hours",
          "[batch][cooling][src:food-code-2022/3-501.14(B)]") {
  const auto judged = [](std::vector<CoolReading> readings) {
    return cooling_from_ambient(food_code(), record(std::move(readings)), at("2026-11-26 09:00")).state;
  };
  CHECK(judged({cool("11:10", fahrenheit(68)), cool("15:00", fahrenheit(41))}) == State::Passed);
  CHECK(judged({cool("11:10", fahrenheit(68)), cool("15:01", fahrenheit(41))}) == State::Missed);
  CHECK(judged({cool("10:30", fahrenheit(68)), cool("14:31", fahrenheit(41))}) == State::Missed);
  CHECK(judged({cool("14:30", fahrenheit(68)), cool("15:30", fahrenheit(41))}) == State::Missed);
}

TEST_CASE("from room temperature too, cooling is pending while time runs", "[batch][cooling]") {
  CHECK(cooling_from_ambient(food_code(), record({}), clock("15:00")).state == State::Pending);
  CHECK(cooling_from_ambient(food_code(), record({}), clock("15:01")).state == State::Missed);
}

TEST_CASE("from room temperature, a making without a time is judged from its first reading", "[batch][cooling]") {
  Record made = record({cool("12:00", fahrenheit(68)), cool("16:00", fahrenheit(41))});
  made.made_at = clock("00:00");
  made.time_known = false;
  made.made_to = std::nullopt;
  CHECK(cooling_from_ambient(food_code(), made, clock("20:00")).state == State::Passed);
  made.cooled[1] = cool("16:01", fahrenheit(41));
  CHECK(cooling_from_ambient(food_code(), made, clock("20:00")).state == State::Missed);
}

TEST_CASE("a corrective action is judged afresh by the readings after the reheat", "[batch][cooling]") {
  CHECK(next_day(corrected()).state == State::Passed);
}

TEST_CASE("a corrective action without its reheat changes nothing", "[batch][cooling]") {
  Record made = corrected();
  made.events.clear();
  CHECK(next_day(made).why.endsWith(QStringLiteral("; no reheat that meets the minimum is written")));
  CHECK(next_day(made).state == State::Missed);
}

TEST_CASE("a reheat below the minimum is no corrective action", "[batch][cooling][src:food-code-2022/3-403.11]") {
  Record made = corrected();
  made.events = {reheat("14:30", fahrenheit(164), 15)};
  CHECK(next_day(made).state == State::Missed);
  made.events = {reheat("14:30", fahrenheit(165), 14)};
  CHECK(next_day(made).state == State::Missed);
  made.events = {reheat("14:30", fahrenheit(165), 15)};
  CHECK(next_day(made).state == State::Passed);
}

TEST_CASE("a reheat of some containers does not release the batch", "[batch][cooling]") {
  Record made = corrected();
  made.events[0].containers = {1, 2};
  CHECK(next_day(made).state == State::Missed);
}

TEST_CASE("a corrective action names who took it", "[batch][cooling]") {
  Record made = corrected();
  made.corrective_by.clear();
  CHECK(next_day(made).state == State::Missed);
  CHECK(next_day(made).why.endsWith(QStringLiteral("; the corrective action does not say who took it")));
}

TEST_CASE("a reheat that nobody calls a corrective action releases nothing", "[batch][cooling]") {
  Record made = corrected();
  made.corrective_action.clear();
  CHECK(next_day(made).state == State::Missed);
}

TEST_CASE("food is reheated and cooled once: a second miss is final", "[batch][cooling]") {
  Record made = corrected();
  made.cooled[3] = cool("17:05", fahrenheit(70));
  CHECK(next_day(made).why.endsWith(QStringLiteral("; it was reheated once already: discard it")));
  made.events.push_back(reheat("17:30", fahrenheit(168), 15));
  CHECK(next_day(made).state == State::Missed);
}

TEST_CASE("after the corrective reheat cooling is pending until its own time is over", "[batch][cooling]") {
  Record made = corrected();
  made.cooled.resize(2);
  CHECK(cooling(food_code(), made, clock("16:30")).state == State::Pending);
  CHECK(cooling(food_code(), made, clock("16:31")).state == State::Missed);
}

TEST_CASE("food that was warm for longer than the whole cooling time is past reheating",
          "[batch][cooling][src:practice]") {
  Record made = corrected();
  made.events = {reheat("18:01", fahrenheit(168), 15)};
  made.cooled = {cool("12:00", fahrenheit(135)), cool("14:05", fahrenheit(75)), cool("18:30", fahrenheit(135)),
                 cool("19:30", fahrenheit(70)), cool("20:30", fahrenheit(40))};
  CHECK(next_day(made).why.endsWith(QStringLiteral("; it was reheated after more than 6 h: discard it")));
  made.events = {reheat("18:00", fahrenheit(168), 15)};
  CHECK(next_day(made).state == State::Passed);
}

TEST_CASE("ground beef at 154 for 17 s is not cooked", "[batch][cooked][src:food-code-2022/3-401.11]") {
  CHECK_FALSE(cooked_enough({core(fahrenheit(154), 17)}, ground_beef(), food_code()));
  CHECK(cooked_enough({core(fahrenheit(155), 17)}, ground_beef(), food_code()));
  CHECK_FALSE(cooked_enough({core(fahrenheit(155), 16)}, ground_beef(), food_code()));
}

TEST_CASE("ground beef at 150 for 60 s is cooked", "[batch][cooked][src:food-code-2022/3-401.11]") {
  CHECK(cooked_enough({core(fahrenheit(150), 60)}, ground_beef(), food_code()));
  CHECK_FALSE(cooked_enough({core(fahrenheit(150), 59)}, ground_beef(), food_code()));
}

TEST_CASE("any of the ways is enough, and a hotter core for as long", "[batch][cooked][src:food-code-2022/3-401.11]") {
  CHECK(cooked_enough({core(fahrenheit(145), 180)}, ground_beef(), food_code()));
  CHECK(cooked_enough({core(fahrenheit(158), 0)}, ground_beef(), food_code()));
  CHECK(cooked_enough({core(fahrenheit(152), 60)}, ground_beef(), food_code()));
  CHECK_FALSE(cooked_enough({core(fahrenheit(144), 100000)}, ground_beef(), food_code()));
}

TEST_CASE("one of the readings must meet the minimum by itself", "[batch][cooked]") {
  CHECK_FALSE(cooked_enough({core(fahrenheit(150), 30), core(fahrenheit(150), 30)}, ground_beef(), food_code()));
  CHECK(cooked_enough({core(fahrenheit(120), 30), core(fahrenheit(158), 0)}, ground_beef(), food_code()));
}

TEST_CASE("no reading, not cooked", "[batch][cooked]") { CHECK_FALSE(cooked_enough({}, ground_beef(), food_code())); }

TEST_CASE("a cook is judged by the figure of the reading's own scale", "[batch][cooked]") {
  CHECK(cooked_enough({core(celsius(68), 17)}, ground_beef(), food_code()));
  CHECK_FALSE(cooked_enough({core(celsius(67), 17)}, ground_beef(), food_code()));
}

TEST_CASE("in a microwave oven raw animal food reaches 165 and stands 2 minutes",
          "[batch][cooked][src:food-code-2022/3-401.12]") {  // figures from memory
  CHECK(cooked_enough({microwaved(fahrenheit(165), 120)}, ground_beef(), food_code()));
  CHECK_FALSE(cooked_enough({microwaved(fahrenheit(165), 119)}, ground_beef(), food_code()));
  CHECK_FALSE(cooked_enough({microwaved(fahrenheit(160), 120)}, ground_beef(), food_code()));
}

TEST_CASE("a microwave oven does not go below a minimum that is higher", "[batch][cooked]") {
  const book::CookMinimum amended{QStringLiteral("poultry"), {}, {way(170, 77, 0)}, 0};
  CHECK_FALSE(cooked_enough({microwaved(fahrenheit(165), 120)}, amended, food_code()));
  CHECK(cooked_enough({microwaved(fahrenheit(170), 120)}, amended, food_code()));
}

TEST_CASE("without a microwave minimum in the rule set no microwaved food counts as cooked", "[batch][cooked]") {
  book::RuleSet rules = food_code();
  rules.microwave_cook.reset();
  CHECK_FALSE(cooked_enough({microwaved(fahrenheit(180), 600)}, ground_beef(), rules));
}
