// Temperatures as read from a thermometer, and limits as a code prints them in both scales.
#include "measure/temperature.h"

#include <QRegularExpression>

#include "measure/amounts.h"

namespace lardiner::measure {

namespace {

using problem::Code;

// Fiftieths of a degree Fahrenheit, in which tenths of both scales are whole numbers: F = C x 9/5 + 32.
int fiftieths(Temperature t) { return t.scale == Scale::Celsius ? t.tenths * 9 + 1600 : t.tenths * 5; }

int floor_divided(int num, int den) {
  const int whole = num / den;
  return num % den < 0 ? whole - 1 : whole;
}

// Colder than any blast freezer, hotter than any oven.
constexpr Temperature kColdest{-600, Scale::Celsius};
constexpr Temperature kHottest{4000, Scale::Celsius};

// The parts of a written temperature: sign, whole degrees, decimals, scale; refused parts stay empty.
QRegularExpressionMatch matched(const QString& text) {
  static const QRegularExpression form(QStringLiteral(
      "^([-\u2212\u2013]?) ?([0-9]{1,4})(?:[.,]([0-9]+))? ?(?:(?:[\u00b0\u00ba] ?)?([CFcf])|([\u2103\u2109]))?$"));
  return form.match(text.simplified());
}

Scale scale_of(const QRegularExpressionMatch& match) {
  const bool fahrenheit =
      match.captured(4).toUpper() == QLatin1String("F") || match.captured(5) == QStringLiteral("\u2109");
  return fahrenheit ? Scale::Fahrenheit : Scale::Celsius;
}

}  // namespace

std::strong_ordering compare(Temperature a, Temperature b) { return fiftieths(a) <=> fiftieths(b); }

Temperature converted(Temperature t, Scale to) {
  if (t.scale == to) return t;
  // Half a degree is added before rounding down: 25 fiftieths of Fahrenheit, 9 eighteenths of Celsius.
  if (to == Scale::Fahrenheit) return {floor_divided(fiftieths(t) + 25, 50) * 10, to};
  return {floor_divided(t.tenths - 320 + 9, 18) * 10, to};
}

bool at_least(Temperature reading, const TemperatureLimit& limit) {
  return compare(reading, reading.scale == Scale::Celsius ? limit.celsius : limit.fahrenheit) >= 0;
}

bool at_most(Temperature reading, const TemperatureLimit& limit) {
  return compare(reading, reading.scale == Scale::Celsius ? limit.celsius : limit.fahrenheit) <= 0;
}

problem::Expected<Temperature> parse_temperature(const QString& text) {
  const auto match = matched(text);
  if (!match.hasMatch()) {
    return tl::unexpected(fault(Code::Malformed, text, QStringLiteral("is not a temperature"),
                                QStringLiteral("write it as 74 C or 165 F")));
  }
  if (match.captured(4).isEmpty() && match.captured(5).isEmpty()) {
    return tl::unexpected(fault(Code::Malformed, text, QStringLiteral("does not say Celsius or Fahrenheit"),
                                QStringLiteral("write C or F after the figure")));
  }
  if (match.captured(3).size() > 1) {
    return tl::unexpected(fault(Code::Malformed, text, QStringLiteral("is finer than a thermometer reads"),
                                QStringLiteral("write at most one decimal, such as 73.5 C")));
  }
  const int size = match.captured(2).toInt() * 10 + match.captured(3).toInt();
  const Temperature read{match.captured(1).isEmpty() ? size : -size, scale_of(match)};
  if (compare(read, kColdest) < 0 || compare(read, kHottest) > 0) {
    return tl::unexpected(fault(Code::Range, text, QStringLiteral("is no temperature of a kitchen"),
                                QStringLiteral("write one from -60 C to 400 C")));
  }
  return read;
}

}  // namespace lardiner::measure
