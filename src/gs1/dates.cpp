// Dates and times as GS1 elements write them, with two-digit years, and back.
#include "gs1/dates.h"

#include "gs1/check_digit.h"

namespace lardiner::gs1 {

namespace {

using problem::Code;
using problem::Error;
using problem::Expected;

tl::unexpected<Error> no_date(const QString& text, QString hint) {
  return tl::make_unexpected(
      Error{Code::Malformed, QStringLiteral("\"%1\" is no date or time").arg(text), {}, std::move(hint)});
}

int two_digits(const QString& text, int at) { return QStringView(text).mid(at, 2).toInt(); }

QString two(int number) { return QStringLiteral("%1").arg(number, 2, 10, QLatin1Char('0')); }

}  // namespace

int full_year(int two_digits, int this_year) {
  const int century = this_year - this_year % 100;
  const int ahead = two_digits - this_year % 100;
  if (ahead >= 51) return century - 100 + two_digits;
  if (ahead <= -50) return century + 100 + two_digits;
  return century + two_digits;
}

QString yymmdd(QDate date) { return two(date.year() % 100) + two(date.month()) + two(date.day()); }

Expected<QDate> read_yymmdd(const QString& text, int this_year, DayZero day_zero) {
  const QString hint =
      day_zero == DayZero::LastOfMonth
          ? QStringLiteral("write two digits each of year, month and day; day 00 is the last of the month")
          : QStringLiteral("write two digits each of year, month and day");
  if (text.size() != 6 || !all_digits(text)) return no_date(text, hint);
  const int year = full_year(two_digits(text, 0), this_year);
  const int month = two_digits(text, 2);
  const int day = two_digits(text, 4);
  const bool last = day == 0 && day_zero == DayZero::LastOfMonth;
  const QDate date(year, month, last ? QDate(year, month, 1).daysInMonth() : day);
  if (!date.isValid()) return no_date(text, hint);
  return date;
}

WallTime wall_time(const QDateTime& local) { return {local.date(), local.time()}; }

QString yymmddhhmm(const WallTime& end) { return production_time(end, Precision::Minutes); }

Expected<WallTime> read_yymmddhhmm(const QString& text, int this_year) {
  const auto read = read_production_time(text, this_year);
  if (!read || read->precision != Precision::Minutes)
    return no_date(text, QStringLiteral("write two digits each of year, month, day, hour and minute"));
  return read->made;
}

QString production_time(const WallTime& made, Precision precision) {
  QString text = yymmdd(made.date) + two(made.time.hour());
  if (precision != Precision::Hours) text += two(made.time.minute());
  if (precision == Precision::Seconds) text += two(made.time.second());
  return text;
}

Expected<ProductionTime> read_production_time(const QString& text, int this_year) {
  const auto hint =
      QStringLiteral("write two digits each of year, month, day, hour, and of minute and second if given");
  const auto date = read_yymmdd(text.left(6), this_year, DayZero::Refused);
  const qsizetype length = text.size();
  if (!date || !all_digits(text) || (length != 8 && length != 10 && length != 12)) return no_date(text, hint);
  const QTime time(two_digits(text, 6), length > 8 ? two_digits(text, 8) : 0, length > 10 ? two_digits(text, 10) : 0);
  if (!time.isValid()) return no_date(text, hint);
  const Precision precision = length == 8 ? Precision::Hours : length == 10 ? Precision::Minutes : Precision::Seconds;
  return ProductionTime{{*date, time}, precision};
}

}  // namespace lardiner::gs1
