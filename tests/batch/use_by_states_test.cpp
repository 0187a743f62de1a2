// Tests of batch/use_by: opening, hot holding, time control, holding after finishing, reduced-oxygen packs.
#include "batch/use_by.h"
#include "use_by_question.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::ask;
using book::State;

namespace {

Question with(Question asked, std::vector<Event> timeline) {
  asked.timeline = std::move(timeline);
  return asked;
}

Question time_control(measure::Temperature from) {
  return with(seven_days("2026-06-01 08:00"), {event(Happening::TimeControl, "2026-06-01 10:00", from)});
}

}  // namespace

TEST_CASE("the day of opening is day 1", "[batch][use_by][src:food-code-2022/3-501.17(B)]") {
  const Question asked = question("2026-10-01 08:00", {rule(State::Opened, days(7))});
  CHECK(last_day(with(asked, {event(Happening::Opened, "2026-10-01 08:00")})) == day("2026-10-07"));
}

TEST_CASE("opened on Apr 1: use or discard Apr 7", "[batch][use_by][src:snhd-datemarking/faq]") {
  const Question asked = question("2026-04-01 09:00", {rule(State::Opened, days(7))});
  CHECK(last_day(with(asked, {event(Happening::Opened, "2026-04-01 09:00")})) == day("2026-04-07"));
}

TEST_CASE("an opened package never goes past the maker's use-by", "[batch][use_by][src:food-code-2022/3-501.17(B)]") {
  Question asked = question("2026-10-01 08:00", {rule(State::Opened, days(7))});
  asked.timeline = {event(Happening::Opened, "2026-10-01 08:00")};
  asked.caps = {makers_date("2026-10-05")};
  CHECK(last_day(asked) == day("2026-10-05"));
  asked.caps = {makers_date("2026-10-31")};
  CHECK(last_day(asked) == day("2026-10-07"));
}

TEST_CASE("opening only ever shortens a chilled life", "[batch][use_by]") {
  Question asked = question("2026-06-01 08:00", {rule(State::Chilled, days(14)), rule(State::Opened, days(7))});
  CHECK(last_day(asked) == day("2026-06-14"));
  CHECK(last_day(with(asked, {event(Happening::Opened, "2026-06-03 08:00")})) == day("2026-06-09"));
  CHECK(last_day(with(asked, {event(Happening::Opened, "2026-06-12 08:00")})) == day("2026-06-14"));
}

TEST_CASE("opened twice, the first counts", "[batch][use_by]") {
  Question asked = question("2026-06-01 08:00", {rule(State::Opened, days(7))});
  asked.timeline = {event(Happening::Opened, "2026-06-03 08:00"), event(Happening::Opened, "2026-06-01 09:00")};
  CHECK(last_day(asked) == day("2026-06-07"));
}

TEST_CASE("a TCS food that is opened without a limit for opened food is refused", "[batch][use_by]") {
  const Question asked = with(seven_days("2026-06-01 08:00"), {event(Happening::Opened, "2026-06-02 08:00")});
  CHECK(refusal(asked).contains(QStringLiteral("no limit for its state: opened")));
}

TEST_CASE("days opened stand still in the freezer", "[batch][use_by][src:food-code-2022/3-501.18(A)(1)]") {
  Question asked = question("2026-06-01 08:00", {rule(State::Opened, days(7))});
  asked.timeline = {event(Happening::Opened, "2026-06-01 08:00"), event(Happening::Frozen, "2026-06-03 08:00"),
                    event(Happening::Thawed, "2026-06-20 08:00")};
  CHECK(last_day(asked) == day("2026-06-23"));
}

TEST_CASE("opened in the freezer, its days start at thawing", "[batch][use_by]") {
  Question asked = question("2026-06-01 08:00", {rule(State::Chilled, days(30)), rule(State::Opened, days(7))});
  asked.timeline = {event(Happening::Frozen, "2026-06-01 09:00"), event(Happening::Opened, "2026-06-03 08:00")};
  CHECK(use_by(asked)->days_left == 7);
  asked.timeline.push_back(event(Happening::Thawed, "2026-06-20 08:00"));
  CHECK(last_day(asked) == day("2026-06-26"));
}

TEST_CASE("hot holding has a limit of its own", "[batch][use_by]") {
  Question asked = seven_days("2026-06-01 08:00");
  asked.rules.push_back(rule(State::HotHeld, hours(4)));
  asked.timeline = {event(Happening::HotHeld, "2026-06-01 11:30")};
  CHECK(last_instant(asked) == at("2026-06-01 15:30"));
}

TEST_CASE("hot holding a TCS food without a limit for it is refused", "[batch][use_by]") {
  CHECK(refusal(with(seven_days("2026-06-01 08:00"), {event(Happening::HotHeld, "2026-06-01 11:30")}))
            .contains(QStringLiteral("no limit for its state: hot held")));
}

