// Limits as codes and kitchens write them: "165 °F (74 °C) 15 s".
#include "book/limit_text.h"

#include <QRegularExpression>
#include <QStringList>

#include "measure/seconds.h"

namespace lardiner::book {

namespace {

using measure::Scale;
using measure::Temperature;
using problem::Code;
using problem::Error;

Error fault(Code code, const QString& text, const QString& what, const QString& hint) {
  return {code, QStringLiteral("\"%1\" %2").arg(text, what), {}, hint};
}

// Figure, perhaps the other scale's figure in parentheses, and what follows.
QRegularExpressionMatch matched(const QString& text) {
  static const QRegularExpression form(QStringLiteral(
      "^([-\u2212\u2013]?[0-9.,]+ ?[\u00b0\u00ba]? ?[CFcf\u2103\u2109])(?: ?\\( ?([^()]+)\\))?(?: (?:for )?(.*))?$"));
  return form.match(text.simplified());
}

Temperature on_the_safe_side(Temperature given, Scale other, Bound safe) {
  Temperature derived = measure::converted(given, other);
  if (safe == Bound::AtLeast && measure::compare(derived, given) < 0) derived.tenths += 10;
  if (safe == Bound::AtMost && measure::compare(derived, given) > 0) derived.tenths -= 10;
  return derived;
}

measure::TemperatureLimit in_both(Temperature first, Temperature second) {
  return first.scale == Scale::Celsius ? measure::TemperatureLimit{first, second}
                                       : measure::TemperatureLimit{second, first};
}

bool the_same(const measure::TemperatureLimit& limit) {
  const Temperature below{limit.celsius.tenths - 10, Scale::Celsius};
  const Temperature above{limit.celsius.tenths + 10, Scale::Celsius};
  return measure::compare(below, limit.fahrenheit) < 0 && measure::compare(limit.fahrenheit, above) < 0;
}

problem::Expected<measure::TemperatureLimit> both_figures(const QString& text, Temperature first,
                                                          const QString& second_text) {
  const auto second = measure::parse_temperature(second_text);
  if (!second) return tl::unexpected(second.error());
  if (second->scale == first.scale) {
    return tl::unexpected(fault(Code::Conflict, text, QStringLiteral("gives two figures in one scale"),
                                QStringLiteral("write one in °F and one in °C, as in 165 °F (74 °C)")));
  }
  const measure::TemperatureLimit limit = in_both(first, *second);
  if (!the_same(limit)) {
    return tl::unexpected(fault(Code::Conflict, text, QStringLiteral("gives two different temperatures"),
                                QStringLiteral("write the figures that the source prints; %1 °F is about %2 °C")
                                    .arg(limit.fahrenheit.tenths / 10)
                                    .arg(measure::converted(limit.fahrenheit, Scale::Celsius).tenths / 10)));
  }
  return limit;
}

problem::Expected<std::optional<int>> time_held(const QString& rest) {
  if (rest.isEmpty()) return std::optional<int>();
  if (rest == QLatin1String("instant")) return std::optional<int>(0);
  const auto seconds = measure::parse_seconds(rest);
  if (!seconds) return tl::unexpected(seconds.error());
  return std::optional<int>(static_cast<int>(*seconds));  // 400 days at most: fits
}

QString degrees(Temperature t) {
  QString figure = QString::number(t.tenths / 10);
  if (t.tenths % 10 != 0) figure = QString::number(t.tenths / 10.0, 'f', 1);
  return figure + (t.scale == Scale::Celsius ? QStringLiteral(" °C") : QStringLiteral(" °F"));
}

QString duration(int seconds) {
  QStringList parts;
  if (seconds >= 3600) parts += QStringLiteral("%1 h").arg(seconds / 3600);
  if (seconds % 3600 >= 60) parts += QStringLiteral("%1 min").arg(seconds % 3600 / 60);
  if (seconds % 60 > 0) parts += QStringLiteral("%1 s").arg(seconds % 60);
  return parts.join(u' ');
}

}  // namespace

problem::Expected<WrittenLimit> parse_limit(const QString& text, Bound safe) {
  const auto match = matched(text);
  if (!match.hasMatch()) {
    return tl::unexpected(fault(Code::Malformed, text, QStringLiteral("is not a temperature limit"),
                                QStringLiteral("write it as 165 °F (74 °C) 15 s")));
  }
  const auto first = measure::parse_temperature(match.captured(1));
  if (!first) return tl::unexpected(first.error());
  const auto seconds = time_held(match.captured(3));
  if (!seconds) return tl::unexpected(seconds.error());
  if (match.captured(2).isEmpty()) {
    const Scale other = first->scale == Scale::Celsius ? Scale::Fahrenheit : Scale::Celsius;
    return WrittenLimit{in_both(*first, on_the_safe_side(*first, other, safe)), *seconds, false};
  }
  const auto limit = both_figures(text, *first, match.captured(2));
  if (!limit) return tl::unexpected(limit.error());
  return WrittenLimit{*limit, *seconds, true};
}

QString text(const measure::TemperatureLimit& limit) {
  return QStringLiteral("%1 (%2)").arg(degrees(limit.fahrenheit), degrees(limit.celsius));
}

QString text(const TimeAtTemperature& way) {
  return text(way.temperature) + u' ' + (way.seconds == 0 ? QStringLiteral("instant") : duration(way.seconds));
}

QString text(const Length& length) {
  if (length.unit == Length::Unit::Seconds) return duration(length.count);
  const QString unit = length.unit == Length::Unit::Days ? QStringLiteral("day") : QStringLiteral("month");
  return QStringLiteral("%1 %2%3").arg(length.count).arg(unit, length.count == 1 ? QString() : QStringLiteral("s"));
}

}  // namespace lardiner::book
