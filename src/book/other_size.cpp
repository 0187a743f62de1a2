// Other sizes of an assembled item: the formula of one, in proportion.
#include "book/other_size.h"

#include <algorithm>

#include "book/values.h"
#include "book/weighing.h"
#include "reader/quote.h"

namespace lardiner::book {

using measure::Dimension;
using measure::Quantity;
using measure::Ratio;
using problem::Code;
using problem::Error;
using problem::Expected;
using reader::quoted;

namespace {

QString noun_of(const Product& product) { return QStringLiteral("product ") + quoted(product.id); }

tl::unexpected<Error> refused(Code code, const QString& what, const Product& product, const QString& hint) {
  return tl::unexpected(Error{code, what, product.formula_of_place, hint});
}

tl::unexpected<Error> unknown(const Book& book, const Product& product) {
  QStringList assembled;
  for (const Product& one : book.products)
    if (one.kind == ProductKind::AssembledItem && one.formula_of.isEmpty()) assembled += one.id;
  return refused(Code::Unknown, QStringLiteral("no product has the id ") + quoted(product.formula_of), product,
                 meant(product.formula_of, assembled, QStringLiteral("a product")));
}

Expected<const Product*> other_size(const Book& book, const Product& product) {
  const Product* other = book.product(product.formula_of);
  const auto refuse = [&](const QString& what, const QString& hint) {
    return refused(Code::Conflict, noun_of(product) + what, product, hint);
  };
  if (product.formula_of == product.id)
    return refuse(QStringLiteral(" takes its formula of itself"), QStringLiteral("name another product"));
  if (other == nullptr) return unknown(book, product);
  if (!other->formula_of.isEmpty())
    return refuse(QStringLiteral(" takes the formula of %1, which has none of its own").arg(quoted(other->id)),
                  QStringLiteral("write formula_of = \"%1\"").arg(other->formula_of.left(60)));
  if (other->kind == ProductKind::Component)
    return refuse(QStringLiteral(" takes the formula of %1, which is a component").arg(quoted(other->id)),
                  QStringLiteral("name an assembled item"));
  return other;
}

// How much more of it goes onto a unit, and how many more units a making has.
struct Proportion {
  Ratio unit;
  Ratio units{0, 1};  ///< 0: not known
};

Expected<Proportion> proportion(const Product& product, const Product& other) {
  for (const Product* one : {&product, &other})
    if (!one->unit_weight || one->unit_weight->amount == 0)
      return refused(
          Code::Missing,
          QStringLiteral("%1 has no unit_weight, which the formula of another size needs").arg(noun_of(*one)), product,
          QStringLiteral("state unit_weight in both products"));
  Proportion found{ratio(*product.unit_weight, *other.unit_weight), Ratio(0, 1)};
  const std::optional<Ratio> here = Weighing::units(product), there = Weighing::units(other);
  if (here && there && there->num() > 0) found.units = *here / *there;
  return found;
}

bool of_a_making(const FormulaLine& line) {
  return line.basis == Basis::Absolute || (line.basis == Basis::Parts && line.amount.amount != 0);
}

FormulaLine in_proportion(FormulaLine line, const Proportion& by) {
  const bool counted = line.amount.dimension == Dimension::Count;
  if (line.basis != Basis::PerUnit && !of_a_making(line)) return line;
  if (!counted) line.amount = scaled(line.amount, by.unit);
  if (of_a_making(line)) line.amount = scaled(line.amount, by.units);
  if (counted || by.unit == Ratio(1, 1)) return line;
  line.disher.reset();
  line.tool = {};
  return line;
}

Expected<std::vector<FormulaLine>> lines_of(const Book& book, const Product& product) {
  const Expected<const Product*> other = other_size(book, product);
  if (!other) return tl::unexpected(other.error());
  const Expected<Proportion> by = proportion(product, **other);
  if (!by) return tl::unexpected(by.error());
  const std::vector<FormulaLine>& lines = (*other)->formula;
  if (by->units.num() == 0 && std::any_of(lines.begin(), lines.end(), of_a_making))
    return refused(
        Code::Missing,
        QStringLiteral("%1 takes lines of a whole making of %2, but it is not known how many units both make")
            .arg(noun_of(product), quoted((*other)->id)),
        product, QStringLiteral("state makes in pieces or as a weight in both, or write the lines per_unit"));
  std::vector<FormulaLine> taken;
  for (const FormulaLine& line : lines) taken.push_back(in_proportion(line, *by));
  return taken;
}

}  // namespace

void take_formulas(Book& book, bool whole, problem::Errors& errors) {
  for (Product& product : book.products) {
    if (product.formula_of.isEmpty()) continue;
    Expected<std::vector<FormulaLine>> lines = lines_of(book, product);
    if (lines)
      product.formula = std::move(*lines);
    else if (whole || lines.error().code != Code::Unknown)
      errors.push_back(lines.error());
  }
}

}  // namespace lardiner::book
