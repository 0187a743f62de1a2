// How long what is begun at an instant keeps, and when it must be begun to keep long enough.
#include "plan/day_plan_keeping.h"

#include <algorithm>

#include "batch/compute_making.h"

namespace lardiner::plan {

using batch::Rule;

namespace {

bool same(const Rule& a, const Rule& b) {
  return a.name == b.name && a.state == b.state && a.length == b.length && a.kind == b.kind &&
         a.authority == b.authority;
}

bool same(const std::vector<Rule>& a, const std::vector<Rule>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const Rule& x, const Rule& y) { return same(x, y); });
}

bool counts_days(const Rule& rule) { return rule.length.unit != book::Length::Unit::Seconds; }

}  // namespace

size_t Keeping::way(const book::Product& product, bool ready, PutUp put_up) {
  Way way;
  way.tcs = product.tcs.is != book::TcsStatement::Is::No;
  way.put_up = put_up;
  way.put_up.reduced_oxygen = put_up.reduced_oxygen && way.tcs;
  way.rules = batch::rules_for({product.shelf_lives, way.tcs, ready}, book_.rules);
  if (way.put_up.reduced_oxygen)
    for (Rule& rule : batch::reduced_oxygen_rules(product.shelf_lives, calendar_.time(calendar_.now()), book_.rules))
      way.rules.push_back(std::move(rule));
  const auto found = std::find_if(ways_.begin(), ways_.end(), [&](const Way& other) {
    return other.tcs == way.tcs && other.put_up.frozen == way.put_up.frozen &&
           other.put_up.reduced_oxygen == way.put_up.reduced_oxygen && same(other.rules, way.rules);
  });
  if (found != ways_.end()) return static_cast<size_t>(found - ways_.begin());
  way.by_day = std::all_of(way.rules.begin(), way.rules.end(), counts_days);
  ways_.push_back(std::move(way));
  return ways_.size() - 1;
}

Instant Keeping::end(size_t index, Instant start) {
  Way& way = ways_[index];
  if (!way.by_day) return asked(way, start);
  const auto [at, is_new] = way.ends.emplace(calendar_.day_of(start), 0);
  if (is_new) at->second = asked(way, start);
  return at->second;
}

bool Keeping::quality_only(size_t index) const {
  const Way& way = ways_[index];
  return !way.tcs && !way.rules.empty() && std::all_of(way.rules.begin(), way.rules.end(), [](const Rule& rule) {
    return rule.kind == book::EndKind::BestBefore;
  });
}

Instant Keeping::asked(Way& way, Instant start) {
  batch::Question question;
  question.zone = calendar_.zone();
  question.freezing_day = book_.kitchen.freezing_day;
  question.tcs = way.tcs;
  question.made_at = calendar_.time(start);
  question.rules = way.rules;
  for (Rule& rule : question.rules)
    if (rule.starts_at) rule.starts_at = question.made_at;  // packed as it is made
  question.hot_or_cold_start = book_.rules.time_control;
  question.cold_start = book_.rules.time_control_cold_start;
  question.cold_holding = book_.rules.cold_holding;
  question.hot_holding = book_.rules.hot_holding;
  if (way.put_up.frozen) {
    batch::Event frozen;
    frozen.at = question.made_at;
    question.timeline.push_back(frozen);
  }
  const problem::ExpectedAll<batch::UseBy> answer = batch::use_by(question);
  if (!answer) {
    way.errors = answer.error();
    return 0;
  }
  return answer->end.isValid() ? answer->end.toMSecsSinceEpoch() : kForever;
}

Instant Keeping::earliest(size_t way, Instant until) {
  const Instant now = calendar_.now();
  const Instant from_now = end(way, now);
  if (from_now == 0) return kNever;
  if (from_now >= until) return now;
  int before = 0;  // begun at its last moment it does not keep until then
  int from = calendar_.day_of(until) + 1;
  const auto keeps = [&](int day) { return end(way, calendar_.start(day + 1) - 1) >= until; };
  if (!keeps(from)) return kNever;
  if (keeps(before)) return std::max(now, first_within(way, before, until));
  while (from - before > 1) {
    const int middle = before + (from - before) / 2;
    (keeps(middle) ? from : before) = middle;
  }
  return std::max(now, first_within(way, from, until));
}

// To the second, where the end moves with the time of the start.
Instant Keeping::first_within(size_t way, int day, Instant until) {
  Instant keeps = calendar_.start(day + 1) - 1;
  Instant before = calendar_.start(day);
  if (by_day(way) || end(way, before) >= until) return before;
  while (keeps - before > kSecond) {
    const Instant middle = before + (keeps - before) / 2;
    (end(way, middle) >= until ? keeps : before) = middle;
  }
  return keeps;
}

}  // namespace lardiner::plan
