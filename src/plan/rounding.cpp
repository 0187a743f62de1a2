// In which steps an amount is weighed, and the whole numbers about a fraction.
#include "plan/rounding.h"

#include "measure/text.h"

namespace lardiner::plan {

using measure::Quantity;
using measure::Ratio;
using measure::Unit;

namespace {

const Ratio kAlmost(1, 1'000'000);

bool has_steps(Quantity weight, Quantity step, std::int64_t count) { return weight.amount / step.amount >= count; }

Quantity decimal_step(Quantity weight, Quantity finer_than) {
  Quantity step = measure::one(Unit::Kilogram);
  const Quantity least = measure::one(Unit::Milligram);
  while (measure::less(least, step) && (!measure::less(step, finer_than) || !has_steps(weight, step, kFewestSteps)))
    step.amount /= 10;
  return step;
}

}  // namespace

measure::System scale_units(const book::Kitchen& kitchen) {
  const bool metric = kitchen.scale_step.amount % measure::one(measure::Unit::Milligram).amount == 0;
  return metric ? measure::System::Metric : measure::System::Customary;
}

Weighable weighable(const book::Kitchen& kitchen, Quantity weight) {
  if (has_steps(weight, kitchen.scale_step, kFewestSteps)) return {kitchen.scale_step, false};
  const std::optional<Quantity>& fine = kitchen.fine_scale_step;
  if (fine && has_steps(weight, *fine, kFewestFineSteps)) return {*fine, true};
  return {decimal_step(weight, fine.value_or(kitchen.scale_step)), true};
}

Quantity rounded_down_to_step(Quantity weight, Quantity step) {
  return {weight.dimension, weight.amount / step.amount * step.amount};
}

Quantity weighed(Quantity weight, Quantity step, bool restricted) {
  return restricted ? rounded_down_to_step(weight, step) : measure::rounded_to_step(weight, step);
}

std::int64_t whole_down(Ratio number) {
  const std::int64_t whole = number.num() / number.den();
  return Ratio(whole + 1, 1) - number <= kAlmost ? whole + 1 : whole;
}

std::int64_t whole_up(Ratio number) {
  const std::int64_t whole = whole_down(number);
  return number - Ratio(whole, 1) <= kAlmost ? whole : whole + 1;
}

}  // namespace lardiner::plan
