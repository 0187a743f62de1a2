// A formula scaled to what is wanted: exact amounts, and what the scale shall read.
#include "plan/scaling.h"

#include "book/roll_up.h"
#include "measure/text.h"
#include "plan/counted.h"
#include "plan/hand_measure.h"
#include "plan/refusals.h"
#include "plan/rounding.h"
#include "plan/weighing_out.h"
#include "reader/quote.h"

namespace lardiner::plan {

using measure::Quantity;
using measure::Ratio;
using problem::Code;
using problem::Error;
using problem::Errors;
using problem::ExpectedAll;
using reader::quoted;

namespace {

// More pulls than any day has are a slip of the pen.
constexpr int kMostPulls = 10'000;

QString noun_of(const book::Product& product) { return QStringLiteral("product ") + quoted(product.id); }

Errors nothing_made(const book::Product& product) {
  return {{Code::Range,
           QStringLiteral("nothing of %1 is to be made").arg(noun_of(product)),
           {},
           QStringLiteral("ask for an amount above 0")}};
}

Error too_little(const book::Product& product, const book::FormulaLine& line) {
  return {Code::Range,
          QStringLiteral("the line %1 of %2 comes to less than 1 mg in a pull, which no scale shows")
              .arg(quoted(line.item), noun_of(product)),
          line.place, QStringLiteral("make more of it at a time, or mix what is so little into something else first")};
}

ExpectedAll<int> pulls_of(const book::Product& product, Quantity input) {
  if (!product.vessel_takes || product.vessel_takes->amount <= 0) return 1;
  const std::int64_t pulls = whole_up(measure::ratio(input, *product.vessel_takes));
  if (pulls <= kMostPulls) return static_cast<int>(std::max<std::int64_t>(pulls, 1));
  return tl::unexpected(Errors{{Code::Range,
                                QStringLiteral("%1 would be made in more than %2 pulls of what its vessel takes")
                                    .arg(noun_of(product))
                                    .arg(kMostPulls),
                                product.place, QStringLiteral("ask for less, or correct vessel_takes")}});
}

// One pull, from the weights of one making as written.
class Pull {
 public:
  Pull(const book::Book& book, const std::vector<Quantity>& weights, Scaled& out)
      : book_(book), weights_(weights), out_(out) {}

  Errors fill() {
    Errors errors;
    for (size_t i = 0; i < weights_.size(); ++i) {
      const book::FormulaLine& line = out_.product->formula[i];
      const book::Ingredient* ingredient = book_.ingredient(line.item);
      out_.lines.push_back(line_of(i, ingredient));
      if (out_.lines.back().net.amount < measure::one(measure::Unit::Milligram).amount)
        errors.push_back(too_little(*out_.product, line));
      if (ingredient && ingredient->edible.num() <= 0) errors.push_back(nothing_edible(*ingredient));
    }
    if (!errors.empty()) return errors;
    out_.input = weigh_out(out_.lines, book_.kitchen.scale_step, out_.product->vessel_takes);
    for (ScaledLine& line : out_.lines) add_pull(line);
    return {};
  }

 private:
  ScaledLine line_of(size_t i, const book::Ingredient* ingredient) const {
    ScaledLine line;
    line.line = &out_.product->formula[i];
    line.net = measure::scaled(weights_[i], out_.makings);
    const Weighable weighable = plan::weighable(book_.kitchen, line.net);
    line.step = weighable.step;
    line.fine = weighable.fine;
    line.restricted = ingredient && ingredient->most_percent;
    if (const std::optional<Ratio> pieces = pieces_of_line(*out_.product, weights_, i))
      line.pieces = *pieces * out_.makings;
    // A spoon is not exact enough where the law sets a maximum.
    if (ingredient && !line.restricted) line.measure = hand_measure(*ingredient, line.net);
    return line;
  }

  void add_pull(ScaledLine& line) const {
    const book::Ingredient* ingredient = book_.ingredient(line.line->item);
    line.pull = ingredient ? measure::scaled(line.net, Ratio(1, 1) / ingredient->edible) : line.net;
    const bool trimmed = line.pull != line.net;
    const Quantity least = trimmed && measure::less(line.weighed, line.pull) ? line.pull : line.weighed;
    line.to_pull = measure::rounded_up_to_step(sure_to_hold(least, ingredient, line.pieces), line.step);
  }

  const book::Book& book_;
  const std::vector<Quantity>& weights_;
  Scaled& out_;
};

}  // namespace

ExpectedAll<Scaled> scaled(const book::Book& book, book::Weighing& weighing, const book::Product& product,
                           Ratio makings) {
  const ExpectedAll<std::vector<Quantity>>& weights = weighing.lines(product);
  if (!weights) return tl::unexpected(weights.error());
  const ExpectedAll<Quantity> output = weighing.output(product);
  if (!output) return tl::unexpected(output.error());
  if (makings.num() <= 0) return tl::unexpected(nothing_made(product));
  const ExpectedAll<int> pulls = pulls_of(product, measure::scaled(book::sum(*weights), makings));
  if (!pulls) return tl::unexpected(pulls.error());
  Scaled out;
  out.product = &product;
  out.pulls = *pulls;
  out.makings = makings / Ratio(out.pulls, 1);
  out.output = measure::scaled(*output, out.makings);
  if (const std::optional<Ratio> units = book::Weighing::units(product)) out.units = *units * out.makings;
  const Errors errors = Pull(book, *weights, out).fill();
  if (!errors.empty()) return tl::unexpected(errors);
  return out;
}

}  // namespace lardiner::plan
