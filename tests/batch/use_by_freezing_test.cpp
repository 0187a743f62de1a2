// Tests of batch/use_by: chilled time as a budget that the freezer stops.
#include "batch/use_by.h"
#include "use_by_question.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::ask;
using book::EndKind;
using book::FreezingDay;
using book::State;

namespace {

// Made on Dec 1; frozen on Dec 3, which is day 3.
Question frozen_on_day_3(FreezingDay setting) {
  Question asked = seven_days("2026-12-01 10:00");
  asked.freezing_day = setting;
  asked.timeline = {event(Happening::Frozen, "2026-12-03 15:00")};
  return asked;
}

Question thawed(Question asked, const char* when) {
  asked.timeline.push_back(event(Happening::Thawed, when));
  return asked;
}

}  // namespace

TEST_CASE("where the day of freezing counts, frozen on day 3 the thaw day is day 4",
          "[batch][use_by][src:gilmer-wv/freezing][src:jefferson-co/freezing]") {
  const Question asked = frozen_on_day_3(FreezingDay::Counts);
  CHECK(use_by(asked)->days_left == 4);
  CHECK(last_day(thawed(asked, "2026-12-20 08:00")) == day("2026-12-23"));  // days 4, 5, 6, 7
}

TEST_CASE("where the day of freezing is free, frozen on day 3 the thaw day is day 3",
          "[batch][use_by][src:nc-datemarking/freezing]") {
  const Question asked = frozen_on_day_3(FreezingDay::Free);
  CHECK(use_by(asked)->days_left == 5);
  CHECK(last_day(thawed(asked, "2026-12-20 08:00")) == day("2026-12-24"));  // days 3, 4, 5, 6, 7
}

TEST_CASE("the day of freezing counts unless the kitchen says otherwise: the shorter life",
          "[batch][use_by][src:food-code-2022/3-501.18(A)(1)]") {
  CHECK(Question().freezing_day == FreezingDay::Counts);
}

TEST_CASE("the reason says which setting was used", "[batch][use_by]") {
  CHECK(use_by(thawed(frozen_on_day_3(FreezingDay::Counts), "2026-12-20 08:00"))->reasons.front().rule ==
        QStringLiteral(
            "chilled, 7 days, day 1 is Tue 1 Dec 2026; frozen Thu 3 Dec 2026 with 4 days left (the day of freezing "
            "counts), out of the freezer Sun 20 Dec 2026"));
  CHECK(use_by(frozen_on_day_3(FreezingDay::Free))->reasons.front().rule ==
        QStringLiteral(
            "chilled, 7 days, day 1 is Tue 1 Dec 2026; frozen Thu 3 Dec 2026 with 5 days left (the day of freezing "
            "is free)"));
}

TEST_CASE("a frozen container has no use-by: frozen on, days left after thawing", "[batch][use_by]") {
  const auto answer = use_by(frozen_on_day_3(FreezingDay::Counts));
  REQUIRE(answer);
  CHECK(answer->form == UseBy::Form::Frozen);
  CHECK_FALSE(answer->end.isValid());
  CHECK_FALSE(answer->date.isValid());
  CHECK(answer->frozen_on == day("2026-12-03"));
  CHECK(answer->days_left == 4);
  CHECK_FALSE(answer->frozen_best_before);
  CHECK_FALSE(answer->never_past);
  CHECK_FALSE(answer->previously_frozen);
}

TEST_CASE("time frozen does not count, however long", "[batch][use_by][src:food-code-2022/3-501.18(A)(1)]") {
  CHECK(last_day(thawed(frozen_on_day_3(FreezingDay::Counts), "2026-12-04 08:00")) == day("2026-12-07"));
  CHECK(last_day(thawed(frozen_on_day_3(FreezingDay::Counts), "2027-12-04 08:00")) == day("2027-12-07"));
}

TEST_CASE("freezing with no day left is refused", "[batch][use_by]") {
  Question asked = seven_days("2026-12-01 10:00");
  asked.timeline = {event(Happening::Frozen, "2026-12-07 15:00")};  // day 7
  CHECK(refusal(asked) ==
        QStringLiteral("frozen at Mon 7 Dec 2026 15:00 with no day left: chilled, 7 days, day 1 is Tue 1 "
                       "Dec 2026\n  use it before its use-by or discard it; the day of freezing counts in "
                       "this kitchen"));
  asked.timeline = {event(Happening::Frozen, "2026-12-06 15:00")};  // day 6
  CHECK(use_by(asked)->days_left == 1);
}

