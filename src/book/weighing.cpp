// The weights of formulas: every basis resolved to what goes in.
#include "book/weighing.h"

#include <algorithm>
#include <numeric>

#include "book/roll_up.h"
#include "reader/quote.h"

namespace lardiner::book {

using measure::Dimension;
using measure::Quantity;
using measure::Ratio;
using problem::Code;
using problem::Error;
using problem::Errors;
using problem::Expected;
using problem::ExpectedAll;
using reader::quoted;

namespace {

// Products measured by the piece or volume of products that are measured so in turn: deeper than any kitchen's book.
constexpr int kMostDepth = 64;

const Ratio kPercent(1, 100);

QString no_weight(const FormulaLine& line, const QString& noun) {
  return QStringLiteral("the line %1 of %2 has no weight, which sheets need: ").arg(quoted(line.item), noun);
}

// By the middle of the grade, less what is trimmed off. A grade that says only how many pieces there are at most does
// not say how heavy one may be.
std::optional<Quantity> of_grade(const Ingredient& ingredient, Quantity amount) {
  const std::optional<CountGrade>& grade = ingredient.count_grade;
  if (!grade || !grade->fewest || amount.dimension != Dimension::Count) return std::nullopt;
  const Ratio weights = in_unit(amount, measure::Unit::Piece) * Ratio(2, *grade->fewest + grade->most);
  return scaled(grade->per, weights * ingredient.edible);
}

QString noun_of(const Product& product) { return QStringLiteral("product ") + quoted(product.id); }

QString dimension_name(Quantity amount) {
  return amount.dimension == Dimension::Volume ? QStringLiteral("a volume") : QStringLiteral("a piece");
}

// What a line weighs before the size of a part is known: so much, and so many parts.
struct Form {
  Quantity known;
  Ratio parts;
};

Form plus(const Form& a, const Form& b) { return {a.known + b.known, a.parts + b.parts}; }
Form times(const Form& a, Ratio by) { return {scaled(a.known, by), a.parts * by}; }

}  // namespace

// One product's lines.
class FormulaWeighing {
 public:
  FormulaWeighing(Weighing& weighing, const Product& product)
      : weighing_(weighing), product_(product), noun_(noun_of(product)), forms_(product.formula.size()), begun_(product.formula.size()) {}

  ExpectedAll<std::vector<Quantity>> weigh() {
    Form total;
    for (size_t i = 0; i < product_.formula.size(); ++i)
      if (const auto form = form_of(i))
        total = plus(total, *form);
      else
        errors_.push_back(form.error());
    if (!errors_.empty()) return tl::unexpected(errors_);
    if (total.parts.num() > 0) {
      const auto found = find_part(total);
      if (!found) return tl::unexpected(Errors{found.error()});
    }
    std::vector<Quantity> weights;
    for (const auto& form : forms_) weights.push_back(form->known + scaled(part_weight_, form->parts / part_count_));
    return weights;
  }

 private:
  Expected<Form> form_of(size_t at) {
    const FormulaLine& line = product_.formula[at];
    if (forms_[at]) return *forms_[at];
    if (begun_[at])
      return tl::unexpected(Error{Code::Conflict,
                                  no_weight(line, noun_) + QStringLiteral("it depends on itself"),
                                  line.place, QStringLiteral("give it an amount of its own")});
    begun_[at] = true;
    const Expected<Form> form = resolved(line);
    begun_[at] = false;
    if (form) forms_[at] = *form;
    return form;
  }

  Expected<Form> resolved(const FormulaLine& line) {
    if (line.basis == Basis::Parts) return Form{{}, line.number};
    if (line.basis == Basis::PercentOf) return share_of_lines(line);
    const Expected<Quantity> weight = weighing_.weight(line, noun_);
    if (!weight) return tl::unexpected(weight.error());
    if (line.basis == Basis::Absolute) return Form{*weight, {}};
    return line.basis == Basis::PerUnit ? per_unit(line, *weight) : per_main(line, *weight);
  }

  Expected<Form> share_of_lines(const FormulaLine& line) {
    return sum_of([&](const FormulaLine& other) { return other.item == line.of; }, line.number * kPercent);
  }

  Expected<Form> per_unit(const FormulaLine& line, Quantity weight) {
    if (const std::optional<Ratio> units = Weighing::units(product_)) return Form{scaled(weight, *units), {}};
    return tl::unexpected(Error{
        Code::Missing, no_weight(line, noun_) + QStringLiteral("it is not known how many units are made"),
        line.place, QStringLiteral("state makes in pieces, or unit_weight")});
  }

  Expected<Form> per_main(const FormulaLine& line, Quantity weight) {
    if (line.per.amount == 0) return Form{};
    return sum_of([](const FormulaLine& other) { return other.main; }, ratio(weight, line.per));
  }

  template <class Chosen>
  Expected<Form> sum_of(Chosen chosen, Ratio share) {
    Form total;
    for (size_t i = 0; i < product_.formula.size(); ++i) {
      if (!chosen(product_.formula[i])) continue;
      const Expected<Form> form = form_of(i);
      if (!form) return form;
      total = plus(total, *form);
    }
    return times(total, share);
  }

