// Amounts as people write them: numbers and quantities read exactly.
#include "measure/text.h"

#include <QHash>

#include "measure/amounts.h"

namespace lardiner::measure {

namespace {

using problem::Code;

const QHash<QString, Unit>& unit_names() {
  static const QHash<QString, Unit> names{
      {QStringLiteral("mg"), Unit::Milligram},
      {QStringLiteral("milligram"), Unit::Milligram},
      {QStringLiteral("milligrams"), Unit::Milligram},
      {QStringLiteral("g"), Unit::Gram},
      {QStringLiteral("gram"), Unit::Gram},
      {QStringLiteral("grams"), Unit::Gram},
      {QStringLiteral("kg"), Unit::Kilogram},
      {QStringLiteral("kilogram"), Unit::Kilogram},
      {QStringLiteral("kilograms"), Unit::Kilogram},
      {QStringLiteral("oz"), Unit::Ounce},
      {QStringLiteral("ounce"), Unit::Ounce},
      {QStringLiteral("ounces"), Unit::Ounce},
      {QStringLiteral("lb"), Unit::Pound},
      {QStringLiteral("lbs"), Unit::Pound},
      {QStringLiteral("pound"), Unit::Pound},
      {QStringLiteral("pounds"), Unit::Pound},
      {QStringLiteral("ml"), Unit::Millilitre},
      {QStringLiteral("millilitre"), Unit::Millilitre},
      {QStringLiteral("millilitres"), Unit::Millilitre},
      {QStringLiteral("milliliter"), Unit::Millilitre},
      {QStringLiteral("milliliters"), Unit::Millilitre},
      {QStringLiteral("l"), Unit::Litre},
      {QStringLiteral("litre"), Unit::Litre},
      {QStringLiteral("litres"), Unit::Litre},
      {QStringLiteral("liter"), Unit::Litre},
      {QStringLiteral("liters"), Unit::Litre},
      {QStringLiteral("tsp"), Unit::Teaspoon},
      {QStringLiteral("teaspoon"), Unit::Teaspoon},
      {QStringLiteral("teaspoons"), Unit::Teaspoon},
      {QStringLiteral("tbsp"), Unit::Tablespoon},
      {QStringLiteral("tablespoon"), Unit::Tablespoon},
      {QStringLiteral("tablespoons"), Unit::Tablespoon},
      {QStringLiteral("fl oz"), Unit::FluidOunce},
      {QStringLiteral("fluid ounce"), Unit::FluidOunce},
      {QStringLiteral("fluid ounces"), Unit::FluidOunce},
      {QStringLiteral("cup"), Unit::Cup},
      {QStringLiteral("cups"), Unit::Cup},
      {QStringLiteral("pint"), Unit::Pint},
      {QStringLiteral("pints"), Unit::Pint},
      {QStringLiteral("pt"), Unit::Pint},
      {QStringLiteral("quart"), Unit::Quart},
      {QStringLiteral("quarts"), Unit::Quart},
      {QStringLiteral("qt"), Unit::Quart},
      {QStringLiteral("gallon"), Unit::Gallon},
      {QStringLiteral("gallons"), Unit::Gallon},
      {QStringLiteral("gal"), Unit::Gallon},
      {QStringLiteral("piece"), Unit::Piece},
      {QStringLiteral("pieces"), Unit::Piece},
      {QStringLiteral("each"), Unit::Piece},
  };
  return names;
}

QString unit_list() {
  return QStringLiteral("mg, g, kg, oz, lb, mL, L, tsp, tbsp, fl oz, cup, pint, quart, gallon, piece");
}

problem::Error unknown_unit(const QString& text, const QString& word) {
  QStringList known = unit_names().keys();
  known.sort();
  // The nearest of two letters would be a guess: "cl" is not "L".
  const QString near = word.size() < 3 ? QString() : problem::nearest(word, known);
  const QString offer = near.isEmpty() ? QString() : QStringLiteral("did you mean \"") + near + QStringLiteral("\"? ");
  return fault(Code::Unknown, text, QStringLiteral("has an unknown unit, \"") + word + u'"',
               offer + QStringLiteral("the units are ") + unit_list());
}

problem::Expected<Unit> read_unit(const Amount& amount, const QString& text) {
  if (amount.number.isEmpty()) {
    return tl::unexpected(fault(Code::Malformed, text, QStringLiteral("is not an amount"),
                                QStringLiteral("write a number and a unit, such as 500 g")));
  }
  if (amount.word.isEmpty()) {
    return tl::unexpected(fault(Code::Malformed, text, QStringLiteral("has no unit"),
                                QStringLiteral("write the unit after the number: ") + unit_list()));
  }
  const auto found = unit_names().constFind(amount.word);
  if (found == unit_names().constEnd()) return tl::unexpected(unknown_unit(text, amount.word));
  return *found;
}

problem::Error too_small(const QString& text) {
  return fault(Code::Range, text, QStringLiteral("is too small to measure"),
               QStringLiteral("write at least a millionth of a gram"));
}

// The sum of the amounts; each unit must be smaller than the one before it and of the same kind.
problem::Expected<Quantity> sum(const std::vector<Amount>& parts, const QString& text, bool decimal_comma) {
  Quantity total;
  Quantity last;
  for (const Amount& part : parts) {
    const auto unit = read_unit(part, text);
    if (!unit) return tl::unexpected(unit.error());
    const auto count = read_number(part.number, text, decimal_comma);
    if (!count) return tl::unexpected(count.error());
    const bool first = &part == &parts.front();
    if (!first && (one(*unit).dimension != last.dimension || !less(one(*unit), last))) {
      return tl::unexpected(fault(Code::Malformed, text, QStringLiteral("mixes units that do not add up"),
                                  QStringLiteral("write the larger unit first, each once: 1 lb 1.6 oz")));
    }
    last = one(*unit);
    const Quantity here = quantity(*count, *unit);
    if (here.amount == 0 && count->num() != 0) return tl::unexpected(too_small(text));
    total = first ? here : total + here;
  }
  return total;
}

problem::Error absurd(const QString& text) {
  return fault(Code::Range, text, QStringLiteral("is more than a kitchen can hold"),
               QStringLiteral("write at most 4000 tonnes, 40000 litres or 1000000 pieces"));
}

}  // namespace

problem::Expected<Ratio> parse_decimal(const QString& text, bool decimal_comma) {
  const QString trimmed = text.trimmed();
  if (negative(trimmed)) {
    return tl::unexpected(
        fault(Code::Range, text, QStringLiteral("is negative"), QStringLiteral("write a number without a sign")));
  }
  if (trimmed.contains(u'/')) {
    return tl::unexpected(
        fault(Code::Malformed, text, QStringLiteral("is not a number"), QStringLiteral("write it as 12 or 0.61")));
  }
  return read_number(trimmed, text, decimal_comma);
}

problem::Expected<Quantity> parse_quantity(const QString& text, Zero zero, bool decimal_comma) {
  if (negative(text)) {
    return tl::unexpected(
        fault(Code::Range, text, QStringLiteral("is negative"), QStringLiteral("write an amount above zero")));
  }
  const std::vector<Amount> parts = amounts(text);
  if (parts.empty()) {
    return tl::unexpected(fault(Code::Malformed, text, QStringLiteral("is not an amount"),
                                QStringLiteral("write a number and a unit, such as 500 g")));
  }
  const auto total = sum(parts, text, decimal_comma);
  if (!total) return total;
  if (total->amount > most(total->dimension)) return tl::unexpected(absurd(text));
  if (total->amount == 0 && zero == Zero::Refused) {
    return tl::unexpected(
        fault(Code::Range, text, QStringLiteral("is zero"), QStringLiteral("write an amount above zero")));
  }
  return total;
}

}  // namespace lardiner::measure
