// Tests of batch/use_by: days, hours, months, made-at, and what is needed for a date at all.
#include "batch/use_by.h"

#include "use_by_question.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::ask;
using book::EndKind;
using book::State;

TEST_CASE("the day of preparation counts as day 1: prepared on the 1st with 7 days is the end of the 7th",
          "[batch][use_by][src:food-code-2022/3-501.17(A)]") {
  const Question asked = seven_days("2026-04-01 10:00");
  CHECK(last_day(asked) == day("2026-04-07"));
  CHECK(use_by(asked)->end == at("2026-04-08 00:00"));
}

TEST_CASE("prepared on Apr 1: use or discard Apr 7", "[batch][use_by][src:snhd-datemarking/faq]") {
  CHECK(last_day(seven_days("2026-04-01 00:00")) == day("2026-04-07"));
  CHECK(last_day(seven_days("2026-04-01 23:59")) == day("2026-04-07"));
}

TEST_CASE("where the rule says so the first day is day 0", "[batch][use_by]") {
  CHECK(last_day(question("2026-04-01 10:00", {rule(State::Chilled, days(7, 0))})) == day("2026-04-08"));
  CHECK(last_day(question("2026-04-01 10:00", {rule(State::Chilled, days(7, 1))})) == day("2026-04-07"));
}

TEST_CASE("days go over the end of February and of the year", "[batch][use_by][src:food-code-2022/3-501.17(A)]") {
  CHECK(last_day(seven_days("2024-02-23 10:00")) == day("2024-02-29"));
  CHECK(last_day(seven_days("2025-02-23 10:00")) == day("2025-03-01"));
  CHECK(last_day(seven_days("2026-12-28 10:00")) == day("2027-01-03"));
}

TEST_CASE("calendar days do not move with daylight saving", "[batch][use_by][src:food-code-2022/3-501.17(A)]") {
  CHECK(last_day(seven_days("2026-10-28 10:00")) == day("2026-11-03"));
  CHECK(last_day(seven_days("2026-03-05 10:00")) == day("2026-03-11"));
}

TEST_CASE("days are those of the kitchen's zone", "[batch][use_by]") {
  Question asked = seven_days("2026-04-01 23:30");  // 2026-04-02 in UTC
  CHECK(last_day(asked) == day("2026-04-07"));
  asked.made_at = asked.made_at.toUTC();
  CHECK(last_day(asked) == day("2026-04-07"));
  asked.zone = QTimeZone::utc();
  CHECK(last_day(asked) == day("2026-04-08"));
}

TEST_CASE("hours are elapsed time, exact across daylight saving", "[batch][use_by]") {
  CHECK(last_instant(question("2026-10-31 20:00", {rule(State::Chilled, hours(12))})) == at("2026-11-01 07:00"));
  CHECK(last_instant(question("2026-03-07 20:00", {rule(State::Chilled, hours(12))})) == at("2026-03-08 09:00"));
  CHECK(last_instant(question("2026-06-01 20:00", {rule(State::Chilled, hours(12))})) == at("2026-06-02 08:00"));
}

TEST_CASE("an end within the hour that occurs twice says which it is", "[batch][use_by]") {
  Question asked = question("2026-10-31 21:30", {rule(State::Chilled, hours(4))});
  CHECK(last_instant(asked).offsetFromUtc() == -4 * 3600);
  asked.rules = {rule(State::Chilled, hours(5))};
  CHECK(last_instant(asked).offsetFromUtc() == -5 * 3600);
  CHECK(use_by(question(use_by(asked)->end, {rule(State::Chilled, hours(2))}))->reasons.front().rule ==
        QStringLiteral("chilled, 2 h from Sun 1 Nov 2026 01:30 -05:00"));
}

TEST_CASE("months clamp to the month's end", "[batch][use_by]") {
  const auto end = [](const char* made, int count) {
    Question asked = question(made, {rule(State::Ambient, months(count), EndKind::BestBefore)});
    asked.tcs = false;
    return last_day(asked);
  };
  CHECK(end("2026-01-31 10:00", 1) == day("2026-02-28"));
  CHECK(end("2024-01-31 10:00", 1) == day("2024-02-29"));
  CHECK(end("2026-08-31 10:00", 6) == day("2027-02-28"));
  CHECK(end("2026-01-30 10:00", 2) == day("2026-03-30"));
  CHECK(end("2024-02-29 10:00", 12) == day("2025-02-28"));
}

TEST_CASE("a making across midnight dates from its start", "[batch][use_by]") {
  CHECK(last_day(seven_days("2026-04-01 23:50")) == day("2026-04-07"));
  CHECK(last_day(seven_days("2026-04-02 00:10")) == day("2026-04-08"));
}

