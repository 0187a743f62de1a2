// The temperatures that a place is held to: the kitchen's own where it states them, else the rule set's.
#pragma once

#include <optional>

#include "book/kitchen.h"
#include "book/rule_set.h"

namespace lardiner::book {

/// Between which temperatures something must be; a side that is absent is open. With both absent nothing is known.
struct HeldTo {
  std::optional<measure::TemperatureLimit> at_least, at_most;

  bool known() const { return at_least || at_most; }
  /// Whether a reading keeps to it, judged by the figures of the reading's own scale. REQUIRES: known.
  bool met_by(measure::Temperature reading) const;

  friend bool operator==(const HeldTo&, const HeldTo&) = default;
};

/// Of a chilled place at most the rule set's cold holding, of a hot one at least its hot holding, each where the
/// kitchen states nothing stricter. A frozen or an ambient place has what the kitchen states and nothing else: no code
/// has a figure for them.
HeldTo held_to(const StoragePlace& place, const RuleSet& rules);

/// "5 °C (41 °F) or below", "57 °C (135 °F) or above", "0 °C (32 °F) to 5 °C (41 °F)"; empty when nothing is known.
QString text(const HeldTo& limits);

}  // namespace lardiner::book
