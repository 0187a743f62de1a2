// What an amount of an item that is there is worth in makings of a formula.
#include "plan/there.h"

#include <algorithm>

#include "batch/read_records_values.h"
#include "plan/counted.h"
#include "reader/quote.h"

namespace lardiner::plan {

using measure::Dimension;
using measure::Quantity;
using measure::Ratio;
using problem::Code;
using problem::Error;
using problem::Expected;
using reader::quoted;

namespace {

Quantity weight_in_making(book::Weighing& weighing, const book::Product& product, const QString& item) {
  const std::vector<Quantity>& weights = *weighing.lines(product);
  Quantity sum;
  for (size_t i = 0; i < weights.size(); ++i)
    if (product.formula[i].item == item) sum = sum + weights[i];
  return sum;
}

bool in_formula(const book::Product& product, const QString& item) {
  return std::any_of(product.formula.begin(), product.formula.end(),
                     [&](const book::FormulaLine& line) { return line.item == item; });
}

Error not_in_formula(const book::Product& product, const QString& item) {
  QStringList known;
  for (const book::FormulaLine& line : product.formula) known += line.item;
  return {Code::Unknown,
          QStringLiteral("%1 is not in the formula of product %2").arg(quoted(item), quoted(product.id)),
          {},
          batch::did_you_mean(item, known, QStringLiteral("write the id of an item of its formula"))};
}

Error no_weight(const book::Book& book, const There& there) {
  const QString what =
      there.amount.dimension == Dimension::Volume ? QStringLiteral("a volume") : QStringLiteral("a piece");
  const QString remedy = book.product(there.item)
                             ? QStringLiteral("give %1 a unit_weight, or a makes of which the weight is known")
                             : QStringLiteral("add [[ingredient.measure]] to %1 with amount, weighs and source");
  return {Code::Missing,
          QStringLiteral("nothing says what %1 of %2 weighs").arg(what, quoted(there.item)),
          {},
          remedy.arg(quoted(there.item))};
}

// Edible weight over that of one making. The trim yield is applied to the fraction: nothing is rounded on the way.
std::optional<Ratio> by_weight(const book::Book& book, book::Weighing& weighing, const There& there, Quantity one) {
  const book::Ingredient* ingredient = book.ingredient(there.item);
  if (there.amount.dimension == Dimension::Mass)
    return measure::ratio(there.amount, one) * (ingredient ? ingredient->edible : Ratio(1, 1));
  const book::Product* product = book.product(there.item);
  std::optional<Quantity> edible;
  if (ingredient) edible = weighing.of_ingredient(*ingredient, there.amount);
  if (product) edible = weighing.of_product(*product, there.amount);
  return edible ? std::optional(measure::ratio(*edible, one)) : std::nullopt;
}

}  // namespace

std::optional<Ratio> pieces_of_item(book::Weighing& weighing, const book::Product& product, const QString& item) {
  const std::vector<Quantity>& weights = *weighing.lines(product);
  Ratio sum;
  for (size_t i = 0; i < weights.size(); ++i) {
    if (product.formula[i].item != item) continue;
    const std::optional<Ratio> pieces = pieces_of_line(product, weights, i);
    if (!pieces) return std::nullopt;
    sum = sum + *pieces;
  }
  return sum.num() > 0 ? std::optional(sum) : std::nullopt;
}

Expected<Ratio> makings_of_there(const book::Book& book, book::Weighing& weighing, const book::Product& product,
                                 const There& there) {
  if (!in_formula(product, there.item)) return tl::unexpected(not_in_formula(product, there.item));
  const std::optional<Ratio> pieces = pieces_of_item(weighing, product, there.item);
  if (pieces && there.amount.dimension == Dimension::Count)
    return measure::in_unit(there.amount, measure::Unit::Piece) / *pieces;
  const Quantity one = weight_in_making(weighing, product, there.item);
  if (one.amount <= 0)
    return tl::unexpected(
        Error{Code::Conflict,
              QStringLiteral("nothing of %1 goes into product %2").arg(quoted(there.item), quoted(product.id)),
              product.place, QStringLiteral("correct its formula")});
  const std::optional<Ratio> makings = by_weight(book, weighing, there, one);
  if (!makings) return tl::unexpected(no_weight(book, there));
  return *makings;
}

}  // namespace lardiner::plan