TEST_CASE("a date without a time is refused where a limit is in hours", "[batch][use_by]") {
  Question asked = question("2026-04-01 00:00", {rule(State::Chilled, days(7)), rule(State::Chilled, hours(36))});
  asked.time_known = false;
  CHECK(refusal(asked) ==
        QStringLiteral("the limit \"chilled\" is 36 h and needs a time of day, but only the date Wed 1 Apr "
                       "2026 is written\n  write the time it was made, as 2026-02-28 14:30"));
  asked.time_known = true;
  CHECK(last_instant(asked) == at("2026-04-02 12:00"));
}

TEST_CASE("a date without a time is enough where limits are in days, or hours run from an event", "[batch][use_by]") {
  Question asked = seven_days("2026-04-01 00:00");
  asked.time_known = false;
  CHECK(last_day(asked) == day("2026-04-07"));
  asked.rules.push_back(rule(State::Finished, hours(2)));
  asked.timeline = {event(Happening::Finished, "2026-04-02 12:00")};
  CHECK(last_instant(asked) == at("2026-04-02 14:00"));
}

TEST_CASE("the reason says the rule, its authority and day 1", "[batch][use_by]") {
  const auto answer = use_by(seven_days("2026-11-25 10:00"));
  REQUIRE(answer);
  REQUIRE(answer->reasons.size() == 1);
  const Reason& reason = answer->reasons.front();
  CHECK(reason.rule == QStringLiteral("chilled, 7 days, day 1 is Wed 25 Nov 2026"));
  CHECK(reason.authority == QStringLiteral("FDA Food Code 2022 3-501.17(A)"));
  CHECK(reason.decided);
  CHECK(reason.is_date);
  CHECK(reason.end == at("2026-12-02 00:00"));
}

TEST_CASE("the rule that decided comes first, then the losers by their end", "[batch][use_by]") {
  Question asked = question("2026-11-25 10:00", {rule(State::Chilled, days(14)), rule(State::Chilled, days(5)),
                                                 rule(State::Chilled, days(9))});
  const auto answer = use_by(asked);
  REQUIRE(answer);
  REQUIRE(answer->reasons.size() == 3);
  CHECK(answer->date == day("2026-11-29"));
  CHECK(answer->reasons[0].rule.startsWith(QStringLiteral("chilled, 5 days")));
  CHECK(answer->reasons[1].rule.startsWith(QStringLiteral("chilled, 9 days")));
  CHECK(answer->reasons[2].rule.startsWith(QStringLiteral("chilled, 14 days")));
  CHECK_FALSE(answer->reasons[1].decided);
}

TEST_CASE("ties name both", "[batch][use_by]") {
  Question asked = seven_days("2026-11-25 10:00");
  asked.caps = {cap("chicken tinga", "2026-12-01"), cap("slaw dressing", "2026-12-02")};
  const auto answer = use_by(asked);
  REQUIRE(answer);
  REQUIRE(answer->reasons.size() == 3);
  CHECK(answer->reasons[0].decided);
  CHECK(answer->reasons[1].decided);
  CHECK_FALSE(answer->reasons[2].decided);
}

TEST_CASE("an end in hours and an end in days are compared as instants", "[batch][use_by]") {
  Question asked = question("2026-11-25 10:00", {rule(State::Chilled, days(2)), rule(State::Chilled, hours(37))});
  CHECK(last_instant(asked) == at("2026-11-26 23:00"));
  asked.rules[1] = rule(State::Chilled, hours(39));
  CHECK(last_day(asked) == day("2026-11-26"));
}

TEST_CASE("hours that end with a calendar day are shown as that day, and tie with its date", "[batch][use_by]") {
  const auto answer =
      use_by(question("2026-11-25 10:00", {rule(State::Chilled, days(2)), rule(State::Chilled, hours(38))}));
  REQUIRE(answer);
  CHECK(answer->form == UseBy::Form::Date);
  CHECK(answer->date == day("2026-11-26"));
  CHECK(answer->reasons[0].decided);
  CHECK(answer->reasons[1].decided);
}

TEST_CASE("a TCS food without a limit for its state is refused", "[batch][use_by]") {
  CHECK(refusal(question("2026-11-25 10:00")) ==
        QStringLiteral("food that needs time and temperature control has no limit for its state: chilled\n"
                       "  state its shelf life for \"chilled\" in the kitchen book"));
  CHECK(refusal(question("2026-11-25 10:00", {rule(State::Frozen, months(3), EndKind::BestBefore)})) != QString());
  CHECK(refusal(seven_days("2026-11-25 10:00")) == QString());
}

TEST_CASE("a cap alone gives no date to a TCS food without a rule", "[batch][use_by]") {
  Question asked = question("2026-11-25 10:00");
  asked.caps = {cap("chicken", "2026-11-27")};
  CHECK(refusal(asked).contains(QStringLiteral("no limit for its state: chilled")));
}

