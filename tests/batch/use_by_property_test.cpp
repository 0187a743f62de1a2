// Properties of batch/use_by over random containers: never more generous, never dependent on order.
#include <algorithm>
#include <random>

#include "batch/use_by.h"
#include "use_by_question.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::ask;
using book::EndKind;
using book::FreezingDay;
using book::State;

namespace {

const std::vector<QTimeZone>& zones() {
  static const std::vector<QTimeZone> all = {QTimeZone("America/New_York"), QTimeZone("Europe/Berlin"),
                                             QTimeZone("Australia/Lord_Howe"), QTimeZone("Asia/Kathmandu"),
                                             QTimeZone("Pacific/Apia")};
  return all;
}

// A container with a life of its own, most of the time one that can be dated.
class Chance {
 public:
  explicit Chance(unsigned seed) : random_(seed) {}

  int number(int least, int most) { return std::uniform_int_distribution<int>(least, most)(random_); }
  bool one_in(int n) { return number(1, n) == 1; }
  template <class T>
  void shuffle(std::vector<T>& list) {
    std::shuffle(list.begin(), list.end(), random_);
  }

  Question question() {
    Question asked =
        ask::question(QDateTime(QDate(2025, 1, 1), QTime(0, 0), Qt::UTC).addSecs(60LL * number(0, 1'000'000)));
    asked.zone = zones()[static_cast<size_t>(number(0, 4))];
    asked.freezing_day = one_in(2) ? FreezingDay::Counts : FreezingDay::Free;
    asked.tcs = !one_in(5);
    if (one_in(4)) asked.cooked_at = asked.made_at.addSecs(60LL * number(0, 600));
    asked.rules.push_back(rule_for(asked.tcs ? State::Chilled : State::Ambient));
    for (const State state : {State::Opened, State::HotHeld, State::Finished}) {
      if (!one_in(4)) asked.rules.push_back(rule_for(state));
    }
    for (const State state : {State::Thawed, State::Frozen, State::TimeControl, State::Chilled}) {
      if (one_in(4)) asked.rules.push_back(rule_for(state));
    }
    for (int caps = number(0, 3); caps > 0; --caps) asked.caps.push_back(cap(asked));
    asked.timeline = timeline(asked.made_at);
    return asked;
  }

  Rule rule_for(State state) {
    const bool brief = state == State::HotHeld || state == State::Finished || state == State::TimeControl;
    const book::Length length = brief                                  ? hours(number(1, 8))
                                : state == State::Frozen               ? months(number(1, 6))
                                : state == State::Chilled && one_in(4) ? hours(number(30, 300))
                                                                       : days(number(2, 20), one_in(4) ? 0 : 1);
    return rule(state, length, one_in(6) || state == State::Frozen ? EndKind::BestBefore : EndKind::UseBy);
  }

