// Amounts of an item in the dimension in which it is made or bought.
#include "plan/amounts_of.h"

#include <algorithm>

#include "plan/count_grade.h"

namespace lardiner::plan {

using measure::Dimension;
using measure::Quantity;

namespace {

std::optional<Quantity> weight_of(book::Weighing& weighing, const book::Product& product, Quantity amount) {
  return amount.dimension == Dimension::Mass ? amount : weighing.of_product(product, amount);
}

// What so much weight is in pieces of a unit weight, or in the volume that a making gives.
std::optional<Quantity> of_weight(book::Weighing& weighing, const book::Product& product, Quantity weight) {
  const Dimension wanted = product.made_as();
  if (wanted == Dimension::Mass) return weight;
  const Quantity one = product.makes ? *product.makes : measure::one(measure::Unit::Piece);
  const problem::ExpectedAll<Quantity> whole = weighing.output(product);
  if (!whole || whole->amount <= 0) return std::nullopt;
  return measure::scaled(one, measure::ratio(weight, *whole));
}

bool counted(const book::Ingredient& ingredient) {
  return std::any_of(ingredient.measures.begin(), ingredient.measures.end(),
                     [](const book::Measure& measure) { return measure.volume.dimension == Dimension::Count; });
}

}  // namespace

std::optional<Quantity> amount_of(book::Weighing& weighing, const book::Product& product, Quantity amount) {
  if (amount.dimension == product.made_as()) return amount;
  const std::optional<Quantity> weight = weight_of(weighing, product, amount);
  return weight ? of_weight(weighing, product, *weight) : std::nullopt;
}

std::optional<Quantity> weight_of(const book::Weighing& weighing, const book::Ingredient& ingredient, Quantity amount) {
  if (amount.dimension == Dimension::Mass) return amount;
  const bool graded = amount.dimension == Dimension::Count && ingredient.count_grade && !counted(ingredient);
  if (graded)
    return measure::scaled(piece_weight(*ingredient.count_grade).least, measure::in_unit(amount, measure::Unit::Piece));
  const std::optional<Quantity> edible = weighing.of_ingredient(ingredient, amount);
  return edible ? std::optional(measure::scaled(*edible, measure::Ratio(1, 1) / ingredient.edible)) : std::nullopt;
}

}  // namespace lardiner::plan
