// In which steps an amount is weighed, and the whole numbers about a fraction; for scaling and assembly.
#pragma once

#include <cstdint>

#include "book/kitchen.h"
#include "measure/quantity.h"
#include "measure/text.h"

namespace lardiner::plan {

/// How many of a scale's steps an amount must come to before the scale is good for it: half a step is then at most 2.5
/// % of it. Common practice, no source.
inline constexpr std::int64_t kFewestSteps = 20;

/// The same of the scale for small amounts, after which only what reads milligrams is left: at most a tenth off. Common
/// practice, no source.
inline constexpr std::int64_t kFewestFineSteps = 5;

struct Weighable {
  measure::Quantity step;
  bool fine = false;  ///< under kFewestSteps of the kitchen's scale
};

/// In which units the kitchen's scale shows: metric where its step is a whole number of milligrams.
measure::System scale_units(const book::Kitchen& kitchen);

/// On which scale a weight is weighed. Too little for the kitchen's scales (or for its one scale): the largest of 1 kg,
/// 100 g, … 1 mg that is finer and of which it has kFewestSteps, at least 1 mg.
Weighable weighable(const book::Kitchen& kitchen, measure::Quantity weight);

/// `weight` in whole steps, none more than it is. REQUIRES: not negative.
measure::Quantity rounded_down_to_step(measure::Quantity weight, measure::Quantity step);

/// The nearest step, or of what must not be more (a maximum by law) the one below.
measure::Quantity weighed(measure::Quantity weight, measure::Quantity step, bool restricted);

/// The whole number that is not above, and not below, the fraction. Within a millionth of the next it is that one:
/// weights are rounded to the nanogram. REQUIRES: not negative.
std::int64_t whole_down(measure::Ratio number);
std::int64_t whole_up(measure::Ratio number);

}  // namespace lardiner::plan