TEST_CASE("an ambient life is no answer for a TCS food, and does not limit it", "[batch][use_by]") {
  Question asked = question("2026-11-25 10:00", {rule(State::Ambient, days(2))});
  CHECK(refusal(asked).contains(QStringLiteral("no limit for its state: chilled")));
  asked.rules.push_back(rule(State::Chilled, days(7)));
  CHECK(last_day(asked) == day("2026-12-01"));
}

TEST_CASE("a pack's own limit does not stand in for the food's chilled life", "[batch][use_by]") {
  Rule pack = rule(State::Chilled, days(30));
  pack.starts_at = at("2026-11-25 12:00");
  CHECK(refusal(question("2026-11-25 10:00", {pack})).contains(QStringLiteral("no limit for its state: chilled")));
  CHECK(last_day(question("2026-11-25 10:00", {pack, rule(State::Chilled, days(7))})) == day("2026-12-01"));
}

TEST_CASE("a food that is not TCS with no rule and no cap needs no date", "[batch][use_by]") {
  Question asked = question("2026-11-25 10:00");
  asked.tcs = false;
  CHECK(use_by(asked)->form == UseBy::Form::None);
  asked.caps = {cap("mustard", "2027-03-01")};
  CHECK(last_day(asked) == day("2027-03-01"));
}

TEST_CASE("a dry product is dated from made-at by its ambient life", "[batch][use_by]") {
  Question asked = question("2026-11-25 10:00", {rule(State::Ambient, days(90), EndKind::BestBefore)});
  asked.tcs = false;
  CHECK(last_day(asked) == day("2027-02-22"));
  CHECK(use_by(asked)->kind == EndKind::BestBefore);
}

TEST_CASE("best before is said only where nothing ends in a use-by", "[batch][use_by]") {
  Question asked = question("2026-11-25 10:00", {rule(State::Ambient, days(90), EndKind::BestBefore)});
  asked.tcs = false;
  asked.caps = {cap("mustard", "2027-12-01")};  // later, but what is eaten past the best before can meet it
  CHECK(last_day(asked) == day("2027-02-22"));
  CHECK(use_by(asked)->kind == EndKind::UseBy);
}

TEST_CASE("a TCS food is never given a best before", "[batch][use_by]") {
  CHECK(use_by(question("2026-11-25 10:00", {rule(State::Chilled, days(3), EndKind::BestBefore)}))->kind ==
        EndKind::UseBy);
}

TEST_CASE("a discarded container needs no date, whatever else is missing", "[batch][use_by]") {
  Question asked = question("2026-11-25 10:00");
  asked.timeline = {event(Happening::Discarded, "2026-11-26 09:00")};
  const auto answer = use_by(asked);
  REQUIRE(answer);
  CHECK(answer->form == UseBy::Form::None);
  CHECK(answer->reasons.empty());
}

TEST_CASE("nothing happens to a container after it was discarded", "[batch][use_by]") {
  Question asked = seven_days("2026-11-25 10:00");
  asked.timeline = {event(Happening::Opened, "2026-11-26 09:05"), event(Happening::Discarded, "2026-11-26 09:00")};
  CHECK(refusal(asked) == QStringLiteral("opened at Thu 26 Nov 2026 09:05, after it was discarded\n"
                                         "  correct the times, or the numbers of the containers"));
}

TEST_CASE("nothing happens to a container before it was made", "[batch][use_by]") {
  Question asked = seven_days("2026-11-25 10:00");
  asked.timeline = {event(Happening::Frozen, "2026-11-25 09:59")};
  asked.timeline.front().place = {QStringLiteral("records.csv"), 7, 0, {}, 1};
  CHECK(refusal(asked) ==
        QStringLiteral("records.csv:7: frozen at Wed 25 Nov 2026 09:59, before it was made at Wed 25 Nov "
                       "2026 10:00\n  correct the time of one of the two"));
  asked.timeline.front().at = at("2026-11-25 10:00");
  CHECK(refusal(asked) == QString());
}

TEST_CASE("all faults of a timeline are told at once", "[batch][use_by]") {
  Question asked = question("2026-11-25 10:00");
  asked.timeline = {event(Happening::Thawed, "2026-11-26 09:00"), event(Happening::TimeControl, "2026-11-27 09:00")};
  CHECK(use_by(asked).error().size() == 3);
}

TEST_CASE("every event has a name", "[batch][use_by]") {
  QStringList names;
  for (const Happening what :
       {Happening::Frozen, Happening::Thawed, Happening::Opened, Happening::HotHeld, Happening::TimeControl,
        Happening::Finished, Happening::Packed, Happening::Reheated, Happening::Discarded}) {
    names.append(name(what));
  }
  CHECK(names.removeDuplicates() == 0);
  CHECK_FALSE(names.contains(QString()));
}