TEST_CASE("freezing on the last day leaves that day where the day of freezing is free", "[batch][use_by]") {
  Question asked = seven_days("2026-12-01 10:00");
  asked.freezing_day = FreezingDay::Free;
  asked.timeline = {event(Happening::Frozen, "2026-12-07 15:00")};
  CHECK(use_by(asked)->days_left == 1);
  asked.timeline = {event(Happening::Frozen, "2026-12-08 15:00")};
  CHECK(refusal(asked).contains(QStringLiteral("the day of the first freezing is free in this kitchen")));
}

TEST_CASE("freezing with no day left stays refused once it was thawed", "[batch][use_by]") {
  Question asked = seven_days("2026-12-01 10:00");
  asked.timeline = {event(Happening::Frozen, "2026-12-09 15:00"), event(Happening::Thawed, "2026-12-10 15:00")};
  CHECK(refusal(asked).contains(QStringLiteral("with no day left")));
}

TEST_CASE("freezing, thawing and freezing again uses up days each time", "[batch][use_by]") {
  Question asked = thawed(frozen_on_day_3(FreezingDay::Counts), "2026-12-20 08:00");  // 4 days left
  asked.timeline.push_back(event(Happening::Frozen, "2026-12-21 08:00"));             // 2 of them used
  CHECK(use_by(asked)->days_left == 2);
  CHECK(use_by(asked)->previously_frozen);
  CHECK(last_day(thawed(asked, "2027-01-10 08:00")) == day("2027-01-11"));
  asked.timeline.back() = event(Happening::Frozen, "2026-12-23 08:00");  // all 4 used
  CHECK(refusal(asked).contains(QStringLiteral("with no day left")));
}

TEST_CASE("the day of a second freezing counts in any kitchen", "[batch][use_by]") {
  Question asked = thawed(frozen_on_day_3(FreezingDay::Free), "2026-12-20 08:00");  // 5 days left
  asked.timeline.push_back(event(Happening::Frozen, "2026-12-20 18:00"));
  CHECK(use_by(asked)->days_left == 4);
  CHECK(last_day(thawed(asked, "2027-01-10 08:00")) == day("2027-01-13"));
}

TEST_CASE("the day of freezing counts for what is made of food that was frozen before", "[batch][use_by]") {
  Question asked = seven_days("2026-10-10 10:00");
  asked.freezing_day = FreezingDay::Free;
  asked.caps = {cap("salsa", "2026-10-16")};
  asked.timeline = {event(Happening::Frozen, "2026-10-10 15:00"), event(Happening::Thawed, "2026-10-20 08:00")};
  CHECK(last_day(asked) == day("2026-10-26"));
  asked.caps.front().frozen_before = true;
  CHECK(last_day(asked) == day("2026-10-25"));
}

TEST_CASE("the day of freezing counts for a thawed life: that freezing is a second one", "[batch][use_by]") {
  Question asked = seven_days("2026-12-01 10:00");
  asked.freezing_day = FreezingDay::Free;
  asked.rules = {rule(State::Chilled, days(30)), rule(State::Thawed, days(3))};
  asked.timeline = {event(Happening::Frozen, "2026-12-01 15:00"), event(Happening::Thawed, "2026-12-10 08:00"),
                    event(Happening::Frozen, "2026-12-10 18:00")};
  CHECK(last_day(thawed(asked, "2026-12-20 08:00")) == day("2026-12-21"));  // two of three days left
}

TEST_CASE("made and frozen on one day uses that day, or none", "[batch][use_by]") {
  Question asked = seven_days("2026-12-01 10:00");
  asked.timeline = {event(Happening::Frozen, "2026-12-01 15:00")};
  CHECK(use_by(asked)->days_left == 6);
  asked.freezing_day = FreezingDay::Free;
  CHECK(use_by(asked)->days_left == 7);
}

TEST_CASE("frozen in the moment it was made is no way around the day of freezing", "[batch][use_by]") {
  Question asked = seven_days("2026-12-01 10:00");
  asked.timeline = {event(Happening::Frozen, "2026-12-01 10:00")};
  CHECK(use_by(asked)->days_left == 6);
}

