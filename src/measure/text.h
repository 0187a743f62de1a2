// Amounts as people write and read them: parsing, the kitchen's display, rounding to the scale, declared weights.
#pragma once

#include <QString>
#include <functional>

#include "measure/quantity.h"
#include "problem/error.h"

namespace lardiner::measure {

/// Reads a plain decimal number exactly: `12`, `0.61`, `1.5`; with a comma as the decimal mark only when
/// `decimal_comma`; then `1.234` is refused, since it may be one or a thousand. No sign, no exponent, no thousands
/// mark, no bare point (`.5`), at most 18 digits. The error has no place.
problem::Expected<Ratio> parse_decimal(const QString& text, bool decimal_comma = false);

/// Reads an amount with its unit: `500 g`, `2.5 kg`, `1 lb 1.6 oz`, `1 1/2 cup`, `24 pieces`, `12 each`, `16 fl oz`.
/// A number without a unit is refused (the hint lists the units), as are negatives, zero when `zero` is Refused, and
/// anything beyond `most`. Units stand from large to small, each once. With `decimal_comma`, `2,5 kg` is read and
/// `2.5 kg` too. Cups and spoons are the US customary ones.
enum class Zero { Refused, Allowed };
problem::Expected<Quantity> parse_quantity(const QString& text, Zero zero = Zero::Refused, bool decimal_comma = false);

/// The two systems a kitchen may work in.
enum class System { Metric, Customary };

/// How a language writes an amount: its decimal mark, and a figure with its unit ("2,5 кг").
struct Notation {
  QChar decimal_mark;
  std::function<QString(const QString& figure, Unit)> with_unit;
};

/// The book's and the reports' own: a point, a space, and the unit's symbol: "2.5 kg".
const Notation& plain_notation();

/// `q` in the kitchen's working unit of `system`: `500 g`, `1.25 kg`, `1 lb 1.6 oz`, `750 mL`, `24`. Mass below 1 kg in
/// grams (below 10 g with one decimal), above in kg with up to three decimals and no trailing zeros; customary below
/// 1 lb in ounces with one decimal, above in lb and oz; volume in tsp, fl oz, qt, gal. What would round to nothing is
/// shown in a finer step (`40 mg`), never as 0.
QString display(Quantity q, System system, const Notation& notation = plain_notation());

/// `q` as a scale with such a step shows it, in the unit that `display` would take, with as many decimals as the step
/// has in it (at most six) and no trailing zeros: 13.4 g in steps of 0.1 g, 1.25 kg in steps of 1 g, 0.004 g in steps
/// of 1 mg. REQUIRES: masses, step positive, q not negative.
QString display_in_steps(Quantity q, Quantity step, System system, const Notation& notation = plain_notation());

/// `q` rounded up to a multiple of `step`, as goods are bought. REQUIRES: equal dimensions, q not negative, step
/// positive.
Quantity rounded_up_to_step(Quantity q, Quantity step);

/// `q` rounded half up to a multiple of the scale's step. REQUIRES: equal dimensions, step positive.
Quantity rounded_to_step(Quantity q, Quantity step);

/// The declared net quantity on a label for sale: rounded DOWN where rounding would overstate, three digits (two under
/// 100 g or mL and under 10 oz). Ounces up to 4 lb, fluid ounces up to a gallon. Sources: 16 CFR 500.19, NIST Handbook
/// 130.
QString declared(Quantity q, System system, const Notation& notation = plain_notation());

}  // namespace lardiner::measure
