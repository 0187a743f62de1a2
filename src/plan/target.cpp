// How many makings of a formula a target is: an output, all of an ingredient, a full vessel.
#include "book/weighing.h"
#include "plan/counted.h"
#include "plan/refusals.h"
#include "plan/rounding.h"
#include "plan/scaling.h"
#include "plan/there.h"
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

QString noun_of(const book::Product& product) { return QStringLiteral("product ") + quoted(product.id); }

Error less_than_one(const book::Product& product) {
  return {Code::Range,
          QStringLiteral("this is less than one piece of ") + noun_of(product),
          {},
          QStringLiteral("ask for what gives 1 piece or more")};
}

// Of a component a piece is a portion, which its makings need not be wholes of.
bool made_in_pieces(const book::Product& product) {
  return product.kind == book::ProductKind::AssembledItem ||
         (product.makes && product.makes->dimension == Dimension::Count);
}

class Aim {
 public:
  Aim(const book::Book& book, book::Weighing& weighing, const book::Product& product)
      : book_(book), weighing_(weighing), product_(product) {}

  Expected<Ratio> operator()(const Makings& target) const { return target.times; }

  Expected<Ratio> operator()(const Give& target) const {
    if (target.output.dimension == Dimension::Count) return of_pieces(target.output);
    const std::optional<Quantity>& makes = product_.makes;
    if (makes && makes->dimension == target.output.dimension && makes->amount > 0)
      return measure::ratio(target.output, *makes);
    return target.output.dimension == Dimension::Mass ? of_weight(target.output) : no_volume();
  }

  Expected<Ratio> operator()(const UseUp& target) const {
    const auto& weights = weighing_.lines(product_);
    if (!weights) return tl::unexpected(weights.error().front());
    return makings_of_there(book_, weighing_, product_, {target.item, target.there});
  }

  Expected<Ratio> operator()(const FillVessel&) const {
    if (!product_.vessel_takes)
      return tl::unexpected(Error{Code::Missing,
                                  noun_of(product_) + QStringLiteral(" does not say what its vessel takes"),
                                  product_.place, QStringLiteral("state vessel and vessel_takes")});
    const auto& weights = weighing_.lines(product_);
    if (!weights) return tl::unexpected(weights.error().front());
    const Quantity input = book::sum(*weights);
    if (input.amount <= 0) return nothing_comes_out();
    return measure::ratio(*product_.vessel_takes, input);
  }

 private:
  Expected<Ratio> of_pieces(Quantity output) const {
    const std::optional<Ratio> units = book::Weighing::units(product_);
    if (!units || units->num() <= 0) return tl::unexpected(not_in_pieces(product_));
    const Ratio wanted = measure::in_unit(output, measure::Unit::Piece);
    if (wanted.num() > 0 && wanted < Ratio(1, 1)) return tl::unexpected(less_than_one(product_));
    return Ratio(units_to_make(product_, wanted), 1) / *units;
  }

  Expected<Ratio> of_weight(Quantity output) const {
    const problem::ExpectedAll<Quantity> whole = weighing_.output(product_);
    if (!whole) return tl::unexpected(whole.error().front());
    if (whole->amount <= 0) return nothing_comes_out();
    return measure::ratio(output, *whole);
  }

  Expected<Ratio> no_volume() const {
    return tl::unexpected(
        Error{Code::Conflict,
              noun_of(product_) + QStringLiteral(" is not made by volume, and nothing says what a volume of it weighs"),
              product_.place, QStringLiteral("ask for a weight, or state makes as a volume")});
  }

  Expected<Ratio> nothing_comes_out() const {
    return tl::unexpected(Error{Code::Conflict, QStringLiteral("nothing comes out of ") + noun_of(product_),
                                product_.place, QStringLiteral("correct its formula, or its cook_yield")});
  }

  const book::Book& book_;
  book::Weighing& weighing_;
  const book::Product& product_;
};

}  // namespace

Expected<Ratio> makings(const book::Book& book, book::Weighing& weighing, const book::Product& product,
                        const Target& target) {
  const Expected<Ratio> times = std::visit(Aim(book, weighing, product), target);
  if (!times) return times;
  if (times->num() <= 0)
    return tl::unexpected(Error{Code::Range,
                                QStringLiteral("nothing of %1 is asked for").arg(noun_of(product)),
                                {},
                                QStringLiteral("ask for an amount above 0")});
  const std::optional<Ratio> units = book::Weighing::units(product);
  if (!units || !made_in_pieces(product) || whole_down(*units * *times) >= 1) return times;
  return tl::unexpected(less_than_one(product));
}

}  // namespace lardiner::plan