TEST_CASE("previously frozen carries forward", "[batch][use_by]") {
  CHECK(use_by(thawed(frozen_on_day_3(FreezingDay::Counts), "2026-12-20 08:00"))->previously_frozen);
  CHECK_FALSE(use_by(seven_days("2026-12-01 10:00"))->previously_frozen);
}

TEST_CASE("a thawed life of its own may be shorter", "[batch][use_by]") {
  Question asked = frozen_on_day_3(FreezingDay::Counts);
  asked.rules.push_back(rule(State::Thawed, days(2)));
  CHECK(use_by(asked)->days_left == 2);
  CHECK(last_day(thawed(asked, "2026-12-20 08:00")) == day("2026-12-21"));
}

TEST_CASE("a longer thawed life loses", "[batch][use_by]") {
  Question asked = frozen_on_day_3(FreezingDay::Counts);
  asked.rules.push_back(rule(State::Thawed, days(30)));
  CHECK(use_by(asked)->days_left == 4);
  const auto answer = use_by(thawed(asked, "2026-12-20 08:00"));
  CHECK(answer->date == day("2026-12-23"));
  CHECK_FALSE(answer->reasons.back().decided);
}

TEST_CASE("a thawed life that starts with day 0 has a day more", "[batch][use_by]") {
  Question asked = frozen_on_day_3(FreezingDay::Counts);
  asked.rules.push_back(rule(State::Thawed, days(2, 0)));
  CHECK(use_by(asked)->days_left == 3);
  CHECK(last_day(thawed(asked, "2026-12-20 08:00")) == day("2026-12-22"));
}

TEST_CASE("a thawed life is not renewed by freezing and thawing again", "[batch][use_by]") {
  Question asked = seven_days("2026-12-01 10:00");
  asked.rules = {rule(State::Chilled, days(30)), rule(State::Thawed, days(3))};
  asked.timeline = {event(Happening::Frozen, "2026-12-01 15:00"), event(Happening::Thawed, "2026-12-10 08:00"),
                    event(Happening::Frozen, "2026-12-11 08:00")};
  CHECK(use_by(asked)->days_left == 1);
  CHECK(last_day(thawed(asked, "2026-12-20 08:00")) == day("2026-12-20"));
}

TEST_CASE("an hours limit stops exactly while it is frozen", "[batch][use_by]") {
  Question asked = question("2026-12-01 10:00", {rule(State::Chilled, hours(72))});
  asked.timeline = {event(Happening::Frozen, "2026-12-01 20:00"), event(Happening::Thawed, "2026-12-20 08:00")};
  CHECK(last_instant(asked) == at("2026-12-22 22:00"));  // 10 of 72 h were used
}

TEST_CASE("hours are told on a frozen label as the whole days that surely fit", "[batch][use_by]") {
  Question asked = question("2026-12-01 10:00", {rule(State::Chilled, hours(59))});
  asked.timeline = {event(Happening::Frozen, "2026-12-01 20:00")};
  CHECK(use_by(asked)->days_left == 2);  // 49 h: two days, one of them with 25 hours
  asked.rules = {rule(State::Chilled, hours(58))};
  CHECK(use_by(asked)->days_left == 1);
}

TEST_CASE("freezing with less than a whole day of hours left is refused", "[batch][use_by]") {
  Question asked = question("2026-12-01 10:00", {rule(State::Chilled, hours(24))});
  asked.timeline = {event(Happening::Frozen, "2026-12-01 20:00")};
  CHECK(refusal(asked).contains(QStringLiteral("with no day left: chilled, 24 h from Tue 1 Dec 2026 10:00")));
  CHECK(last_instant(thawed(asked, "2026-12-20 08:00")) == at("2026-12-20 22:00"));
}

TEST_CASE("hours that have run out cannot be frozen, thawed or not", "[batch][use_by]") {
  Question asked = question("2026-12-01 10:00", {rule(State::Chilled, hours(4))});
  asked.timeline = {event(Happening::Frozen, "2026-12-01 14:00"), event(Happening::Thawed, "2026-12-20 08:00")};
  CHECK(refusal(asked).contains(QStringLiteral("with no day left")));
}

TEST_CASE("a thawed life in hours too short for a day is refused on a frozen label", "[batch][use_by]") {
  Question asked = frozen_on_day_3(FreezingDay::Counts);
  asked.rules.push_back(rule(State::Thawed, hours(24)));
  CHECK(refusal(asked) ==
        QStringLiteral("24 h after thawing are less than a whole day, which a frozen label cannot say\n"
                       "  state the limit for thawed food in days"));
  CHECK(last_instant(thawed(asked, "2026-12-20 08:00")) == at("2026-12-21 08:00"));
}

