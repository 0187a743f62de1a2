// The limits that run for one container, each with its clock.
#include "batch/use_by_limits.h"

#include <algorithm>

#include "batch/clock.h"
#include "batch/phrases.h"
#include "book/limit_text.h"

namespace lardiner::batch {

namespace {

using book::State;

QString rule_name(const Rule& rule) { return rule.name.isEmpty() ? state_text(rule.state) : rule.name; }

// The instants at which a rule's clock starts: none when the container was never in its state.
std::vector<QDateTime> starts_of(const Rule& rule, const Question& question, const Timeline& timeline) {
  if (rule.starts_at) return {*rule.starts_at};
  switch (rule.state) {
    case State::Chilled:
      return {question.cooked_at.value_or(question.made_at)};
    case State::Ambient:
      return question.tcs ? std::vector<QDateTime>{} : std::vector<QDateTime>{question.made_at};
    case State::Opened:
      return timeline.opened;
    case State::HotHeld:
      return timeline.hot_held;
    case State::Finished:
      return timeline.finished;
    case State::TimeControl:
      return timeline.time_control ? std::vector<QDateTime>{timeline.time_control->at} : std::vector<QDateTime>{};
    case State::Thawed: {
      std::vector<QDateTime> starts;
      for (const Freezing& freezing : timeline.freezings) {
        if (freezing.left) starts.push_back(*freezing.left);
      }
      return starts;
    }
    case State::Frozen:  // quality, counted from the first freezing: a limit only where somebody calls it a use-by
      if (rule.kind == book::EndKind::UseBy && !timeline.freezings.empty()) return {timeline.freezings.front().at};
      return {};
  }
  return {};
}

bool stands_still_frozen(State state) {
  return state == State::Chilled || state == State::Thawed || state == State::Opened || state == State::Ambient;
}

bool needs_time_of_day(const Rule& rule, const QDateTime& start, const Question& question) {
  return rule.length.unit == book::Length::Unit::Seconds && !question.time_known && start == question.made_at;
}

void add_rule(const Rule& rule, const Question& question, const Timeline& timeline, std::vector<Limit>& limits,
              problem::Errors& errors) {
  for (const QDateTime& start : starts_of(rule, question, timeline)) {
    if (needs_time_of_day(rule, start, question)) {
      errors.push_back(
          {problem::Code::Missing,
           QStringLiteral("the limit \"%1\" is %2 and needs a time of day, but only the date %3 is written")
               .arg(rule_name(rule), book::text(rule.length), day_text(local_day(question.made_at, question.zone))),
           {},
           QStringLiteral("write the time it was made, as 2026-02-28 14:30")});
      continue;
    }
    Limit limit = make_limit(rule_name(rule), rule.length, start, question.zone);
    limit.authority = rule.authority.text();
    limit.kind = rule.kind;
    limit.stops_frozen = stands_still_frozen(rule.state);
    limit.frozen_before = rule.state == State::Thawed;
    limits.push_back(std::move(limit));
  }
}

void add_time_control(const Question& question, const Event& start, std::vector<Limit>& limits) {
  const bool longer = longer_time_control(question, start);
  const book::TimeControlRule& form = longer ? question.cold_start : question.hot_or_cold_start;
  Limit limit = make_limit(longer ? QStringLiteral("time control from a cold start") : QStringLiteral("time control"),
                           form.length, start.at, question.zone);
  if (longer && form.never_above) limit.text += QStringLiteral(", never above ") + book::text(*form.never_above);
  limit.authority = form.authority.text();
  limits.push_back(std::move(limit));
}

void add_cap(const Cap& cap, const Question& question, std::vector<Limit>& limits) {
  Limit limit;
  limit.text = cap_text(cap);
  limit.kind = cap.kind;
  limit.start = question.made_at;
  limit.stops_frozen = !cap.absolute;
  limit.frozen_before = cap.frozen_before;
  limit.end = cap.end.toTimeZone(question.zone);
  const QDate last = local_day(cap.end.addMSecs(-1), question.zone);
  if (cap.is_date && end_of(last, question.zone) == cap.end) limit.last = last;
  limits.push_back(std::move(limit));
}

// The states whose rules answer for food in `state`.
bool answers_for(const Rule& rule, State state, const Question& question, const Timeline& timeline) {
  if (starts_of(rule, question, timeline).empty()) return false;
  if (state == State::Chilled || state == State::Thawed) {
    if (rule.state == State::Chilled) return !rule.starts_at;  // a pack's limit bounds the food's own, it is not that
    return rule.state == State::Thawed || rule.state == State::Opened;
  }
  return rule.state == state;
}

bool answered(State state, const Question& question, const Timeline& timeline) {
  if (state == State::TimeControl) return true;  // the rule set's own limit
  return std::any_of(question.rules.begin(), question.rules.end(),
                     [&](const Rule& rule) { return answers_for(rule, state, question, timeline); });
}

// Food in the freezer is dated by what follows: a rule for thawed food will start then.
bool answered_after_thawing(const Question& question) {
  return std::any_of(question.rules.begin(), question.rules.end(),
                     [](const Rule& rule) { return rule.state == State::Thawed; });
}

void check_answered(State state, const Question& question, const Timeline& timeline, problem::Errors& errors) {
  if (answered(state, question, timeline)) return;
  errors.push_back({problem::Code::Missing,
                    QStringLiteral("food that needs time and temperature control has no limit for its state: %1")
                        .arg(state_text(state)),
                    {},
                    QStringLiteral("state its shelf life for \"%1\" in the kitchen book").arg(state_text(state))});
}

}  // namespace

Limit make_limit(const QString& name, const book::Length& length, const QDateTime& start, const QTimeZone& zone) {
  Limit limit;
  limit.start = start;
  const QDate first = local_day(start, zone);
  const QString said = name + QStringLiteral(", ") + book::text(length);
  switch (length.unit) {
    case book::Length::Unit::Days:
      limit.last = first.addDays(length.count - length.first_day);
      limit.text = said + QStringLiteral(", day %1 is %2").arg(length.first_day).arg(day_text(first));
      break;
    case book::Length::Unit::Months:
      limit.last = first.addMonths(length.count);
      limit.text = said + QStringLiteral(" from ") + day_text(first);
      break;
    case book::Length::Unit::Seconds:
      limit.end = start.toTimeZone(zone).addSecs(length.count);
      limit.text = said + QStringLiteral(" from ") + instant_text(start, zone);
      break;
  }
  if (limit.last) limit.end = end_of(*limit.last, zone);
  return limit;
}

bool longer_time_control(const Question& question, const Event& start) {
  if (!start.temperature || !measure::at_most(*start.temperature, question.cold_holding)) return false;
  const auto end = [&](const book::Length& length) { return make_limit({}, length, start.at, question.zone).end; };
  const QDateTime shorter = end(question.hot_or_cold_start.length);
  bool asked = false;
  for (const Rule& rule : question.rules) {
    if (rule.state != State::TimeControl) continue;
    if (end(rule.length) <= shorter) return false;
    asked = true;
  }
  return asked;
}

bool caps(const Cap& cap, const Question& question) {
  return cap.kind == book::EndKind::UseBy || !cap.shelf_stable || !question.tcs;
}

QString cap_text(const Cap& cap) {
  QString text = cap.item;
  if (!cap.lot.isEmpty()) text += QStringLiteral(", lot ") + cap.lot;
  const QString why = cap.kind == book::EndKind::UseBy ? QStringLiteral("use-by") : QStringLiteral("best before");
  return text + QStringLiteral(": ") + (cap.why.isEmpty() ? why : cap.why);
}

std::vector<Limit> gather_limits(const Question& question, const Timeline& timeline, problem::Errors& errors) {
  std::vector<Limit> limits;
  for (const Rule& rule : question.rules) add_rule(rule, question, timeline, limits, errors);
  for (const Cap& cap : question.caps) {
    if (caps(cap, question)) add_cap(cap, question, limits);
  }
  if (timeline.time_control) add_time_control(question, *timeline.time_control, limits);
  if (!question.tcs) return limits;
  if (!timeline.frozen_now() || !answered_after_thawing(question)) {
    check_answered(timeline.state, question, timeline, errors);
  }
  if (!timeline.opened.empty()) check_answered(State::Opened, question, timeline, errors);
  return limits;
}

}  // namespace lardiner::batch
