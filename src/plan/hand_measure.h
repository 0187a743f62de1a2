// A weight in spoons and cups, where the ingredient's own measures tell what these weigh.
#pragma once

#include <optional>

#include "plan/scaling.h"

namespace lardiner::plan {

/// In quarters of the largest of cup, tablespoon and teaspoon that comes within a twentieth of the weight, up to a cup
/// and a quarter (common practice, no source); nothing where none does, or the ingredient has no measure of volume. A
/// unit weighs what a measure of just that unit says, else by exact volume what the largest measure that is not more
/// than it says, else the smallest: the USDA's own measures of one food disagree by some per cent.
std::optional<HandMeasure> hand_measure(const book::Ingredient& ingredient, measure::Quantity weight);

}  // namespace lardiner::plan