TEST_CASE("frozen best before is counted in months from the day of freezing", "[batch][use_by]") {
  Question asked = frozen_on_day_3(FreezingDay::Counts);
  asked.rules.push_back(rule(State::Frozen, months(3), EndKind::BestBefore));
  const auto answer = use_by(asked);
  REQUIRE(answer);
  CHECK(answer->frozen_best_before == day("2027-03-03"));
  CHECK(answer->end == at("2027-03-04 00:00"));
  CHECK(answer->days_left == 4);
  CHECK(answer->reasons.back().rule == QStringLiteral("frozen, 3 months from Thu 3 Dec 2026"));
}

TEST_CASE("frozen twice, the frozen best before is counted from the first", "[batch][use_by]") {
  Question asked = thawed(frozen_on_day_3(FreezingDay::Counts), "2026-12-20 08:00");
  asked.rules.push_back(rule(State::Frozen, months(3), EndKind::BestBefore));
  asked.timeline.push_back(event(Happening::Frozen, "2026-12-20 18:00"));
  CHECK(use_by(asked)->frozen_best_before == day("2027-03-03"));
  CHECK(use_by(asked)->frozen_on == day("2026-12-20"));
}

TEST_CASE("frozen quality never dates thawed food, but warns when it had passed", "[batch][use_by]") {
  Question asked = frozen_on_day_3(FreezingDay::Counts);
  asked.rules.push_back(rule(State::Frozen, months(3), EndKind::BestBefore));
  CHECK(last_day(thawed(asked, "2027-03-03 08:00")) == day("2027-03-06"));
  CHECK(use_by(thawed(asked, "2027-03-03 08:00"))->warnings.empty());
  CHECK(use_by(thawed(asked, "2027-03-04 08:00"))->warnings ==
        QStringList{QStringLiteral("it left the freezer after its frozen best before, Wed 3 Mar 2027")});
}

TEST_CASE("a frozen life that somebody calls a use-by is never passed", "[batch][use_by]") {
  Question asked = frozen_on_day_3(FreezingDay::Counts);
  asked.rules.push_back(rule(State::Frozen, days(30)));
  CHECK(use_by(asked)->never_past == day("2027-01-01"));
  CHECK(last_day(thawed(asked, "2026-12-31 08:00")) == day("2027-01-01"));
}

TEST_CASE("the date of an input stretches as the budget does", "[batch][use_by]") {
  Question asked = frozen_on_day_3(FreezingDay::Counts);
  asked.caps = {cap("chicken tinga", "2026-12-05")};  // 2 days after the day of freezing
  CHECK(use_by(asked)->days_left == 2);
  CHECK(last_day(thawed(asked, "2026-12-20 08:00")) == day("2026-12-21"));
  asked.freezing_day = FreezingDay::Free;
  CHECK(last_day(thawed(asked, "2026-12-20 08:00")) == day("2026-12-22"));
}

TEST_CASE("freezing on the last day of an input is refused", "[batch][use_by]") {
  Question asked = frozen_on_day_3(FreezingDay::Counts);
  asked.caps = {cap("chicken tinga", "2026-12-03")};
  CHECK(refusal(asked).contains(QStringLiteral("with no day left: chicken tinga, lot L1: its own use-by")));
  asked.caps = {cap("chicken tinga", "2026-12-04")};
  CHECK(use_by(asked)->days_left == 1);
}

TEST_CASE("an input's end within a day stretches by elapsed time", "[batch][use_by]") {
  Question asked = frozen_on_day_3(FreezingDay::Counts);  // frozen at 15:00
  Cap sauce = cap("sauce", "2026-12-05");
  sauce.end = at("2026-12-05 18:00");
  sauce.is_date = false;
  asked.caps = {sauce};
  CHECK(last_instant(thawed(asked, "2026-12-20 08:00")) == at("2026-12-22 11:00"));  // 51 h
}

TEST_CASE("a date that is not the end of a day of this zone is taken as an instant", "[batch][use_by]") {
  Question asked = seven_days("2026-12-01 10:00");
  Cap odd = cap("sauce", "2026-12-03", QTimeZone("Europe/Berlin"));
  asked.caps = {odd};
  CHECK(last_instant(asked) == at("2026-12-03 18:00"));
}

