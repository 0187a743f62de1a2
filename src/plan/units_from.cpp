// How many units what is there gives, and which item limits them.
#include <algorithm>
#include <tuple>

#include "plan/assembly.h"
#include "plan/counted.h"
#include "plan/refusals.h"
#include "plan/rounding.h"
#include "plan/there.h"

namespace lardiner::plan {

using measure::Dimension;
using measure::Quantity;
using measure::Ratio;
using problem::Errors;
using problem::Expected;
using problem::ExpectedAll;

namespace {

PieceRange exactly(std::int64_t units) { return {units, units, units}; }

std::optional<std::int64_t> shared_out(std::optional<std::int64_t> pieces, Ratio in_unit) {
  return pieces ? std::optional(whole_down(Ratio(*pieces, 1) / in_unit)) : std::nullopt;
}

PieceRange of_graded(const book::CountGrade& grade, Quantity weight, Ratio in_unit) {
  const PieceRange pieces = pieces_in(grade, weight);
  return {shared_out(pieces.worst, in_unit), shared_out(pieces.likely, in_unit), *shared_out(pieces.best, in_unit)};
}

// By the lightest, the middling and the heaviest piece of the grade, of pieces that go in by weight.
PieceRange of_graded_pieces(const book::CountGrade& grade, Ratio likely) {
  const Ratio middle(*grade.fewest + grade.most, 2);
  return {whole_down(likely * middle / Ratio(grade.most, 1)), whole_down(likely),
          whole_down(likely * middle / Ratio(*grade.fewest, 1))};
}

bool has_measure_of_pieces(const book::Ingredient& ingredient) {
  return std::any_of(ingredient.measures.begin(), ingredient.measures.end(), [](const book::Measure& measure) {
    return measure.volume.dimension == Dimension::Count && measure.volume.amount > 0;
  });
}

class Giving {
 public:
  Giving(const book::Book& book, book::Weighing& weighing, const book::Product& product)
      : book_(book), weighing_(weighing), product_(product), units_(*book::Weighing::units(product)) {}

  Expected<PieceRange> operator()(const There& there) const {
    const Expected<Ratio> makings = makings_of_there(book_, weighing_, product_, there);
    if (!makings) return tl::unexpected(makings.error());
    const Ratio likely = *makings * units_;
    const book::Ingredient* ingredient = book_.ingredient(there.item);
    if (!ingredient || !ingredient->count_grade) return exactly(whole_down(likely));
    const std::optional<Ratio> pieces = pieces_of_item(weighing_, product_, there.item);
    if (there.amount.dimension == Dimension::Mass)
      return pieces ? of_graded(*ingredient->count_grade, there.amount, *pieces / units_)
                    : by_weight(*ingredient, likely);
    const bool by_grade = !pieces && there.amount.dimension == Dimension::Count && !has_measure_of_pieces(*ingredient);
    return by_grade ? of_graded_pieces(*ingredient->count_grade, likely) : exactly(whole_down(likely));
  }

 private:
  // Where it is counted in some of its lines only the worst is not known.
  PieceRange by_weight(const book::Ingredient& ingredient, Ratio likely) const {
    const bool counted =
        std::any_of(product_.formula.begin(), product_.formula.end(), [&](const book::FormulaLine& line) {
          return line.item == ingredient.id && line.amount.dimension == Dimension::Count;
        });
    PieceRange range = exactly(whole_down(likely));
    if (counted) range.worst.reset();
    return range;
  }

  const book::Book& book_;
  book::Weighing& weighing_;
  const book::Product& product_;
  Ratio units_;
};

// An unknown worst is before any other.
auto worst_first(const Suffices& item) {
  return std::tuple(item.units.worst.value_or(-1), item.units.likely.value_or(-1), item.units.best);
}

}  // namespace

ExpectedAll<std::vector<Suffices>> units_from(const book::Book& book, book::Weighing& weighing,
                                              const book::Product& product, const std::vector<There>& there) {
  const std::optional<Ratio> units = book::Weighing::units(product);
  if (!units || units->num() <= 0) return tl::unexpected(Errors{not_in_pieces(product)});
  const auto& weights = weighing.lines(product);
  if (!weights) return tl::unexpected(weights.error());
  const Giving giving(book, weighing, product);
  std::vector<Suffices> out;
  Errors errors;
  for (const There& item : there)
    if (const Expected<PieceRange> range = giving(item))
      out.push_back({item.item, *range});
    else
      errors.push_back(range.error());
  if (!errors.empty()) return tl::unexpected(errors);
  std::stable_sort(out.begin(), out.end(),
                   [](const Suffices& a, const Suffices& b) { return worst_first(a) < worst_first(b); });
  return out;
}

}  // namespace lardiner::plan
