// Formulas that make more than goes in, and lines that sheets cannot weigh.
#include "book/checks.h"
#include "measure/text.h"
#include "reader/quote.h"

namespace lardiner::book {

using measure::Quantity;
using measure::Ratio;
using problem::Code;
using problem::Errors;

namespace {

// How much more may come out than the lines weigh, for the roundness of written figures.
const Ratio kSlack(105, 100);

void check_sum(const Checking& checking, const Product& product, Quantity in) {
  const std::optional<Quantity> out = stated_output(product);
  const Quantity most = scaled(in, product.cook_yield);
  if (!out || out->amount <= scaled(most, kSlack).amount) return;
  const auto shown = [&](Quantity q) { return measure::display(q, checking.book.kitchen.units); };
  checking.error(Code::Conflict,
                 QStringLiteral("product %1 makes %2, but its lines give %3")
                     .arg(reader::quoted(product.id), shown(*out), shown(most)),
                 product.place, QStringLiteral("correct makes, unit_weight, cook_yield or the amount that is wrong"));
}

}  // namespace

void check_weights(const Checking& checking) {
  for (const Product& product : checking.book.products) {
    if (checking.doubtful.contains(&product)) continue;
    const auto& weights = checking.weighing.lines(product);
    Errors& gaps = checking.findings.gaps;
    if (weights)
      check_sum(checking, product, sum(*weights));
    else
      gaps.insert(gaps.end(), weights.error().begin(), weights.error().end());
  }
}

}  // namespace lardiner::book
