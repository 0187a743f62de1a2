// Plain English of days, instants and readings, for reasons and errors.
#include "batch/phrases.h"

#include <QStringBuilder>
#include <cstdlib>

#include "batch/clock.h"

namespace lardiner::batch {

QString day_text(QDate day) {
  static const char* const days[] = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
  static const char* const months[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                       "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  if (!day.isValid()) return {};
  return QLatin1String(days[day.dayOfWeek() - 1]) % u' ' % QString::number(day.day()) % u' ' %
         QLatin1String(months[day.month() - 1]) % u' ' % QString::number(day.year());
}

QString time_text(const QDateTime& instant, const QTimeZone& zone) {
  const QDateTime local = instant.toTimeZone(zone);
  const QString shown =
      local.toString(local.time().second() == 0 ? QStringLiteral("HH:mm") : QStringLiteral("HH:mm:ss"));
  return shows_twice(instant, zone) ? shown + u' ' + offset_text(local.offsetFromUtc()) : shown;
}

QString instant_text(const QDateTime& instant, const QTimeZone& zone) {
  return day_text(local_day(instant, zone)) + u' ' + time_text(instant, zone);
}

QString days_text(int days) { return days == 1 ? QStringLiteral("1 day") : QStringLiteral("%1 days").arg(days); }

QString reading_text(measure::Temperature reading) {
  const int tenths = std::abs(reading.tenths);
  QString number = QString::number(tenths / 10);
  if (tenths % 10 != 0) number += u'.' + QString::number(tenths % 10);
  if (reading.tenths < 0) number.prepend(u'-');
  return number + (reading.scale == measure::Scale::Celsius ? QStringLiteral(" °C") : QStringLiteral(" °F"));
}

QString state_text(book::State state) {
  switch (state) {
    case book::State::Chilled:
      return QStringLiteral("chilled");
    case book::State::Frozen:
      return QStringLiteral("frozen");
    case book::State::Thawed:
      return QStringLiteral("thawed");
    case book::State::Ambient:
      return QStringLiteral("ambient");
    case book::State::Opened:
      return QStringLiteral("opened");
    case book::State::HotHeld:
      return QStringLiteral("hot held");
    case book::State::TimeControl:
      return QStringLiteral("time control");
    case book::State::Finished:
      return QStringLiteral("finished");
  }
  return {};
}

}  // namespace lardiner::batch
