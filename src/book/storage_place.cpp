// The temperatures that a place is held to: the kitchen's own where it states them, else the rule set's.
#include "book/storage_place.h"

#include "book/limit_text.h"

namespace lardiner::book {

bool HeldTo::met_by(measure::Temperature reading) const {
  return (!at_least || measure::at_least(reading, *at_least)) && (!at_most || measure::at_most(reading, *at_most));
}

HeldTo held_to(const StoragePlace& place, const RuleSet& rules) {
  HeldTo limits{place.at_least, place.at_most};
  if (rules.id.isEmpty()) return limits;
  if (place.keeps == Keeping::Chilled && !limits.at_most) limits.at_most = rules.cold_holding;
  if (place.keeps == Keeping::Hot && !limits.at_least) limits.at_least = rules.hot_holding;
  return limits;
}

QString text(const HeldTo& limits) {
  if (limits.at_least && limits.at_most)
    return QStringLiteral("%1 to %2").arg(text(*limits.at_least), text(*limits.at_most));
  if (limits.at_least) return QStringLiteral("%1 or above").arg(text(*limits.at_least));
  return limits.at_most ? QStringLiteral("%1 or below").arg(text(*limits.at_most)) : QString();
}

}  // namespace lardiner::book
