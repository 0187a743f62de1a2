// A weight in spoons and cups, where the ingredient's own measures tell what these weigh.
#include "plan/hand_measure.h"

namespace lardiner::plan {

using measure::Dimension;
using measure::Quantity;
using measure::Ratio;
using measure::Unit;

namespace {

// More is weighed, and a measure that is farther off than this is none. Common practice, no source.
const Ratio kMostCups(5, 4);
const Ratio kMostOff(1, 20);

// Of those that are not more than the unit the largest, else the smallest.
bool nearer(const book::Measure& a, const book::Measure& b, Quantity unit) {
  const bool a_fits = !measure::less(unit, a.volume);
  const bool b_fits = !measure::less(unit, b.volume);
  if (a_fits != b_fits) return a_fits;
  return a_fits ? measure::less(b.volume, a.volume) : measure::less(a.volume, b.volume);
}

const book::Measure* measure_for(const book::Ingredient& ingredient, Quantity unit) {
  const book::Measure* best = nullptr;
  for (const book::Measure& measure : ingredient.measures) {
    if (measure.volume.dimension != Dimension::Volume || measure.volume.amount == 0 || measure.mass.amount == 0)
      continue;
    if (best == nullptr || nearer(measure, *best, unit)) best = &measure;
  }
  return best;
}

Ratio nearest_quarters(Ratio count) {
  const Ratio quarters = count * Ratio(4, 1) + Ratio(1, 2);
  return Ratio(quarters.num() / quarters.den(), 4);
}

std::optional<HandMeasure> in_spoon(const book::Measure& measure, Quantity weight, Unit unit) {
  const Quantity one = measure::one(unit);
  const Ratio exact = measure::ratio(weight, measure.mass) * measure::ratio(measure.volume, one);
  const Ratio count = nearest_quarters(exact);
  const Ratio off = exact < count ? count - exact : exact - count;
  if (off > exact * kMostOff) return std::nullopt;
  if (count * measure::ratio(one, measure::one(Unit::Cup)) > kMostCups) return std::nullopt;
  return HandMeasure{unit, count, measure.source};
}

}  // namespace

std::optional<HandMeasure> hand_measure(const book::Ingredient& ingredient, Quantity weight) {
  for (const Unit unit : {Unit::Cup, Unit::Tablespoon, Unit::Teaspoon}) {
    const book::Measure* measure = measure_for(ingredient, measure::one(unit));
    if (measure == nullptr || weight.amount <= 0) return std::nullopt;
    if (const std::optional<HandMeasure> found = in_spoon(*measure, weight, unit)) return found;
  }
  return std::nullopt;
}

}  // namespace lardiner::plan