TEST_CASE("hot holding below the hot-holding limit is refused", "[batch][use_by][src:food-code-2022/3-501.16]") {
  Question asked = seven_days("2026-06-01 08:00");
  asked.rules.push_back(rule(State::HotHeld, hours(4)));
  CHECK(refusal(with(asked, {event(Happening::HotHeld, "2026-06-01 11:30", fahrenheit(134))})) ==
        QStringLiteral(
            "hot holding at 134 °F is below 135 °F (57 °C)\n  reheat it, or put it on time control, or discard it"));
  CHECK(refusal(with(asked, {event(Happening::HotHeld, "2026-06-01 11:30", celsius(57))})) == QString());
}

TEST_CASE("holding after finishing has a limit of its own", "[batch][use_by]") {
  Question asked = seven_days("2026-06-01 08:00");
  asked.rules.push_back(rule(State::Finished, hours(2)));
  asked.timeline = {event(Happening::Finished, "2026-06-03 18:00")};
  CHECK(last_instant(asked) == at("2026-06-03 20:00"));
  asked.rules.pop_back();
  CHECK(refusal(asked).contains(QStringLiteral("no limit for its state: finished")));
}

TEST_CASE("the earliest end in force wins: finished on its last evening", "[batch][use_by]") {
  Question asked = seven_days("2026-06-01 08:00");
  asked.rules.push_back(rule(State::Finished, hours(4)));
  asked.timeline = {event(Happening::Finished, "2026-06-07 22:00")};
  CHECK(last_day(asked) == day("2026-06-07"));
}

TEST_CASE("out of the cooler at 10:00 on four hours: 14:00", "[batch][use_by][src:ga-inspection/time-stamp]") {
  const auto answer = use_by(time_control(fahrenheit(41)));
  REQUIRE(answer);
  CHECK(answer->form == UseBy::Form::Instant);
  CHECK(answer->end == at("2026-06-01 14:00"));
  CHECK(answer->time_control);
  CHECK_FALSE(answer->never_above);
  CHECK(answer->reasons.front().authority == QStringLiteral("FDA Food Code 2022 3-501.19(B)"));
}

TEST_CASE("time control starts only from food at the cold limit or below, or the hot limit or above",
          "[batch][use_by][src:food-code-2022/3-501.19]") {
  for (const measure::Temperature good :
       {fahrenheit(41), fahrenheit(135), fahrenheit(33), fahrenheit(180), celsius(5), celsius(57)}) {
    CHECK(refusal(time_control(good)) == QString());
  }
  for (const measure::Temperature bad : {fahrenheit(42), fahrenheit(134), fahrenheit(70), celsius(6), celsius(56)}) {
    CHECK(refusal(time_control(bad)) != QString());
  }
  CHECK(refusal(time_control(fahrenheit(50))) ==
        QStringLiteral(
            "time control started from 50 °F\n  it starts only from food at 41 °F (5 °C) or below, or at 135 °F "
            "(57 °C) or above; discard this food"));
}

TEST_CASE("time control needs the temperature it started from", "[batch][use_by][src:food-code-2022/3-501.19]") {
  const Question asked = with(seven_days("2026-06-01 08:00"), {event(Happening::TimeControl, "2026-06-01 10:00")});
  CHECK(refusal(asked) == QStringLiteral("time control without the temperature it started from\n"
                                         "  write the core temperature when it left temperature control"));
}

TEST_CASE("time control never restarts", "[batch][use_by]") {
  Question asked = time_control(fahrenheit(41));
  asked.timeline.push_back(event(Happening::TimeControl, "2026-06-01 12:00", fahrenheit(41)));
  CHECK(refusal(asked) ==
        QStringLiteral("put on time control a second time at Mon 1 Jun 2026 12:00: it is never restarted\n"
                       "  discard the food when its first time is over"));
}

TEST_CASE("time control is terminal: only finishing or discarding may follow", "[batch][use_by]") {
  for (const Happening what : {Happening::Frozen, Happening::Thawed, Happening::Opened, Happening::HotHeld,
                               Happening::Packed, Happening::Reheated}) {
    Question asked = time_control(fahrenheit(41));
    asked.timeline.push_back(event(what, "2026-06-01 12:00"));
    CHECK(refusal(asked).contains(QStringLiteral(", after it was put on time control")));
  }
  Question finished = time_control(fahrenheit(41));
  finished.timeline.push_back(event(Happening::Finished, "2026-06-01 12:00"));
  CHECK(last_instant(finished) == at("2026-06-01 14:00"));
  finished.timeline.push_back(event(Happening::Discarded, "2026-06-01 13:00"));
  CHECK(use_by(finished)->form == UseBy::Form::None);
}

