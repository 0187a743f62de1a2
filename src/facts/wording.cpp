// Amounts, temperatures and times in one language, in the order of the kitchen's units.
#include "facts/wording.h"

namespace lardiner::facts {

namespace {

constexpr QChar kNoBreak(0x00A0);

QString degrees(measure::Temperature temperature, QChar decimal_mark) {
  QString number = QString::number(std::abs(temperature.tenths) / 10);
  if (temperature.tenths % 10 != 0) number += decimal_mark + QString::number(std::abs(temperature.tenths) % 10);
  if (temperature.tenths < 0) number.prepend(QChar(0x2212));  // minus sign
  return number + kNoBreak +
         (temperature.scale == measure::Scale::Celsius ? QStringLiteral("°C") : QStringLiteral("°F"));
}

QString number_and(const Wording& wording, int number, const char* unit_key) {
  return unbroken(wording.sentence(unit_key, {QString::number(number)}));
}

const char* unit_key(measure::Unit unit) {
  using measure::Unit;
  switch (unit) {
    case Unit::Milligram:
      return "unit_mg";
    case Unit::Gram:
      return "unit_g";
    case Unit::Kilogram:
      return "unit_kg";
    case Unit::Ounce:
      return "unit_oz";
    case Unit::Pound:
      return "unit_lb";
    case Unit::Millilitre:
      return "unit_ml";
    case Unit::Litre:
      return "unit_l";
    case Unit::Teaspoon:
      return "unit_tsp";
    case Unit::FluidOunce:
      return "unit_fl_oz";
    case Unit::Quart:
      return "unit_qt";
    case Unit::Gallon:
      return "unit_gal";
    case Unit::Tablespoon:
    case Unit::Cup:
    case Unit::Pint:
    case Unit::Piece:
      break;
  }
  return "";  // no amount is shown in these
}

}  // namespace

QString both_scales(const Wording& wording, const measure::TemperatureLimit& limit) {
  const QChar mark = wording.words.decimal_mark();
  const QString celsius = degrees(limit.celsius, mark);
  const QString fahrenheit = degrees(limit.fahrenheit, mark);
  const bool metric = wording.units == measure::System::Metric;
  return (metric ? celsius : fahrenheit) + kNoBreak + u'(' + (metric ? fahrenheit : celsius) + u')';
}

QString as_read(const Wording& wording, measure::Temperature reading) {
  return degrees(reading, wording.words.decimal_mark());
}

measure::Notation notation(const Wording& wording) {
  const words::Language& words = wording.words;
  return {words.decimal_mark(), [&words](const QString& figure, measure::Unit unit) {
            return unbroken(words.sentence(QString::fromLatin1(unit_key(unit)), {figure}));
          }};
}

QString both_systems(const Wording& wording, measure::Quantity quantity) {
  if (quantity.dimension == measure::Dimension::Count) return pieces(wording, quantity);
  const auto shown = [&](measure::System system) {
    return unbroken(measure::display(quantity, system, notation(wording)));
  };
  const measure::System units = quantity.dimension == measure::Dimension::Mass ? wording.weights : wording.units;
  const bool metric = units == measure::System::Metric;
  const QString first = shown(metric ? measure::System::Metric : measure::System::Customary);
  const QString second = shown(metric ? measure::System::Customary : measure::System::Metric);
  return first + kNoBreak + u'(' + second + u')';
}

QString pieces(const Wording& wording, measure::Quantity count) {
  const QString number = measure::display(count, wording.units, notation(wording));
  return unbroken(wording.words.counted(QStringLiteral("pieces"), number));
}

QString lasting(const Wording& wording, int seconds) {
  QStringList parts;
  if (seconds >= 3600) parts << number_and(wording, seconds / 3600, "unit_h");
  if (seconds % 3600 >= 60) parts << number_and(wording, seconds % 3600 / 60, "unit_min");
  if (seconds % 60 != 0 || seconds == 0) parts << number_and(wording, seconds % 60, "unit_s");
  return parts.join(kNoBreak);
}

QString lasting(const Wording& wording, int least_seconds, int most_seconds) {
  if (least_seconds == most_seconds || most_seconds == 0) return lasting(wording, least_seconds);
  const bool whole_minutes = least_seconds % 60 == 0 && most_seconds % 60 == 0 && most_seconds < 2 * 3600;
  const QString from = whole_minutes ? QString::number(least_seconds / 60) : lasting(wording, least_seconds);
  const QString to =
      whole_minutes ? number_and(wording, most_seconds / 60, "unit_min") : lasting(wording, most_seconds);
  return unbroken(wording.sentence("range", {from, to}));
}

QString unbroken(QString text) { return text.replace(u' ', kNoBreak); }

QString allergen_word(const Wording& wording, const QString& id) {
  return wording.words.word(QStringLiteral("allergen.") + id);
}

}  // namespace lardiner::facts