TEST_CASE("a maker's date never moves with freezing", "[batch][use_by]") {
  Question asked = frozen_on_day_3(FreezingDay::Counts);
  asked.caps = {makers_date("2026-12-21")};
  CHECK(use_by(asked)->never_past == day("2026-12-21"));
  CHECK(use_by(asked)->days_left == 4);
  CHECK(last_day(thawed(asked, "2026-12-20 08:00")) == day("2026-12-21"));
  CHECK(last_day(thawed(asked, "2026-12-10 08:00")) == day("2026-12-13"));
}

TEST_CASE("food whose maker's date passed in the freezer is past when it is thawed", "[batch][use_by]") {
  Question asked = frozen_on_day_3(FreezingDay::Counts);
  asked.caps = {makers_date("2026-12-15")};
  CHECK(last_day(thawed(asked, "2026-12-15 08:00")) == day("2026-12-15"));
  CHECK(refusal(thawed(asked, "2026-12-20 08:00")).contains(QStringLiteral("after its end, Tue 15 Dec 2026")));
}

TEST_CASE("freezing on the maker's last day is refused", "[batch][use_by]") {
  Question asked = frozen_on_day_3(FreezingDay::Counts);
  asked.caps = {makers_date("2026-12-03")};
  CHECK(refusal(asked).contains(QStringLiteral("with no day left: tuna, lot L1: maker's date")));
}

TEST_CASE("leaving the freezer for the oven starts the clock as thawing does", "[batch][use_by]") {
  Question asked = frozen_on_day_3(FreezingDay::Counts);
  asked.rules.push_back(rule(State::Finished, days(9)));
  asked.timeline.push_back(event(Happening::Finished, "2026-12-20 12:00"));
  CHECK(last_day(asked) == day("2026-12-23"));
  asked.rules.back() = rule(State::Finished, hours(2));
  CHECK(last_instant(asked) == at("2026-12-20 14:00"));
}

TEST_CASE("thawing what is not frozen is refused", "[batch][use_by]") {
  Question asked = seven_days("2026-12-01 10:00");
  asked.timeline = {event(Happening::Thawed, "2026-12-02 08:00")};
  CHECK(refusal(asked) ==
        QStringLiteral("thawed at Wed 2 Dec 2026 08:00, when it was not frozen\n  add the freezing before it"));
}

TEST_CASE("freezing what is frozen is refused", "[batch][use_by]") {
  Question asked = frozen_on_day_3(FreezingDay::Counts);
  asked.timeline.push_back(event(Happening::Frozen, "2026-12-05 08:00"));
  CHECK(refusal(asked) == QStringLiteral("frozen at Sat 5 Dec 2026 08:00, when it was frozen already\n"
                                         "  add the thawing between the two, or leave one out"));
}

TEST_CASE("an ingredient bought frozen is dated from its thawing", "[batch][use_by]") {
  Rule thawing = rule(State::Thawed, days(3));
  thawing.starts_at = at("2026-12-01 10:00");
  const Question asked = question("2026-12-01 10:00", {thawing});
  CHECK(last_day(asked) == day("2026-12-03"));
  CHECK(use_by(asked)->previously_frozen);
  CHECK(refusal(question("2026-12-01 10:00")) != QString());
}

TEST_CASE("a dry product's ambient days stand still in the freezer", "[batch][use_by]") {
  Question asked = question("2026-12-01 10:00", {rule(State::Ambient, days(5), EndKind::BestBefore)});
  asked.tcs = false;
  asked.timeline = {event(Happening::Frozen, "2026-12-02 10:00")};
  CHECK(use_by(asked)->days_left == 3);
  CHECK(last_day(thawed(asked, "2026-12-20 08:00")) == day("2026-12-22"));
}

TEST_CASE("food that is not TCS and has no limit is frozen without days to tell", "[batch][use_by]") {
  Question asked = question("2026-12-01 10:00");
  asked.tcs = false;
  asked.timeline = {event(Happening::Frozen, "2026-12-02 10:00")};
  CHECK(use_by(asked)->form == UseBy::Form::Frozen);
  CHECK(use_by(asked)->days_left == 0);
  CHECK(use_by(asked)->frozen_on == day("2026-12-02"));
}