  // How much how many parts weigh: a line that says it, else what `makes` leaves for them.
  Expected<void> find_part(const Form& total) {
    for (const FormulaLine& line : product_.formula) {
      if (line.basis != Basis::Parts || line.amount.amount == 0) continue;
      part_weight_ = line.amount;
      part_count_ = line.number;
      return {};
    }
    const std::optional<Quantity> output = stated_output(product_);
    if (!output)
      return tl::unexpected(Error{
          Code::Missing, QStringLiteral("the parts of %1 have no weight, which sheets need").arg(noun_),
          product_.place, QStringLiteral("state makes as a weight, or amount in the line of one of the parts")});
    part_weight_ = scaled(*output, Ratio(1, 1) / product_.cook_yield) - total.known;
    part_count_ = total.parts;
    if (part_weight_.amount > 0) return {};
    return tl::unexpected(
        Error{Code::Conflict,
              QStringLiteral("nothing of what %1 makes is left for its parts, and sheets need their weight")
                  .arg(noun_),
              product_.place, QStringLiteral("correct makes, or the lines that have an amount")});
  }

  Weighing& weighing_;
  const Product& product_;
  const QString noun_;
  std::vector<std::optional<Form>> forms_;
  std::vector<bool> begun_;
  Errors errors_;
  Quantity part_weight_;
  Ratio part_count_{1, 1};
};

Quantity sum(const std::vector<Quantity>& weights) {
  return std::accumulate(weights.begin(), weights.end(), Quantity{});
}

std::optional<Quantity> stated_output(const Product& product) {
  if (!product.makes) return std::nullopt;
  if (product.makes->dimension == Dimension::Mass) return product.makes;
  if (product.makes->dimension == Dimension::Volume || !product.unit_weight) return std::nullopt;
  return scaled(*product.unit_weight, in_unit(*product.makes, measure::Unit::Piece));
}

std::optional<Ratio> Weighing::units(const Product& product) {
  if (!product.makes) return product.kind == ProductKind::AssembledItem ? std::optional(Ratio(1, 1)) : std::nullopt;
  if (product.makes->dimension == Dimension::Count) return in_unit(*product.makes, measure::Unit::Piece);
  if (product.makes->dimension == Dimension::Volume || !product.unit_weight || product.unit_weight->amount == 0)
    return std::nullopt;
  return ratio(*product.makes, *product.unit_weight);
}

const ExpectedAll<std::vector<Quantity>>& Weighing::lines(const Product& product) {
  // What stands here while the product is being weighed is what a loop finds.
  const auto [at, is_new] = lines_.emplace(&product, tl::unexpected(Errors{}));
  if (!is_new) return at->second;
  ++depth_;
  at->second = FormulaWeighing(*this, product).weigh();
  --depth_;
  return at->second;
}

ExpectedAll<Quantity> Weighing::output(const Product& product) {
  if (const std::optional<Quantity> stated = stated_output(product)) return *stated;
  const ExpectedAll<std::vector<Quantity>>& weights = lines(product);
  if (!weights) return tl::unexpected(weights.error());
  return scaled(sum(*weights), product.cook_yield);
}

Expected<Quantity> Weighing::weight(const FormulaLine& line, const QString& noun) {
  if (line.amount.dimension == Dimension::Mass) return line.amount;
  const Ingredient* ingredient = book_.ingredient(line.item);
  const Product* product = book_.product(line.item);
  std::optional<Quantity> weight;
  if (ingredient != nullptr) weight = of_ingredient(*ingredient, line.amount);
  if (product != nullptr) weight = of_product(*product, line.amount);
  if (weight) return *weight;
  const QString measured =
      QStringLiteral("nothing says what %1 of %2 weighs").arg(dimension_name(line.amount), quoted(line.item));
  const QString remedy = product != nullptr
                             ? QStringLiteral("give %1 a unit_weight, or a makes of which the weight is known")
                             : QStringLiteral("add [[ingredient.measure]] to %1 with amount, weighs and source");
  return tl::unexpected(
      Error{Code::Missing, no_weight(line, noun) + measured, line.place, remedy.arg(quoted(line.item))});
}

// The largest measure that is not more than the amount, else the smallest: a spoon and a cup need not agree.
std::optional<Quantity> Weighing::of_ingredient(const Ingredient& ingredient, Quantity amount) const {
  const Measure* best = nullptr;
  for (const Measure& measure : ingredient.measures) {
    if (measure.volume.dimension != amount.dimension || measure.volume.amount == 0) continue;
    const auto fits = [&](const Measure& one) { return one.volume.amount <= amount.amount; };
    const bool better =
        best == nullptr || (fits(measure) ? !fits(*best) || best->volume.amount < measure.volume.amount
                                          : !fits(*best) && measure.volume.amount < best->volume.amount);
    if (better) best = &measure;
  }
  if (best == nullptr) return of_grade(ingredient, amount);
  return scaled(best->mass, ratio(amount, best->volume));
}

std::optional<Quantity> Weighing::of_product(const Product& product, Quantity amount) {
  if (amount.dimension == Dimension::Count && product.unit_weight)
    return scaled(*product.unit_weight, in_unit(amount, measure::Unit::Piece));
  if (!product.makes || product.makes->dimension != amount.dimension || depth_ >= kMostDepth) return std::nullopt;
  const ExpectedAll<Quantity> whole = output(product);
  return whole ? std::optional(scaled(*whole, ratio(amount, *product.makes))) : std::nullopt;
}

ExpectedAll<std::vector<Quantity>> line_weights(const Book& book, const Product& product) {
  return Weighing(book).lines(product);
}

ExpectedAll<Quantity> output_weight(const Book& book, const Product& product) { return Weighing(book).output(product); }

}  // namespace lardiner::book