  Cap cap(const Question& asked) {
    Cap made = ask::cap("salsa", "2026-01-01");
    made.item = QStringLiteral("input %1").arg(number(1, 9));
    made.is_date = !one_in(4);
    made.end = made.is_date ? end_of(local_day(asked.made_at, asked.zone).addDays(number(0, 20)), asked.zone)
                            : asked.made_at.addSecs(60LL * number(60, 30'000));
    made.absolute = one_in(3);
    made.shelf_stable = one_in(3);
    made.kind = one_in(3) ? EndKind::BestBefore : EndKind::UseBy;
    return made;
  }

  std::vector<Event> timeline(const QDateTime& made) {
    std::vector<Event> events;
    QDateTime when = made;
    bool frozen = false;
    for (int left = number(0, 6); left > 0; --left) {
      when = when.addSecs(60LL * number(1, 3000));
      const Happening what = frozen ? Happening::Thawed : one_in(3) ? Happening::Opened : Happening::Frozen;
      frozen = what == Happening::Frozen;
      events.push_back(event_at(what, when));
    }
    if (!frozen && one_in(4)) events.push_back(later_event(when));
    return events;
  }

  /// Something that may happen to food that is not frozen, after `when`.
  Event later_event(const QDateTime& when) {
    const std::vector<Happening> kinds = {Happening::Opened, Happening::HotHeld,  Happening::Finished,
                                          Happening::Packed, Happening::Reheated, Happening::TimeControl};
    return event_at(kinds[static_cast<size_t>(number(0, 5))], when.addSecs(60LL * number(1, 3000)));
  }

  Event event_at(Happening what, const QDateTime& when) {
    Event happened;
    happened.what = what;
    happened.at = when;
    if (what == Happening::TimeControl) happened.temperature = fahrenheit(one_in(2) ? 40 : 140);
    return happened;
  }

 private:
  std::mt19937 random_;
};

bool frozen_at_the_end(const Question& asked) {
  return !asked.timeline.empty() && asked.timeline.back().what == Happening::Frozen;
}

bool on_time_control(const Question& asked) {
  return std::any_of(asked.timeline.begin(), asked.timeline.end(),
                     [](const Event& event) { return event.what == Happening::TimeControl; });
}

QDateTime end_of_timeline(const Question& asked) {
  return asked.timeline.empty() ? asked.made_at : asked.timeline.back().at;
}

/// Whether `changed` promises nothing that `base` does not. A refusal promises nothing.
bool never_more(const UseBy& base, const Question& changed) {
  const auto answer = use_by(changed);
  if (!answer || base.form == UseBy::Form::None) return true;
  if (base.form != UseBy::Form::Frozen) return answer->end.isValid() && answer->end <= base.end;
  if (answer->form != UseBy::Form::Frozen) return false;
  if (base.never_past && (!answer->never_past || *answer->never_past > *base.never_past)) return false;
  return base.days_left == 0 || (answer->days_left > 0 && answer->days_left <= base.days_left);
}

/// Calls `check` with many random containers that can be dated, and their answers.
template <class Check>
void over_many(unsigned seed, Check check) {
  Chance chance(seed);
  int dated = 0;
  for (int i = 0; i < 1500; ++i) {
    const Question asked = chance.question();
    const auto answer = use_by(asked);
    if (!answer) continue;
    ++dated;
    if (!check(asked, *answer, chance)) FAIL("container " << i << " of seed " << seed);
  }
  CHECK(dated > 600);  // else the property would be about nothing
}

// The calendar days, from day 1 to `last`, on which the container was out of the freezer at any moment.
int days_out_of_the_freezer(const Question& asked, QDate first, QDate last) {
  int out = 0;
  for (QDate day = first; day <= last; day = day.addDays(1)) {
    QDateTime in_since;
    bool whole_day_in = false;
    for (const Event& event : asked.timeline) {
      if (event.what == Happening::Frozen) in_since = event.at;
      if (event.what == Happening::Thawed && in_since <= start_of(day, asked.zone) &&
          event.at >= end_of(day, asked.zone)) {
        whole_day_in = true;
      }
    }
    if (!whole_day_in) ++out;
  }
  return out;
}

}  // namespace

TEST_CASE("never later when an input is added", "[batch][use_by][property]") {
  over_many(1, [](Question asked, const UseBy& base, Chance& chance) {
    asked.caps.push_back(chance.cap(asked));
    return never_more(base, asked);
  });
}

TEST_CASE("never later when an input's date is earlier", "[batch][use_by][property]") {
  over_many(2, [](Question asked, const UseBy& base, Chance& chance) {
    for (Cap& cap : asked.caps) {
      const QDate last = local_day(cap.end.addMSecs(-1), asked.zone).addDays(-chance.number(0, 3));
      cap.end = cap.is_date ? end_of(last, asked.zone) : cap.end.addSecs(-60LL * chance.number(0, 3000));
    }
    return never_more(base, asked);
  });
}

TEST_CASE("never later when a rule is added", "[batch][use_by][property]") {
  over_many(3, [](Question asked, const UseBy& base, Chance& chance) {
    const std::vector<State> states = {State::Chilled, State::Thawed,   State::Opened, State::Ambient,
                                       State::HotHeld, State::Finished, State::Frozen};
    asked.rules.push_back(chance.rule_for(states[static_cast<size_t>(chance.number(0, 6))]));
    if (chance.one_in(4)) asked.rules.back().starts_at = asked.made_at.addSecs(60LL * chance.number(0, 3000));
    return never_more(base, asked);
  });
}

TEST_CASE("never later when a limit is tightened", "[batch][use_by][property]") {
  over_many(4, [](Question asked, const UseBy& base, Chance& chance) {
    for (Rule& rule : asked.rules) {
      if (rule.length.count > 1 && chance.one_in(2)) rule.length.count -= chance.number(1, rule.length.count - 1);
      if (chance.one_in(2)) rule.length.first_day = 1;
    }
    return never_more(base, asked);
  });
}

TEST_CASE("never later when the rule set's time control is tightened", "[batch][use_by][property]") {
  over_many(5, [](Question asked, const UseBy& base, Chance& chance) {
    asked.hot_or_cold_start.length = hours(chance.number(1, 4));
    asked.cold_start.length = hours(chance.number(1, 4));
    return never_more(base, asked);
  });
}

TEST_CASE("never later when something happens to food that is not frozen", "[batch][use_by][property]") {
  over_many(6, [](Question asked, const UseBy& base, Chance& chance) {
    if (frozen_at_the_end(asked)) return true;
    asked.timeline.push_back(chance.later_event(end_of_timeline(asked)));
    return never_more(base, asked);
  });
}

TEST_CASE("never later when it was opened at any time", "[batch][use_by][property]") {
  over_many(7, [](Question asked, const UseBy& base, Chance& chance) {
    asked.timeline.push_back(chance.event_at(Happening::Opened, asked.made_at.addSecs(60LL * chance.number(0, 9000))));
    return never_more(base, asked);
  });
}

TEST_CASE("never later when a cook is not counted", "[batch][use_by][property]") {
  over_many(8, [](Question asked, const UseBy& base, Chance&) {
    asked.cooked_at.reset();
    return never_more(base, asked);
  });
}

TEST_CASE("never later when the day of freezing counts", "[batch][use_by][property]") {
  over_many(9, [](Question asked, const UseBy& base, Chance&) {
    if (asked.freezing_day == FreezingDay::Counts) return true;
    asked.freezing_day = FreezingDay::Counts;
    return never_more(base, asked);
  });
}

TEST_CASE("never later than a maker's date, whatever the freezer did", "[batch][use_by][property]") {
  over_many(10, [](const Question& asked, const UseBy& base, Chance&) {
    for (const Cap& cap : asked.caps) {
      if (!cap.absolute || cap.kind == EndKind::BestBefore) continue;
      if (base.form == UseBy::Form::Frozen) {
        if (!base.never_past || end_of(*base.never_past, asked.zone) > cap.end) return false;
      } else if (base.end > cap.end) {
        return false;
      }
    }
    return true;
  });
}

TEST_CASE("the order of inputs, rules and events shows nowhere", "[batch][use_by][property]") {
  Chance chance(11);
  for (int i = 0; i < 1500; ++i) {
    Question asked = chance.question();
    const auto answer = use_by(asked);
    chance.shuffle(asked.rules);
    chance.shuffle(asked.caps);
    chance.shuffle(asked.timeline);
    if (use_by(asked) != answer) FAIL("container " << i);
  }
}

TEST_CASE("the same question has the same answer, and naming a thing twice changes nothing",
          "[batch][use_by][property]") {
  over_many(12, [](Question asked, const UseBy& base, Chance&) {
    if (use_by(asked) != base) return false;
    const std::vector<Rule> rules = asked.rules;
    const std::vector<Cap> caps = asked.caps;
    asked.rules.insert(asked.rules.end(), rules.begin(), rules.end());
    asked.caps.insert(asked.caps.end(), caps.begin(), caps.end());
    return use_by(asked) == base;
  });
}

TEST_CASE("the reasons that decided are those of the end, in order, and no loser is earlier",
          "[batch][use_by][property]") {
  over_many(13, [](const Question&, const UseBy& base, Chance&) {
    if (base.form == UseBy::Form::None) return base.reasons.empty();
    if (base.form == UseBy::Form::Frozen)
      return base.reasons.empty() || base.reasons.front().decided || base.days_left == 0;
    QDateTime before;
    for (const Reason& reason : base.reasons) {
      if (reason.decided != (reason.end == base.end) || reason.end < base.end) return false;
      if (before.isValid() && reason.end < before) return false;
      before = reason.end;
    }
    return base.reasons.front().decided;
  });
}

TEST_CASE("a date ends with its day in the kitchen's zone, and a time does not", "[batch][use_by][property]") {
  over_many(14, [](const Question& asked, const UseBy& base, Chance&) {
    if (base.form == UseBy::Form::Date) return base.end == end_of(base.date, asked.zone);
    if (base.form == UseBy::Form::Instant) return base.end != start_of(local_day(base.end, asked.zone), asked.zone);
    return true;
  });
}

TEST_CASE("a TCS food is never without a use-by, frozen or not", "[batch][use_by][property]") {
  over_many(15, [](const Question& asked, const UseBy& base, Chance&) {
    if (!asked.tcs) return true;
    if (base.form == UseBy::Form::Frozen) return base.days_left > 0 && !base.reasons.empty();
    return base.form != UseBy::Form::None && base.kind == EndKind::UseBy;
  });
}

TEST_CASE("time control is never longer than the rule set allows", "[batch][use_by][property]") {
  int seen = 0;
  over_many(16, [&](Question asked, const UseBy&, Chance& chance) {
    if (frozen_at_the_end(asked) || on_time_control(asked)) return true;
    const QDateTime start = end_of_timeline(asked).addSecs(60LL * chance.number(0, 3000));
    asked.timeline.push_back(chance.event_at(Happening::TimeControl, start));
    const auto answer = use_by(asked);
    if (!answer) return true;
    ++seen;
    return answer->time_control && answer->end <= start.addSecs((answer->never_above ? 6 : 4) * 3600);
  });
  CHECK(seen > 200);
}

TEST_CASE("N days are the calendar days D to D+N-1 in every zone", "[batch][use_by][property]") {
  Chance chance(17);
  for (int i = 0; i < 5000; ++i) {
    const int count = chance.number(1, 60);
    Question asked =
        question(QDateTime(QDate(2010, 1, 1), QTime(0, 0), Qt::UTC).addSecs(60LL * chance.number(0, 8'000'000)),
                 {rule(State::Chilled, days(count))});
    asked.zone = zones()[static_cast<size_t>(chance.number(0, 4))];
    const QDate made = local_day(asked.made_at, asked.zone);
    const auto answer = use_by(asked);
    const QDate named = made.addDays(count - 1);
    const bool left_out = named == QDate(2011, 12, 30) && asked.zone == QTimeZone("Pacific/Apia");
    if (!answer || answer->end != end_of(named, asked.zone) || (!left_out && answer->date != named))
      FAIL("making " << i);
  }
}

TEST_CASE("hours are exact across daylight saving in every zone", "[batch][use_by][property]") {
  Chance chance(18);
  for (int i = 0; i < 5000; ++i) {
    const int count = chance.number(1, 400);
    Question asked =
        question(QDateTime(QDate(2024, 1, 1), QTime(0, 0), Qt::UTC).addSecs(60LL * chance.number(0, 1'500'000)),
                 {rule(State::Chilled, hours(count))});
    asked.zone = zones()[static_cast<size_t>(chance.number(0, 4))];
    if (asked.made_at.secsTo(use_by(asked)->end) != 3600LL * count) FAIL("making " << i);
  }
}

TEST_CASE("hours frozen are left out to the second", "[batch][use_by][property]") {
  Chance chance(19);
  for (int i = 0; i < 1500; ++i) {
    Question asked =
        question(QDateTime(QDate(2024, 1, 1), QTime(0, 0), Qt::UTC).addSecs(60LL * chance.number(0, 1'500'000)),
                 {rule(State::Chilled, hours(100))});
    asked.zone = zones()[static_cast<size_t>(chance.number(0, 4))];
    const QDateTime frozen = asked.made_at.addSecs(60LL * chance.number(0, 5999));
    const QDateTime thawed = frozen.addSecs(60LL * chance.number(0, 200'000));
    asked.timeline = {chance.event_at(Happening::Frozen, frozen), chance.event_at(Happening::Thawed, thawed)};
    if (asked.made_at.secsTo(use_by(asked)->end) != 360'000 + frozen.secsTo(thawed)) FAIL("making " << i);
  }
}

TEST_CASE("freezing and thawing never yield more chilled days than the rule's, a free day apart",
          "[batch][use_by][property]") {
  Chance chance(20);
  int thawed = 0;
  for (int i = 0; i < 5000; ++i) {
    const int count = chance.number(2, 15);
    Question asked =
        question(QDateTime(QDate(2025, 1, 1), QTime(0, 0), Qt::UTC).addSecs(60LL * chance.number(0, 600'000)),
                 {rule(State::Chilled, days(count)), rule(State::Opened, days(count))});
    asked.zone = zones()[static_cast<size_t>(chance.number(0, 4))];
    asked.freezing_day = chance.one_in(2) ? FreezingDay::Counts : FreezingDay::Free;
    asked.timeline = chance.timeline(asked.made_at);
    std::erase_if(asked.timeline, [](const Event& event) {
      return event.what != Happening::Frozen && event.what != Happening::Thawed;
    });
    const auto answer = use_by(asked);
    if (!answer || answer->form != UseBy::Form::Date) continue;
    ++thawed;
    const int out = days_out_of_the_freezer(asked, local_day(asked.made_at, asked.zone), answer->date);
    if (out > count + (asked.freezing_day == FreezingDay::Free ? 1 : 0)) FAIL("container " << i);
  }
  CHECK(thawed > 1000);
}

TEST_CASE("what a frozen label promises is what thawing gives, on whichever day", "[batch][use_by][property]") {
  over_many(21, [](Question asked, const UseBy& base, Chance& chance) {
    if (base.form != UseBy::Form::Frozen || base.days_left == 0) return true;
    const QDateTime thawed = asked.timeline.back().at.addSecs(60LL * chance.number(0, 20'000));
    asked.timeline.push_back(chance.event_at(Happening::Thawed, thawed));
    const auto answer = use_by(asked);
    const bool too_late = base.never_past && thawed >= end_of(*base.never_past, asked.zone);
    if (!answer || too_late) return !answer && base.never_past;  // an end with a time may come sooner on the day after
    const QDate promised = local_day(thawed, asked.zone).addDays(base.days_left - 1);
    const QDate last = base.never_past ? std::min(promised, *base.never_past) : promised;
    return answer->end >= end_of(last, asked.zone);  // hours may give more than their whole days, never less
  });
}
