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

// `steps` of 10^-decimals, without trailing zeros: 1250 with 3 decimals is 1.25.
QString number(std::int64_t steps, int decimals, QChar mark) {
  QString out = QString::number(steps / power_of_ten(decimals));
  if (decimals == 0) return out;
  QString fraction = QString::number(steps % power_of_ten(decimals)).rightJustified(decimals, u'0');
  while (fraction.endsWith(u'0')) fraction.chop(1);
  return fraction.isEmpty() ? out : out + mark + fraction;
}

// How many steps of 10^-decimals of `unit` there are in `q`: to the nearest, half up, and rounded down.
std::int64_t nearest_steps(Quantity q, Unit unit, int decimals) {
  return saturated(divided(Wide{q.amount} * power_of_ten(decimals), one(unit).amount));
}
std::int64_t whole_steps(Quantity q, Unit unit, int decimals) {
  return saturated(Wide{q.amount} * power_of_ten(decimals) / one(unit).amount);
}

QString with_unit(const QString& figure, const char* unit) { return figure + u' ' + QLatin1String(unit); }

// The finer step for an amount that the working step would show as nothing.
QString finer(Quantity q, Unit unit, int decimals, QChar mark, const char* name) {
  const std::int64_t steps = nearest_steps(q, unit, decimals);
  if (steps > 0) return with_unit(number(steps, decimals, mark), name);
  return u'<' + with_unit(number(1, decimals, mark), name);
}

struct MetricPair {
  Unit small;
  Unit large;
  const char* small_name;
  const char* large_name;
};
constexpr MetricPair kMassPair{Unit::Gram, Unit::Kilogram, "g", "kg"};
constexpr MetricPair kVolumePair{Unit::Millilitre, Unit::Litre, "mL", "L"};

QString metric(Quantity q, const MetricPair& pair, QChar mark) {
  const std::int64_t tenths = nearest_steps(q, pair.small, 1);
  if (tenths < 100) return with_unit(number(tenths, 1, mark), pair.small_name);
  const std::int64_t wholes = nearest_steps(q, pair.small, 0);
  if (wholes < 1000) return with_unit(number(wholes, 0, mark), pair.small_name);
  return with_unit(number(nearest_steps(q, pair.large, 3), 3, mark), pair.large_name);
}

QString metric_mass(Quantity q, QChar mark) {
  if (nearest_steps(q, Unit::Gram, 1) == 0) return finer(q, Unit::Milligram, 0, mark, "mg");
  return metric(q, kMassPair, mark);
}

QString metric_volume(Quantity q, QChar mark) {
  if (nearest_steps(q, Unit::Millilitre, 1) == 0) return finer(q, Unit::Millilitre, 2, mark, "mL");
  return metric(q, kVolumePair, mark);
}

// `tenths` of the small unit as the large and the small one: 1 lb 1.6 oz.
QString large_and_small(std::int64_t tenths, std::int64_t tenths_in_large, const char* large, const char* small,
                        QChar mark) {
  const QString first = with_unit(QString::number(tenths / tenths_in_large), large);
  const std::int64_t rest = tenths % tenths_in_large;
  return rest == 0 ? first : first + u' ' + with_unit(number(rest, 1, mark), small);
}

QString customary_mass(Quantity q, QChar mark) {
  const std::int64_t tenths = nearest_steps(q, Unit::Ounce, 1);
  if (tenths == 0) return finer(q, Unit::Ounce, 2, mark, "oz");
  if (tenths < 160) return with_unit(number(tenths, 1, mark), "oz");
  return large_and_small(tenths, 160, "lb", "oz", mark);
}

