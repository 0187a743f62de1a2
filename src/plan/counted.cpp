// What a formula counts: the pieces of a line, the units of a making, and what must be pulled to have them for sure.
#include "plan/counted.h"

#include "plan/count_grade.h"
#include "plan/rounding.h"

namespace lardiner::plan {

using book::Basis;
using measure::Quantity;
using measure::Ratio;

namespace {

Quantity weight_of_main(const book::Product& product, const std::vector<Quantity>& weights) {
  Quantity main;
  for (size_t i = 0; i < weights.size(); ++i)
    if (product.formula[i].main) main = main + weights[i];
  return main;
}

}  // namespace

std::optional<Ratio> pieces_of_line(const book::Product& product, const std::vector<Quantity>& weights, size_t line) {
  const book::FormulaLine& written = product.formula[line];
  if (written.amount.dimension != measure::Dimension::Count) return std::nullopt;
  const Ratio pieces = measure::in_unit(written.amount, measure::Unit::Piece);
  if (written.basis == Basis::Absolute) return pieces;
  if (written.basis == Basis::PerUnit) {
    const std::optional<Ratio> units = book::Weighing::units(product);
    return units ? std::optional(pieces * *units) : std::nullopt;
  }
  if (written.basis != Basis::PerMain || written.per.amount == 0) return std::nullopt;
  return pieces * measure::ratio(weight_of_main(product, weights), written.per);
}

std::int64_t units_to_make(const book::Product& product, Ratio wanted) {
  return whole_up(wanted * (Ratio(1, 1) + product.make_over));
}

Quantity sure_to_hold(Quantity pull, const book::Ingredient* ingredient, std::optional<Ratio> pieces) {
  if (!ingredient || !ingredient->count_grade || !pieces) return pull;
  const std::optional<Quantity> sure = sure_weight(*ingredient->count_grade, whole_up(*pieces));
  return sure && measure::less(pull, *sure) ? *sure : pull;
}

}  // namespace lardiner::plan