TEST_CASE("finishing shortens time control and never lengthens it", "[batch][use_by]") {
  Question asked = time_control(fahrenheit(41));
  asked.rules.push_back(rule(State::Finished, hours(1)));
  asked.timeline.push_back(event(Happening::Finished, "2026-06-01 12:00"));
  CHECK(last_instant(asked) == at("2026-06-01 13:00"));
  asked.rules.back() = rule(State::Finished, hours(8));
  CHECK(last_instant(asked) == at("2026-06-01 14:00"));
}

TEST_CASE("time control never lengthens a use-by", "[batch][use_by]") {
  Question asked = seven_days("2026-06-01 08:00");
  asked.timeline = {event(Happening::TimeControl, "2026-06-07 22:00", fahrenheit(41))};
  CHECK(last_day(asked) == day("2026-06-07"));
}

TEST_CASE("a cold start may have six hours where the product's own rule asks for them",
          "[batch][use_by][src:food-code-2022/3-501.19]") {
  Question asked = time_control(fahrenheit(41));
  asked.rules.push_back(rule(State::TimeControl, hours(6)));
  CHECK(last_instant(asked) == at("2026-06-01 16:00"));
  CHECK(use_by(asked)->never_above == limit(70, 21));
  CHECK(use_by(asked)->warnings.empty());
}

TEST_CASE("six hours need a cold start: from a hot one there are four",
          "[batch][use_by][src:food-code-2022/3-501.19]") {
  Question asked = time_control(fahrenheit(140));
  asked.rules.push_back(rule(State::TimeControl, hours(6)));
  CHECK(last_instant(asked) == at("2026-06-01 14:00"));
  CHECK_FALSE(use_by(asked)->never_above);
  CHECK(use_by(asked)->warnings ==
        QStringList{
            QStringLiteral("time control is 4 h, not longer: the longer time needs a start at 41 °F (5 °C) or below")});
}

TEST_CASE("no rule of a product gives more than the rule set's six hours", "[batch][use_by]") {
  Question asked = time_control(fahrenheit(41));
  asked.rules.push_back(rule(State::TimeControl, hours(10)));
  CHECK(last_instant(asked) == at("2026-06-01 16:00"));
  asked.rules.push_back(rule(State::TimeControl, hours(2)));
  CHECK(last_instant(asked) == at("2026-06-01 12:00"));
}

TEST_CASE("a product's own shorter time control decides", "[batch][use_by]") {
  Question asked = time_control(fahrenheit(41));
  asked.rules.push_back(rule(State::TimeControl, hours(3)));
  CHECK(last_instant(asked) == at("2026-06-01 13:00"));
}

TEST_CASE("the figures of time control are the rule set's", "[batch][use_by]") {
  Question asked = time_control(fahrenheit(41));
  asked.hot_or_cold_start.length = hours(3);
  CHECK(last_instant(asked) == at("2026-06-01 13:00"));
  asked.cold_holding = limit(38, 3);
  CHECK(refusal(asked).contains(QStringLiteral("38 °F (3 °C) or below")));
}

TEST_CASE("time control across the clocks going back is four elapsed hours", "[batch][use_by]") {
  const Question asked =
      with(seven_days("2026-10-31 08:00"), {event(Happening::TimeControl, "2026-10-31 23:30", fahrenheit(41))});
  CHECK(last_instant(asked) == at("2026-11-01 02:30"));
}

TEST_CASE("nothing but discarding happens to food after its end", "[batch][use_by][src:food-code-2022/3-501.18]") {
  Question asked = seven_days("2026-10-01 10:00");
  asked.rules.push_back(rule(State::Opened, days(3)));
  asked.rules.push_back(rule(State::HotHeld, hours(4)));
  asked.rules.push_back(rule(State::Finished, hours(2)));
  for (const Happening what : {Happening::Opened, Happening::HotHeld, Happening::TimeControl, Happening::Finished,
                               Happening::Packed, Happening::Reheated}) {
    asked.timeline = {event(what, "2026-10-20 10:00", fahrenheit(what == Happening::TimeControl ? 40 : 165))};
    CHECK(refusal(asked) ==
          name(what) +
              QStringLiteral(" at Tue 20 Oct 2026 10:00, after its end, Wed 7 Oct 2026: chilled, 7 days, day 1 is "
                             "Thu 1 Oct 2026\n  discard it, or correct the time if it was written wrongly"));
    asked.timeline.front().at = at("2026-10-07 23:59");
    CHECK(refusal(asked) == QString());
    asked.timeline.front().at = at("2026-10-08 00:00");
    CHECK(refusal(asked) != QString());
  }
  asked.timeline = {event(Happening::Discarded, "2026-10-20 10:00")};
  CHECK(refusal(asked) == QString());
}

