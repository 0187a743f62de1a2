// The cooling of a lot after it was recorded: judged again by the limits that were fixed, and what that releases or
// holds.
#include <algorithm>

#include "batch/compute_making.h"
#include "batch/fixed_refusal.h"

namespace lardiner::batch {

namespace {

Cooling judged(const Fixed& fixed, const QDateTime& now) {
  const CoolingLimits& limits = *fixed.cooling;
  book::RuleSet rules;
  rules.reheat = limits.reheat;
  rules.cooling_authority = limits.authority;
  (limits.from_ambient ? rules.cooling_from_ambient : rules.cooling) = limits.stages;
  return limits.from_ambient ? cooling_from_ambient(rules, fixed.batch.record, now)
                             : cooling(rules, fixed.batch.record, now);
}

void lift(Fixed& fixed, const problem::Error& error) {
  std::erase_if(fixed.batch.refused, [&](const problem::Error& other) {
    return other.code == error.code && other.what == error.what && other.hint == error.hint;
  });
  fixed.batch.missing.removeAll(QStringLiteral("missing.cooling"));
}

void release(Fixed& fixed) {
  Batch& batch = fixed.batch;
  if (const auto over = over_before(batch, fixed.withheld, batch.day_one, batch.record.made_at.timeZone())) {
    miss(fixed, "missing.past_its_date", *over);
    return;
  }
  batch.use_bys = std::move(fixed.withheld);
  fixed.withheld.clear();
  for (size_t at = 0; at < batch.containers.size(); ++at) batch.containers[at].use_by = fixed.question_of[at];
}

}  // namespace

void judge_at(Fixed& fixed, const QDateTime& now) {
  if (!fixed.cooling) return;
  Batch& batch = fixed.batch;
  const bool was_refused = !batch.refused.empty();
  const std::optional<problem::Error> before = refusal_of(batch.cooling);
  batch.cooling = judged(fixed, now);
  if (before) lift(fixed, *before);
  if (const std::optional<problem::Error> error = refusal_of(batch.cooling)) miss(fixed, "missing.cooling", *error);
  if (was_refused && batch.refused.empty()) release(fixed);
  if (!was_refused && !batch.refused.empty()) withhold(fixed);
}

void cool(Fixed& fixed, const std::vector<CoolReading>& readings, const QString& corrective_action,
          const QString& corrective_by, const QDateTime& now) {
  Record& record = fixed.batch.record;
  record.cooled.insert(record.cooled.end(), readings.begin(), readings.end());
  if (!corrective_action.isEmpty()) record.corrective_action = corrective_action;
  if (!corrective_by.isEmpty()) record.corrective_by = corrective_by;
  judge_at(fixed, now);
}

std::optional<QDateTime> cooling_due(const Fixed& fixed) { return fixed.batch.cooling.due; }

bool held_for_cooling_alone(const Fixed& fixed) {
  return !fixed.batch.refused.empty() && fixed.batch.missing == QStringList{QStringLiteral("missing.cooling")};
}

}  // namespace lardiner::batch
