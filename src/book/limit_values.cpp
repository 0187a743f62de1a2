// Temperatures, times, lengths of keeping and sizes of a kitchen book.
#include <QRegularExpression>

#include "book/taken.h"
#include "book/values.h"
#include "measure/seconds.h"
#include "measure/text.h"
#include "reader/quote.h"

namespace lardiner::book {

using measure::Scale;
using measure::Temperature;
using measure::TemperatureLimit;
using problem::Code;
using problem::Error;
using problem::Expected;
using reader::Fields;
using reader::quoted;

namespace {

// How far an oven's two marks may stand apart, in degrees Celsius: 400 °F is marked 200 °C.
constexpr int kMarksApart = 6;

// The longest shelf life that is read; canned food keeps for years, nothing keeps for ever.
constexpr int kMostDays = 4000;
constexpr int kMostMonths = 120;

// Largest side of a label, in hundredths of a millimetre, and an inch and a centimetre in them.
constexpr qint64 kMostSize = 100'000;
constexpr qint64 kInch = 2540;
constexpr qint64 kCentimetre = 1000;
constexpr qint64 kMillimetre = 100;

tl::unexpected<Error> fault(Code code, const QString& text, const QString& clause, const QString& hint) {
  return tl::unexpected(Error{code, quoted(text) + clause, {}, hint});
}

Expected<TemperatureLimit> parse_setting(const QString& text) {
  static const QRegularExpression form(QStringLiteral("^([^()]+)(?:\\(([^()]+)\\))?$"));
  const auto match = form.match(text.simplified());
  if (!match.hasMatch())
    return fault(Code::Malformed, text, QStringLiteral(" is not a setting"),
                 QStringLiteral("write it as 375 °F (190 °C)"));
  const Expected<Temperature> first = measure::parse_temperature(match.captured(1));
  if (!first) return tl::unexpected(first.error());
  const Scale other = first->scale == Scale::Celsius ? Scale::Fahrenheit : Scale::Celsius;
  const Expected<Temperature> second = match.captured(2).isEmpty()
                                           ? Expected<Temperature>(measure::converted(*first, other))
                                           : measure::parse_temperature(match.captured(2));
  if (!second) return tl::unexpected(second.error());
  const TemperatureLimit limit =
      first->scale == Scale::Celsius ? TemperatureLimit{*first, *second} : TemperatureLimit{*second, *first};
  const int apart = limit.celsius.tenths - measure::converted(limit.fahrenheit, Scale::Celsius).tenths;
  if (second->scale != other || qAbs(apart) > kMarksApart * 10)
    return fault(Code::Conflict, text, QStringLiteral(" gives two settings"),
                 QStringLiteral("write one setting in °F and in °C, as in 375 °F (190 °C)"));
  return limit;
}

Expected<std::pair<int, int>> parse_range(const QString& text) {
  static const QRegularExpression form(QStringLiteral("^(.+?)(?: to | ?[-\u2013] ?)(.+)$"));
  const auto match = form.match(text.simplified());
  const QString most_text = match.hasMatch() ? match.captured(2) : text;
  const Expected<qint64> most = measure::parse_seconds(most_text);
  if (!most) return tl::unexpected(most.error());
  if (!match.hasMatch()) return std::pair(static_cast<int>(*most), static_cast<int>(*most));
  QString least_text = match.captured(1);
  if (least_text.back().isDigit()) least_text += u' ' + most_text.section(u' ', -1);
  const Expected<qint64> least = measure::parse_seconds(least_text);
  if (!least) return tl::unexpected(least.error());
  if (*least > *most)
    return fault(Code::Conflict, text, QStringLiteral(" ends before it begins"),
                 QStringLiteral("write the shorter time first"));
  return std::pair(static_cast<int>(*least), static_cast<int>(*most));
}

Expected<Length> counted(const QString& text, int count, const QString& unit) {
  Length length;
  const bool months = unit.startsWith(u'm');
  length.unit = months ? Length::Unit::Months : Length::Unit::Days;
  length.count = unit.startsWith(u'w') ? count * 7 : count;
  if (count == 0)
    return fault(Code::Range, text, QStringLiteral(" is no time at all"), QStringLiteral("write at least 1 day"));
  if (length.count > (months ? kMostMonths : kMostDays))
    return fault(Code::Range, text, QStringLiteral(" is too long to be a shelf life"),
                 QStringLiteral("write at most 4000 days or 120 months"));
  return length;
}

Expected<Length> parse_length(const QString& text) {
  static const QRegularExpression calendar(QStringLiteral("^([0-9]{1,6}) ?(days?|weeks?|months?)$"));
  const auto match = calendar.match(text.simplified());
  if (match.hasMatch()) return counted(text, match.captured(1).toInt(), match.captured(2));
  const Expected<qint64> seconds = measure::parse_seconds(text);
  if (!seconds || *seconds == 0)
    return fault(Code::Malformed, text, QStringLiteral(" is not a length of keeping"),
                 QStringLiteral("write it as 7 days, 2 weeks, 3 months, 4 h or 90 min"));
  return Length{Length::Unit::Seconds, static_cast<int>(*seconds), 1};
}

Expected<int> parse_size(const QString& text) {
  static const QRegularExpression form(QStringLiteral("^([0-9.]+) ?(mm|cm|in)$"));
  const auto match = form.match(text.simplified());
  const Expected<measure::Ratio> number =
      measure::parse_decimal(match.hasMatch() ? match.captured(1) : QStringLiteral("?"));
  if (!number)
    return fault(Code::Malformed, text, QStringLiteral(" is not a length"),
                 QStringLiteral("write it as 50 mm, 5 cm or 4 in"));
  const QString unit = match.captured(2);
  const qint64 one = unit == QLatin1String("mm") ? kMillimetre : unit == QLatin1String("cm") ? kCentimetre : kInch;
  const measure::Ratio size = *number * measure::Ratio(one, 1);
  if (size > measure::Ratio(kMostSize, 1))
    return fault(Code::Range, text, QStringLiteral(" is larger than any label"),
                 QStringLiteral("write at most 1000 mm"));
  return static_cast<int>((size.num() + size.den() / 2) / size.den());
}

}  // namespace

std::optional<TemperatureLimit> read_limit(Fields& fields, QStringView key, Bound safe) {
  const std::optional<QString> text = fields.text(key);
  if (!text) return std::nullopt;
  const auto limit = taken(fields, key, parse_limit(*text, safe));
  return limit ? std::optional(limit->temperature) : std::nullopt;
}

std::optional<TimeAtTemperature> read_held(Fields& fields, QStringView key) {
  const std::optional<QString> text = fields.text(key);
  if (!text) return std::nullopt;
  const auto limit =
      taken(fields, key,
            parse_limit(text->simplified().replace(QStringLiteral(" for "), QStringLiteral(" ")), Bound::AtLeast));
  return limit ? std::optional(TimeAtTemperature{limit->temperature, limit->seconds.value_or(0)}) : std::nullopt;
}

std::optional<TemperatureLimit> read_setting(Fields& fields, QStringView key) {
  const std::optional<QString> text = fields.text(key);
  return text ? taken(fields, key, parse_setting(*text)) : std::nullopt;
}

std::optional<int> read_seconds(Fields& fields, QStringView key) {
  const std::optional<QString> text = fields.text(key);
  if (!text) return std::nullopt;
  const auto seconds = taken(fields, key, measure::parse_seconds(*text));
  return seconds ? std::optional(static_cast<int>(*seconds)) : std::nullopt;
}

std::optional<std::pair<int, int>> read_seconds_range(Fields& fields, QStringView key) {
  const std::optional<QString> text = fields.text(key);
  return text ? taken(fields, key, parse_range(*text)) : std::nullopt;
}

std::optional<Length> read_length(Fields& fields, QStringView key) {
  const std::optional<QString> text = fields.text(key);
  return text ? taken(fields, key, parse_length(*text)) : std::nullopt;
}

std::optional<int> read_size(Fields& fields, QStringView key) {
  const std::optional<QString> text = fields.text(key);
  return text ? taken(fields, key, parse_size(*text)) : std::nullopt;
}

}  // namespace lardiner::book
