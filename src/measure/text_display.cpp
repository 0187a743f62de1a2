// Amounts as people read them: the kitchen's display, rounding to the scale, declared weights.
#include "measure/text.h"
#include "measure/wide.h"

namespace lardiner::measure {

namespace {

std::int64_t power_of_ten(int exponent) {
  std::int64_t power = 1;
  for (int i = 0; i < exponent; ++i) power *= 10;
  return power;
}

QString symbol(Unit unit) {
  switch (unit) {
    case Unit::Milligram:
      return QStringLiteral("mg");
    case Unit::Gram:
      return QStringLiteral("g");
    case Unit::Kilogram:
      return QStringLiteral("kg");
    case Unit::Ounce:
      return QStringLiteral("oz");
    case Unit::Pound:
      return QStringLiteral("lb");
    case Unit::Millilitre:
      return QStringLiteral("mL");
    case Unit::Litre:
      return QStringLiteral("L");
    case Unit::Teaspoon:
      return QStringLiteral("tsp");
    case Unit::FluidOunce:
      return QStringLiteral("fl oz");
    case Unit::Quart:
      return QStringLiteral("qt");
    case Unit::Gallon:
      return QStringLiteral("gal");
    default:
      return {};  // no amount is shown in the others
  }
}

// `steps` of 10^-decimals, without trailing zeros: 1250 with 3 decimals is 1.25.
QString number(std::int64_t steps, int decimals, const Notation& notation) {
  QString out = QString::number(steps / power_of_ten(decimals));
  if (decimals == 0) return out;
  QString fraction = QString::number(steps % power_of_ten(decimals)).rightJustified(decimals, u'0');
  while (fraction.endsWith(u'0')) fraction.chop(1);
  return fraction.isEmpty() ? out : out + notation.decimal_mark + fraction;
}

// How many steps of 10^-decimals of `unit` there are in `q`: to the nearest, half up, and rounded down.
std::int64_t nearest_steps(Quantity q, Unit unit, int decimals) {
  return saturated(divided(Wide{q.amount} * power_of_ten(decimals), one(unit).amount));
}
std::int64_t whole_steps(Quantity q, Unit unit, int decimals) {
  return saturated(Wide{q.amount} * power_of_ten(decimals) / one(unit).amount);
}

// The decimals of `unit` that a scale with such a step shows.
int decimals_of(Quantity step, Unit unit) {
  constexpr int kMost = 6;
  int decimals = 0;
  while (decimals < kMost && Wide{step.amount} * power_of_ten(decimals) < one(unit).amount) ++decimals;
  return decimals;
}

// The finer step for an amount that the working step would show as nothing.
QString finer(Quantity q, Unit unit, int decimals, const Notation& notation) {
  const std::int64_t steps = nearest_steps(q, unit, decimals);
  if (steps > 0) return notation.with_unit(number(steps, decimals, notation), unit);
  return u'<' + notation.with_unit(number(1, decimals, notation), unit);
}

struct MetricPair {
  Unit small;
  Unit large;
};
constexpr MetricPair kMassPair{Unit::Gram, Unit::Kilogram};
constexpr MetricPair kVolumePair{Unit::Millilitre, Unit::Litre};

QString metric(Quantity q, const MetricPair& pair, const Notation& notation) {
  const auto shown = [&](std::int64_t steps, int decimals, Unit unit) {
    return notation.with_unit(number(steps, decimals, notation), unit);
  };
  const std::int64_t tenths = nearest_steps(q, pair.small, 1);
  if (tenths < 100) return shown(tenths, 1, pair.small);
  const std::int64_t wholes = nearest_steps(q, pair.small, 0);
  if (wholes < 1000) return shown(wholes, 0, pair.small);
  return shown(nearest_steps(q, pair.large, 3), 3, pair.large);
}

QString metric_mass(Quantity q, const Notation& notation) {
  if (nearest_steps(q, Unit::Gram, 1) == 0) return finer(q, Unit::Milligram, 0, notation);
  return metric(q, kMassPair, notation);
}

QString metric_volume(Quantity q, const Notation& notation) {
  if (nearest_steps(q, Unit::Millilitre, 1) == 0) return finer(q, Unit::Millilitre, 2, notation);
  return metric(q, kVolumePair, notation);
}

// So many steps of 10^-decimals of the small unit as the large and the small one: 1 lb 1.6 oz.
QString large_and_small(std::int64_t steps, int decimals, int small_in_large, Unit large, Unit small,
                        const Notation& notation) {
  const std::int64_t in_large = small_in_large * power_of_ten(decimals);
  const QString first = notation.with_unit(QString::number(steps / in_large), large);
  const std::int64_t rest = steps % in_large;
  return rest == 0 ? first : first + u' ' + notation.with_unit(number(rest, decimals, notation), small);
}

QString customary_mass(Quantity q, const Notation& notation) {
  const std::int64_t tenths = nearest_steps(q, Unit::Ounce, 1);
  if (tenths == 0) return finer(q, Unit::Ounce, 2, notation);
  if (tenths < 160) return notation.with_unit(number(tenths, 1, notation), Unit::Ounce);
  return large_and_small(tenths, 1, 16, Unit::Pound, Unit::Ounce, notation);
}

QString customary_volume(Quantity q, const Notation& notation) {
  const std::int64_t tenths = nearest_steps(q, Unit::FluidOunce, 1);
  const std::int64_t spoons = nearest_steps(q, Unit::Teaspoon, 1);
  if (spoons == 0) return finer(q, Unit::Teaspoon, 2, notation);
  if (tenths < 10) return notation.with_unit(number(spoons, 1, notation), Unit::Teaspoon);
  if (tenths < 320) return notation.with_unit(number(tenths, 1, notation), Unit::FluidOunce);
  if (tenths < 1280) return large_and_small(tenths, 1, 32, Unit::Quart, Unit::FluidOunce, notation);
  return large_and_small(tenths, 1, 128, Unit::Gallon, Unit::FluidOunce, notation);
}

// Decimals of a declared figure in a small unit (g, mL, oz, fl oz): two digits, and in ounces three from 10 on.
int small_decimals(Quantity q, Unit unit, bool tenths_below_100) {
  const Ratio count = in_unit(q, unit);
  if (count < Ratio(1, 1)) return 2;
  if (count < Ratio(10, 1)) return 1;
  return tenths_below_100 && count < Ratio(100, 1) ? 1 : 0;
}

// Decimals of a declared figure in a large unit (kg, L, lb, gal): three digits.
int large_decimals(Quantity q, Unit unit) {
  const Ratio count = in_unit(q, unit);
  if (count < Ratio(10, 1)) return 2;
  return count < Ratio(100, 1) ? 1 : 0;
}

QString declared_in(Quantity q, Unit unit, int decimals, const Notation& notation) {
  return notation.with_unit(number(whole_steps(q, unit, decimals), decimals, notation), unit);
}

QString declared_metric(Quantity q, const MetricPair& pair, const Notation& notation) {
  if (less(q, one(pair.large))) return declared_in(q, pair.small, small_decimals(q, pair.small, false), notation);
  return declared_in(q, pair.large, large_decimals(q, pair.large), notation);
}

QString declared_mass(Quantity q, const Notation& notation) {
  if (less(q, quantity(Ratio(4, 1), Unit::Pound)))
    return declared_in(q, Unit::Ounce, small_decimals(q, Unit::Ounce, true), notation);
  return declared_in(q, Unit::Pound, large_decimals(q, Unit::Pound), notation);
}

QString declared_volume(Quantity q, const Notation& notation) {
  if (less(q, one(Unit::Gallon)))
    return declared_in(q, Unit::FluidOunce, small_decimals(q, Unit::FluidOunce, true), notation);
  return declared_in(q, Unit::Gallon, large_decimals(q, Unit::Gallon), notation);
}

QString shown(Quantity q, System system, const Notation& notation) {
  switch (q.dimension) {
    case Dimension::Mass:
      return system == System::Metric ? metric_mass(q, notation) : customary_mass(q, notation);
    case Dimension::Volume:
      return system == System::Metric ? metric_volume(q, notation) : customary_volume(q, notation);
    case Dimension::Count:
      return number(nearest_steps(q, Unit::Piece, 2), 2, notation);
  }
  return {};
}

// Zero in the working unit.
QString nothing(Dimension dimension, System system, const Notation& notation) {
  const QString zero = QStringLiteral("0");
  const bool metric_system = system == System::Metric;
  switch (dimension) {
    case Dimension::Mass:
      return notation.with_unit(zero, metric_system ? Unit::Gram : Unit::Ounce);
    case Dimension::Volume:
      return notation.with_unit(zero, metric_system ? Unit::Millilitre : Unit::FluidOunce);
    case Dimension::Count:
      return zero;
  }
  return zero;
}

}  // namespace

const Notation& plain_notation() {
  static const Notation kPlain{
      u'.', [](const QString& figure, Unit unit) -> QString { return figure + u' ' + symbol(unit); }};
  return kPlain;
}

QString display(Quantity q, System system, const Notation& notation) {
  if (q.amount == 0) return nothing(q.dimension, system, notation);
  if (q.amount < 0) return u'\u2212' + shown(Quantity{q.dimension, 0} - q, system, notation);
  return shown(q, system, notation);
}

QString display_in_steps(Quantity q, Quantity step, System system, const Notation& notation) {
  Q_ASSERT(q.amount >= 0);
  if (system == System::Metric) {
    const Unit unit = less(q, one(Unit::Kilogram)) ? Unit::Gram : Unit::Kilogram;
    const int decimals = decimals_of(step, unit);
    return notation.with_unit(number(nearest_steps(q, unit, decimals), decimals, notation), unit);
  }
  const int decimals = decimals_of(step, Unit::Ounce);
  const std::int64_t steps = nearest_steps(q, Unit::Ounce, decimals);
  if (steps < 16 * power_of_ten(decimals)) return notation.with_unit(number(steps, decimals, notation), Unit::Ounce);
  return large_and_small(steps, decimals, 16, Unit::Pound, Unit::Ounce, notation);
}

Quantity rounded_to_step(Quantity q, Quantity step) {
  Q_ASSERT(q.dimension == step.dimension && step.amount > 0);
  return {q.dimension, saturated(divided(q.amount, step.amount) * step.amount)};
}

Quantity rounded_up_to_step(Quantity q, Quantity step) {
  Q_ASSERT(q.dimension == step.dimension && step.amount > 0 && q.amount >= 0);
  return {q.dimension, saturated((Wide{q.amount} + step.amount - 1) / step.amount * step.amount)};
}

QString declared(Quantity q, System system, const Notation& notation) {
  Q_ASSERT(q.amount >= 0);
  switch (q.dimension) {
    case Dimension::Mass:
      return system == System::Metric ? declared_metric(q, kMassPair, notation) : declared_mass(q, notation);
    case Dimension::Volume:
      return system == System::Metric ? declared_metric(q, kVolumePair, notation) : declared_volume(q, notation);
    case Dimension::Count:
      return QString::number(whole_steps(q, Unit::Piece, 0));
  }
  return {};
}

}  // namespace lardiner::measure