QString customary_volume(Quantity q, QChar mark) {
  const std::int64_t tenths = nearest_steps(q, Unit::FluidOunce, 1);
  if (nearest_steps(q, Unit::Teaspoon, 1) == 0) return finer(q, Unit::Teaspoon, 2, mark, "tsp");
  if (tenths < 10) return with_unit(number(nearest_steps(q, Unit::Teaspoon, 1), 1, mark), "tsp");
  if (tenths < 320) return with_unit(number(tenths, 1, mark), "fl oz");
  if (tenths < 1280) return large_and_small(tenths, 320, "qt", "fl oz", mark);
  return large_and_small(tenths, 1280, "gal", "fl oz", mark);
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

QString declared_in(Quantity q, Unit unit, int decimals, const char* name, QChar mark) {
  return with_unit(number(whole_steps(q, unit, decimals), decimals, mark), name);
}

QString declared_metric(Quantity q, const MetricPair& pair, QChar mark) {
  if (less(q, one(pair.large))) {
    return declared_in(q, pair.small, small_decimals(q, pair.small, false), pair.small_name, mark);
  }
  return declared_in(q, pair.large, large_decimals(q, pair.large), pair.large_name, mark);
}

QString declared_mass(Quantity q, QChar mark) {
  if (less(q, quantity(Ratio(4, 1), Unit::Pound))) {
    return declared_in(q, Unit::Ounce, small_decimals(q, Unit::Ounce, true), "oz", mark);
  }
  return declared_in(q, Unit::Pound, large_decimals(q, Unit::Pound), "lb", mark);
}

QString declared_volume(Quantity q, QChar mark) {
  if (less(q, one(Unit::Gallon))) {
    return declared_in(q, Unit::FluidOunce, small_decimals(q, Unit::FluidOunce, true), "fl oz", mark);
  }
  return declared_in(q, Unit::Gallon, large_decimals(q, Unit::Gallon), "gal", mark);
}

QString shown(Quantity q, System system, QChar mark) {
  switch (q.dimension) {
    case Dimension::Mass:
      return system == System::Metric ? metric_mass(q, mark) : customary_mass(q, mark);
    case Dimension::Volume:
      return system == System::Metric ? metric_volume(q, mark) : customary_volume(q, mark);
    case Dimension::Count:
      return number(nearest_steps(q, Unit::Piece, 2), 2, mark);
  }
  return {};
}

// Zero in the working unit.
QString nothing(Dimension dimension, System system) {
  const bool metric_system = system == System::Metric;
  if (dimension == Dimension::Mass) return metric_system ? QStringLiteral("0 g") : QStringLiteral("0 oz");
  if (dimension == Dimension::Volume) return metric_system ? QStringLiteral("0 mL") : QStringLiteral("0 fl oz");
  return QStringLiteral("0");
}

}  // namespace

QString display(Quantity q, System system, QChar decimal_mark) {
  if (q.amount == 0) return nothing(q.dimension, system);
  if (q.amount < 0) return u'\u2212' + shown(Quantity{q.dimension, 0} - q, system, decimal_mark);
  return shown(q, system, decimal_mark);
}

Quantity rounded_to_step(Quantity q, Quantity step) {
  Q_ASSERT(q.dimension == step.dimension && step.amount > 0);
  return {q.dimension, saturated(divided(q.amount, step.amount) * step.amount)};
}

Quantity rounded_up_to_step(Quantity q, Quantity step) {
  Q_ASSERT(q.dimension == step.dimension && step.amount > 0 && q.amount >= 0);
  return {q.dimension, saturated((Wide{q.amount} + step.amount - 1) / step.amount * step.amount)};
}

QString declared(Quantity q, System system, QChar decimal_mark) {
  Q_ASSERT(q.amount >= 0);
  switch (q.dimension) {
    case Dimension::Mass:
      return system == System::Metric ? declared_metric(q, kMassPair, decimal_mark) : declared_mass(q, decimal_mark);
    case Dimension::Volume:
      return system == System::Metric ? declared_metric(q, kVolumePair, decimal_mark)
                                      : declared_volume(q, decimal_mark);
    case Dimension::Count:
      return QString::number(whole_steps(q, Unit::Piece, 0));
  }
  return {};
}

}  // namespace lardiner::measure
