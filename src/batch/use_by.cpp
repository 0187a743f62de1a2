// The use-by of one container: which rules apply, which decides, which lose, and why.
#include "batch/use_by.h"

#include <algorithm>
#include <tuple>

#include "batch/clock.h"
#include "batch/phrases.h"
#include "batch/use_by_freezing.h"
#include "batch/use_by_limits.h"
#include "batch/use_by_timeline.h"
#include "book/limit_text.h"

namespace lardiner::batch {

namespace {

using book::EndKind;

Reason reason(const Limit& limit, bool decided) {
  return {limit.text, limit.authority, limit.end, limit.last.has_value(), limit.kind, decided};
}

// The deciding ones first, then by their end; the order of rules and caps in the question shows nowhere.
std::vector<Reason> in_order(std::vector<Reason> reasons) {
  const auto key = [](const Reason& r) {
    return std::make_tuple(!r.decided, r.end.toMSecsSinceEpoch(), r.rule, r.authority, r.kind);
  };
  std::sort(reasons.begin(), reasons.end(), [&](const Reason& a, const Reason& b) { return key(a) < key(b); });
  reasons.erase(std::unique(reasons.begin(), reasons.end()), reasons.end());
  return reasons;
}

// The last calendar day that lies wholly before `end`.
QDate last_whole_day(const QDateTime& end, const QTimeZone& zone) {
  const QDate day = local_day(end, zone);
  return start_of(day, zone) == end ? local_day(end.addMSecs(-1), zone) : day.addDays(-1);
}

QString end_text(const Limit& limit, const QTimeZone& zone) {
  return limit.last ? day_text(*limit.last) : instant_text(limit.end, zone);
}

// "Best before" says that the food is safe after it, which only a food without any use-by can say.
EndKind kind_of(const std::vector<Limit>& limits, const Question& question) {
  const bool quality =
      !question.tcs && !limits.empty() &&
      std::all_of(limits.begin(), limits.end(), [](const Limit& l) { return l.kind == EndKind::BestBefore; });
  return quality ? EndKind::BestBefore : EndKind::UseBy;
}

void add_dated(UseBy& answer, const std::vector<Limit>& limits, const Question& question) {
  if (limits.empty()) {
    answer.form = UseBy::Form::None;
    return;
  }
  const auto earlier = [](const Limit& a, const Limit& b) { return a.end < b.end; };
  answer.end = std::min_element(limits.begin(), limits.end(), earlier)->end.toTimeZone(question.zone);
  const QDate day = local_day(answer.end, question.zone);
  const bool whole_day = start_of(day, question.zone) == answer.end;
  answer.form = whole_day ? UseBy::Form::Date : UseBy::Form::Instant;
  if (whole_day) answer.date = last_whole_day(answer.end, question.zone);
  for (const Limit& limit : limits) answer.reasons.push_back(reason(limit, limit.end == answer.end));
}

// The earliest best-before of the rules for frozen food, counted from the first freezing.
std::optional<Limit> frozen_best_before(const Question& question, const Timeline& timeline) {
  std::optional<Limit> earliest;
  if (timeline.freezings.empty()) return earliest;
  for (const Rule& rule : question.rules) {
    if (rule.state != book::State::Frozen || rule.kind != EndKind::BestBefore) continue;
    const QDateTime start = rule.starts_at.value_or(timeline.freezings.front().at);
    Limit limit =
        make_limit(rule.name.isEmpty() ? state_text(rule.state) : rule.name, rule.length, start, question.zone);
    limit.authority = rule.authority.text();
    limit.kind = rule.kind;
    if (!earliest || std::tie(limit.end, limit.text) < std::tie(earliest->end, earliest->text)) earliest = limit;
  }
  return earliest;
}

void add_frozen(UseBy& answer, const std::vector<Limit>& limits, const Question& question, const Timeline& timeline) {
  answer.form = UseBy::Form::Frozen;
  answer.frozen_on = local_day(timeline.freezings.back().at, question.zone);
  const auto fewer = [](const Limit& a, const Limit& b) { return a.days_left < b.days_left; };
  if (!limits.empty()) answer.days_left = std::min_element(limits.begin(), limits.end(), fewer)->days_left;
  for (const Limit& limit : limits) {
    answer.reasons.push_back(reason(limit, limit.days_left == answer.days_left));
    if (limit.stops_frozen) continue;
    const QDate last = last_whole_day(limit.end, question.zone);
    answer.never_past = answer.never_past ? std::min(*answer.never_past, last) : last;
  }
  if (const std::optional<Limit> quality = frozen_best_before(question, timeline)) {
    answer.frozen_best_before = last_whole_day(quality->end, question.zone);
    answer.end = quality->end;
    answer.reasons.push_back(reason(*quality, false));
  }
}

// The end that a warning is measured against.
QDateTime horizon(const UseBy& answer) {
  return answer.end.isValid() || answer.reasons.empty() ? answer.end : answer.reasons.front().end;
}

void warn_of_best_before(UseBy& answer, const Question& question) {
  const QDateTime until = horizon(answer);
  for (const Cap& cap : question.caps) {
    if (caps(cap, question) || (until.isValid() && cap.end >= until)) continue;
    QString named = cap.item;
    if (!cap.lot.isEmpty()) named += QStringLiteral(", lot ") + cap.lot;
    answer.warnings.push_back(QStringLiteral("%1: its best before, %2, comes before this date")
                                  .arg(named, day_text(local_day(cap.end.addMSecs(-1), question.zone))));
  }
  answer.warnings.sort();
  answer.warnings.removeDuplicates();
}

void warn_of_shorter_time_control(UseBy& answer, const Question& question, const Event& start) {
  const QDateTime shorter = make_limit({}, question.hot_or_cold_start.length, start.at, question.zone).end;
  const bool asked = std::any_of(question.rules.begin(), question.rules.end(), [&](const Rule& rule) {
    return rule.state == book::State::TimeControl && make_limit({}, rule.length, start.at, question.zone).end > shorter;
  });
  if (!asked) return;
  answer.warnings.push_back(
      QStringLiteral("time control is %1, not longer: the longer time needs a start at %2 or below")
          .arg(book::text(question.hot_or_cold_start.length), book::text(question.cold_holding)));
}

void warn_of_long_freezing(UseBy& answer, const Question& question, const Timeline& timeline) {
  const std::optional<Limit> quality = frozen_best_before(question, timeline);
  if (!quality || timeline.frozen_now() || *timeline.freezings.back().left < quality->end) return;
  answer.warnings.push_back(QStringLiteral("it left the freezer after its frozen best before, %1")
                                .arg(day_text(last_whole_day(quality->end, question.zone))));
}

void check_cook(const Question& question, problem::Errors& errors) {
  if (!question.cooked_at || *question.cooked_at >= question.made_at) return;
  errors.push_back(
      {problem::Code::Range,
       QStringLiteral("cooked at %1, before it was made at %2")
           .arg(instant_text(*question.cooked_at, question.zone), instant_text(question.made_at, question.zone)),
       {},
       QStringLiteral("correct the time of one of the two")});
}

// The earliest limit that runs in the freezer too, or of food that is not frozen.
const Limit* in_force(const std::vector<Limit>& limits, const Timeline& timeline) {
  const Limit* first = nullptr;
  for (const Limit& limit : limits) {
    if (timeline.frozen_now() && limit.stops_frozen) continue;
    if (!first || std::tie(limit.end, limit.text) < std::tie(first->end, first->text)) first = &limit;
  }
  return first;
}

// Nothing but discarding happens to food that was past its use-by by then; of freezing the freezer says so.
void check_in_time(const Question& question, problem::Errors& errors) {
  Question past = question;
  past.timeline.clear();
  for (const Event& event : by_time(question.timeline)) {
    if (event.what == Happening::Frozen || event.what == Happening::Discarded) {
      past.timeline.push_back(event);
      continue;
    }
    problem::Errors told;  // of the whole timeline
    const Timeline timeline = read_timeline(past, told);
    std::vector<Limit> limits = gather_limits(past, timeline, told);
    stop_while_frozen(limits, past, timeline, told);
    const Limit* limit = in_force(limits, timeline);
    past.timeline.push_back(event);
    if (!limit || event.at < limit->end || kind_of(limits, question) == EndKind::BestBefore) continue;
    errors.push_back({problem::Code::Unsafe,
                      QStringLiteral("%1 at %2, after its end, %3: %4")
                          .arg(name(event.what), instant_text(event.at, question.zone), end_text(*limit, question.zone),
                               limit->text),
                      event.place, QStringLiteral("discard it, or correct the time if it was written wrongly")});
    return;
  }
}

UseBy answer(const Question& question, const Timeline& timeline, const std::vector<Limit>& limits) {
  UseBy answer;
  answer.time_control = timeline.time_control.has_value();
  answer.previously_frozen =
      std::any_of(timeline.freezings.begin(), timeline.freezings.end(), [](const Freezing& f) { return f.left; }) ||
      std::any_of(question.rules.begin(), question.rules.end(),
                  [](const Rule& rule) { return rule.state == book::State::Thawed && rule.starts_at; });
  if (timeline.discarded) {
    answer.form = UseBy::Form::None;
    return answer;
  }
  answer.kind = kind_of(limits, question);
  if (timeline.frozen_now()) {
    add_frozen(answer, limits, question, timeline);
  } else {
    add_dated(answer, limits, question);
  }
  answer.reasons = in_order(std::move(answer.reasons));
  warn_of_best_before(answer, question);
  warn_of_long_freezing(answer, question, timeline);
  if (!timeline.time_control) return answer;
  if (longer_time_control(question, *timeline.time_control)) {
    answer.never_above = question.cold_start.never_above;
  } else {
    warn_of_shorter_time_control(answer, question, *timeline.time_control);
  }
  return answer;
}

}  // namespace

problem::ExpectedAll<UseBy> use_by(const Question& question) {
  problem::Errors errors;
  const Timeline timeline = read_timeline(question, errors);
  check_cook(question, errors);
  std::vector<Limit> limits;
  if (!timeline.discarded) {
    limits = gather_limits(question, timeline, errors);
    if (errors.empty()) stop_while_frozen(limits, question, timeline, errors);
    if (errors.empty()) check_in_time(question, errors);
  }
  if (!errors.empty()) {
    problem::sort(errors);
    return tl::unexpected(std::move(errors));
  }
  return answer(question, timeline, limits);
}

bool cook_ends_clock(const InputAtCook& input, bool cook_met) { return input.raw && !input.rework && cook_met; }

}  // namespace lardiner::batch
