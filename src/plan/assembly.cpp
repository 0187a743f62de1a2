// An assembly sheet's figures: what goes into one unit, onto one tray, and into all of them.
#include "plan/assembly.h"

#include <algorithm>

#include "measure/text.h"
#include "plan/brought_allergens.h"
#include "plan/counted.h"
#include "plan/refusals.h"
#include "plan/rounding.h"
#include "reader/quote.h"

namespace lardiner::plan {

using measure::Dimension;
using measure::Quantity;
using measure::Ratio;
using problem::Code;
using problem::Error;
using problem::Errors;
using problem::ExpectedAll;
using reader::quoted;

namespace {

// Common practice, no source: the first units, while the hands find the amount, and then now and again.
constexpr std::int64_t kFirstWeighed = 5;
constexpr std::int64_t kWeighedEvery = 20;

constexpr int kSecondsPerHour = 3600;

Error nothing_wanted(const book::Product& product) {
  return {Code::Range,
          QStringLiteral("no piece of product %1 is asked for").arg(quoted(product.id)),
          {},
          QStringLiteral("ask for 1 piece or more")};
}

std::optional<Trays> trays_of(const book::Product& product, std::int64_t wanted) {
  const auto& all = product.containers;
  const auto tray = std::find_if(all.begin(), all.end(), [](const book::ContainerSpec& container) {
    return container.kind == QLatin1String("tray") && container.holds.dimension == Dimension::Count &&
           whole_down(measure::in_unit(container.holds, measure::Unit::Piece)) > 0;
  });
  if (tray == all.end()) return std::nullopt;
  const std::int64_t pieces = whole_down(measure::in_unit(tray->holds, measure::Unit::Piece));
  return Trays{&*tray, wanted / pieces, wanted % pieces};
}

std::optional<OutOfCold> out_of_cold(const book::Kitchen& kitchen, const book::Product& product, std::int64_t make) {
  if (kitchen.out_of_cold_seconds <= 0 || !product.units_per_hour) return std::nullopt;
  OutOfCold out;
  out.seconds = kitchen.out_of_cold_seconds;
  out.units = std::min(make, whole_down(*product.units_per_hour * Ratio(out.seconds, kSecondsPerHour)));
  if (out.units > 0) out.times = (make + out.units - 1) / out.units;
  return out;
}

std::vector<std::int64_t> check_weighed(std::int64_t make) {
  std::vector<std::int64_t> units;
  for (std::int64_t unit = 1; unit <= std::min(make, kFirstWeighed); ++unit) units.push_back(unit);
  for (std::int64_t unit = kWeighedEvery; unit <= make; unit += kWeighedEvery) units.push_back(unit);
  return units;
}

// The lines of `out`, from the weights of a making of so many units.
class Lines {
 public:
  Lines(const book::Book& book, const std::vector<Quantity>& weights, Ratio units, Assembly& out)
      : book_(book), weights_(weights), units_(units), out_(out) {}

  Errors fill() {
    Errors errors;
    for (size_t i = 0; i < weights_.size(); ++i) {
      const book::Ingredient* ingredient = book_.ingredient(out_.product->formula[i].item);
      if (ingredient && ingredient->edible.num() <= 0)
        errors.push_back(nothing_edible(*ingredient));
      else
        out_.lines.push_back(line_of(i, ingredient));
    }
    return errors;
  }

 private:
  AssemblyLine line_of(size_t i, const book::Ingredient* ingredient) const {
    const book::FormulaLine& written = out_.product->formula[i];
    AssemblyLine line;
    line.line = &written;
    if (const std::optional<Ratio> pieces = pieces_of_line(*out_.product, weights_, i)) line.pieces = *pieces / units_;
    line.each = measure::scaled(weights_[i], Ratio(1, 1) / units_);
    const bool restricted = ingredient && ingredient->most_percent;
    line.each_weighed = plan::weighed(line.each, weighable(book_.kitchen, line.each).step, restricted);
    line.total = measure::scaled(weights_[i], Ratio(out_.make, 1) / units_);
    add_pull(line, ingredient);
    if (out_.trays && written.laying != book::Laying::Placed)
      line.on_tray =
          measure::scaled(weights_[i], measure::in_unit(out_.trays->container->holds, measure::Unit::Piece) / units_);
    if (written.disher) line.disher = measure::scaled(measure::one(measure::Unit::Quart), Ratio(1, *written.disher));
    const Brought brought = brought_allergens(book_, written.item);
    line.allergens_known = brought.known;
    line.allergens = brought.entries;
    return line;
  }

  void add_pull(AssemblyLine& line, const book::Ingredient* ingredient) const {
    const Quantity exact = ingredient ? measure::scaled(line.total, Ratio(1, 1) / ingredient->edible) : line.total;
    const Ratio all(out_.make, 1);
    const std::optional<Ratio> pieces = line.pieces ? std::optional(*line.pieces * all) : std::nullopt;
    const Quantity pull = sure_to_hold(exact, ingredient, pieces);
    line.to_pull = measure::rounded_up_to_step(pull, weighable(book_.kitchen, pull).step);
    if (ingredient && ingredient->count_grade && pieces)
      line.sure_weight = sure_weight(*ingredient->count_grade, whole_up(*pieces));
  }

  const book::Book& book_;
  const std::vector<Quantity>& weights_;
  Ratio units_;
  Assembly& out_;
};

}  // namespace

ExpectedAll<Assembly> assembly(const book::Book& book, book::Weighing& weighing, const book::Product& product,
                               std::int64_t wanted) {
  const std::optional<Ratio> units = book::Weighing::units(product);
  if (!units || units->num() <= 0) return tl::unexpected(Errors{not_in_pieces(product)});
  if (wanted < 1) return tl::unexpected(Errors{nothing_wanted(product)});
  const ExpectedAll<std::vector<Quantity>>& weights = weighing.lines(product);
  if (!weights) return tl::unexpected(weights.error());
  Assembly out;
  out.product = &product;
  out.wanted = wanted;
  out.make = units_to_make(product, Ratio(wanted, 1));
  out.unit_weight = product.unit_weight.value_or(measure::scaled(book::sum(*weights), Ratio(1, 1) / *units));
  out.unit_least = product.unit_least;
  out.unit_most = product.unit_most;
  out.trays = trays_of(product, wanted);
  out.out_of_cold = out_of_cold(book.kitchen, product, out.make);
  out.check_weigh = check_weighed(out.make);
  const Errors errors = Lines(book, *weights, *units, out).fill();
  if (!errors.empty()) return tl::unexpected(errors);
  return out;
}

}  // namespace lardiner::plan
