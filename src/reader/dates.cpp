// Dates and instants as written, matched as text first: Qt would accept 24:00.
#include <QRegularExpression>

#include "reader/fields.h"
#include "reader/quote.h"

namespace lardiner::reader {

namespace {

using problem::Code;
using problem::Error;

constexpr int kFirstYear = 2000;
constexpr int kLastYear = 2199;
constexpr int kMostOffsetHours = 14;

Error no_date(const QString& text) {
  return Error{
      Code::Malformed, quoted(text) + QStringLiteral(" is not a date"), {}, QStringLiteral("write it as 2026-02-28")};
}

Error no_instant(const QString& text) {
  return Error{Code::Malformed,
               quoted(text) + QStringLiteral(" is not a date and time"),
               {},
               QStringLiteral("write it as 2026-02-28 14:30; midnight is 00:00 of the next day")};
}

int number(const QRegularExpressionMatch& match, QStringView name) { return match.capturedView(name).toInt(); }

std::optional<QDate> date_of(const QRegularExpressionMatch& match) {
  const QDate date(number(match, u"year"), number(match, u"month"), number(match, u"day"));
  return date.isValid() ? std::optional(date) : std::nullopt;
}

Error year_outside(const QString& text) {
  return Error{Code::Range,
               QStringLiteral("the year of %1 is not in %2 to %3").arg(quoted(text)).arg(kFirstYear).arg(kLastYear),
               {},
               QStringLiteral("write it as 2026-02-28")};
}

bool year_inside(const QDate& date) { return date.year() >= kFirstYear && date.year() <= kLastYear; }

const QRegularExpression& date_pattern() {
  static const QRegularExpression pattern(
      QStringLiteral(R"(\A(?<year>[0-9]{4})-(?<month>[0-9]{2})-(?<day>[0-9]{2})\z)"));
  return pattern;
}

const QRegularExpression& instant_pattern() {
  static const QRegularExpression pattern(
      QStringLiteral(R"(\A(?<year>[0-9]{4})-(?<month>[0-9]{2})-(?<day>[0-9]{2}))"
                     R"((?:[T ](?<hour>[0-9]{2}):(?<minute>[0-9]{2})(?::(?<second>[0-9]{2}))?)"
                     R"((?<offset>Z|(?<sign>[+-])(?<hours>[0-9]{2}):(?<minutes>[0-9]{2}))?)?\z)"));
  return pattern;
}

std::optional<int> seconds_of_day(const QRegularExpressionMatch& match) {
  const int hour = number(match, u"hour");
  const int minute = number(match, u"minute");
  const int second = number(match, u"second");
  if (hour > 23 || minute > 59 || second > 59) return std::nullopt;
  return (hour * 60 + minute) * 60 + second;
}

std::optional<int> offset_seconds(const QRegularExpressionMatch& match) {
  const int hours = number(match, u"hours");
  const int minutes = number(match, u"minutes");
  if (minutes > 59 || hours * 60 + minutes > kMostOffsetHours * 60) return std::nullopt;
  const int seconds = (hours * 60 + minutes) * 60;
  return match.capturedView(u"sign") == u"-" ? -seconds : seconds;
}

}  // namespace

problem::Expected<QDate> parse_date(const QString& text) {
  const QRegularExpressionMatch match = date_pattern().match(text);
  const std::optional<QDate> date = match.hasMatch() ? date_of(match) : std::nullopt;
  if (!date) return tl::unexpected(no_date(text));
  if (!year_inside(*date)) return tl::unexpected(year_outside(text));
  return *date;
}

problem::Expected<Written> parse_written(const QString& text) {
  const QRegularExpressionMatch match = instant_pattern().match(text);
  if (!match.hasMatch()) return tl::unexpected(no_instant(text));
  const std::optional<QDate> date = date_of(match);
  if (!date) return tl::unexpected(no_date(text));
  if (!year_inside(*date)) return tl::unexpected(year_outside(text));

  Written written{*date, std::nullopt, std::nullopt};
  if (match.hasCaptured(u"hour")) {
    written.seconds_of_day = seconds_of_day(match);
    if (!written.seconds_of_day) return tl::unexpected(no_instant(text));
  }
  if (match.hasCaptured(u"offset")) {
    written.offset_seconds = offset_seconds(match);
    if (!written.offset_seconds) return tl::unexpected(no_instant(text));
  }
  return written;
}

}  // namespace lardiner::reader
