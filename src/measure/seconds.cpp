// Lengths of time as people write them, in whole seconds.
#include "measure/seconds.h"

#include <QHash>

#include "measure/amounts.h"

namespace lardiner::measure {

namespace {

using problem::Code;

constexpr qint64 kMinute = 60;
constexpr qint64 kHour = 60 * kMinute;
// No kitchen times anything for longer by the clock.
constexpr qint64 kMostSeconds = 400 * 24 * kHour;

const QHash<QString, qint64>& unit_seconds() {
  static const QHash<QString, qint64> seconds{
      {QStringLiteral("s"), 1},         {QStringLiteral("second"), 1},       {QStringLiteral("seconds"), 1},
      {QStringLiteral("min"), kMinute}, {QStringLiteral("minute"), kMinute}, {QStringLiteral("minutes"), kMinute},
      {QStringLiteral("h"), kHour},     {QStringLiteral("hour"), kHour},     {QStringLiteral("hours"), kHour}};
  return seconds;
}

problem::Error unreadable(const QString& text) {
  return fault(Code::Malformed, text, QStringLiteral("is not a length of time"),
               QStringLiteral("write it as 15 s, 2 min, 4 h or 1 h 30 min"));
}

problem::Expected<Ratio> sum(const QString& text) {
  Ratio total;
  qint64 last = kMostSeconds;
  const std::vector<Amount> parts = amounts(text);
  if (parts.empty()) return tl::unexpected(unreadable(text));
  for (const Amount& part : parts) {
    const qint64 unit = unit_seconds().value(part.word);
    if (part.number.isEmpty() || unit == 0 || unit >= last) return tl::unexpected(unreadable(text));
    const auto count = read_number(part.number, text, false);
    if (!count) return tl::unexpected(count.error());
    total = total + *count * Ratio(unit, 1);
    last = unit;
  }
  return total;
}

}  // namespace

problem::Expected<qint64> parse_seconds(const QString& text) {
  if (negative(text)) {
    return tl::unexpected(
        fault(Code::Range, text, QStringLiteral("is negative"), QStringLiteral("write a length of time above zero")));
  }
  const auto total = sum(text);
  if (!total) return tl::unexpected(total.error());
  if (*total > Ratio(kMostSeconds, 1)) {
    return tl::unexpected(fault(Code::Range, text, QStringLiteral("is over 400 days"),
                                QStringLiteral("write a length of time that a kitchen can wait")));
  }
  if (total->den() != 1) {
    return tl::unexpected(fault(Code::Malformed, text, QStringLiteral("is not a whole number of seconds"),
                                QStringLiteral("write it in whole seconds")));
  }
  return total->num();
}

}  // namespace lardiner::measure