TEST_CASE("the end that an event is measured against is the one then in force", "[batch][use_by]") {
  Question asked = seven_days("2026-10-01 10:00");
  asked.rules.push_back(rule(State::Opened, days(3)));
  asked.timeline = {event(Happening::Frozen, "2026-10-02 10:00"), event(Happening::Thawed, "2026-10-20 10:00"),
                    event(Happening::Opened, "2026-10-24 10:00")};
  CHECK(last_day(asked) == day("2026-10-24"));  // five of seven days were left
  asked.timeline.back().at = at("2026-10-25 10:00");
  CHECK(refusal(asked).contains(QStringLiteral("opened at Sun 25 Oct 2026 10:00, after its end, Sat 24 Oct 2026")));
  asked.timeline.back().at = at("2026-10-21 10:00");
  asked.timeline.push_back(event(Happening::Reheated, "2026-10-24 10:00"));
  CHECK(refusal(asked).contains(QStringLiteral("reheated at Sat 24 Oct 2026 10:00, after its end, Fri 23 Oct 2026")));
}

TEST_CASE("time control that is over cannot be followed by finishing", "[batch][use_by]") {
  Question asked = time_control(fahrenheit(41));
  asked.rules.push_back(rule(State::Finished, hours(8)));
  asked.timeline.push_back(event(Happening::Finished, "2026-06-01 14:00"));
  CHECK(
      refusal(asked).contains(QStringLiteral("finished at Mon 1 Jun 2026 14:00, after its end, Mon 1 Jun 2026 14:00")));
  asked.timeline.back().at = at("2026-06-01 13:59");
  CHECK(last_instant(asked) == at("2026-06-01 14:00"));
}

TEST_CASE("a maker's date runs out in the freezer: no thawing after it", "[batch][use_by]") {
  Question asked = seven_days("2026-06-01 08:00");
  asked.caps = {makers_date("2026-06-10")};
  asked.timeline = {event(Happening::Frozen, "2026-06-02 08:00"), event(Happening::Thawed, "2026-06-11 08:00")};
  CHECK(
      refusal(asked).contains(QStringLiteral("thawed at Thu 11 Jun 2026 08:00, after its end, Wed 10 Jun 2026: tuna")));
  asked.timeline.back().at = at("2026-06-10 08:00");
  CHECK(last_day(asked) == day("2026-06-10"));
}

TEST_CASE("a best before alone stops nothing", "[batch][use_by]") {
  Question asked = question("2026-06-01 08:00", {rule(State::Ambient, months(1), book::EndKind::BestBefore)});
  asked.tcs = false;
  asked.timeline = {event(Happening::Opened, "2026-08-01 08:00")};
  CHECK(last_day(asked) == day("2026-07-01"));
  asked.rules.front().kind = book::EndKind::UseBy;
  CHECK(refusal(asked).contains(QStringLiteral("after its end")));
}

TEST_CASE("a reduced-oxygen pack's limit runs from packing", "[batch][use_by][src:food-code-2022/3-502.12]") {
  Rule pack = rule(State::Chilled, days(7));
  pack.name = QStringLiteral("reduced oxygen pack");
  pack.starts_at = at("2026-06-02 08:00");
  Question asked = question("2026-06-01 08:00", {rule(State::Chilled, days(14)), pack});
  asked.timeline = {event(Happening::Packed, "2026-06-02 08:00")};
  CHECK(last_day(asked) == day("2026-06-08"));
  CHECK(use_by(asked)->reasons.front().rule == QStringLiteral("reduced oxygen pack, 7 days, day 1 is Tue 2 Jun 2026"));
}

TEST_CASE("a reduced-oxygen pack's limit excludes time frozen", "[batch][use_by][src:food-code-2022/3-502.12]") {
  Rule pack = rule(State::Chilled, days(7));
  pack.starts_at = at("2026-06-02 08:00");
  Question asked = question("2026-06-01 08:00", {rule(State::Chilled, days(14)), pack});
  asked.timeline = {event(Happening::Frozen, "2026-06-03 08:00"), event(Happening::Thawed, "2026-07-01 08:00")};
  CHECK(last_day(asked) == day("2026-07-05"));  // two of seven days used
}

TEST_CASE("events at one time keep the order given, others are sorted", "[batch][use_by]") {
  Question asked = seven_days("2026-06-01 08:00");
  asked.timeline = {event(Happening::Thawed, "2026-06-10 08:00"), event(Happening::Frozen, "2026-06-02 08:00")};
  CHECK(last_day(asked) == day("2026-06-14"));
  asked.timeline = {event(Happening::Frozen, "2026-06-02 08:00"), event(Happening::Thawed, "2026-06-02 08:00")};
  CHECK(refusal(asked) == QString());
  asked.timeline = {event(Happening::Thawed, "2026-06-02 08:00"), event(Happening::Frozen, "2026-06-02 08:00")};
  CHECK(refusal(asked).contains(QStringLiteral("when it was not frozen")));
}
