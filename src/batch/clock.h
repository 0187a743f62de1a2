// Local times to instants: a time that occurs twice or never is refused unless its offset is written.
#pragma once

#include <QDate>
#include <QDateTime>
#include <QTimeZone>

#include "problem/error.h"
#include "reader/fields.h"

namespace lardiner::batch {

/// The instant that was written, in the zone. An offset that does not belong to that local time is refused. A date
/// without a time is its 00:00. The error has no place. Qt 6.4 silently takes the later of a doubled local time, so
/// offsets around the instant are compared here.
problem::Expected<QDateTime> instant(const reader::Written& written, const QTimeZone& zone);

/// The first instant of a calendar day in the zone (some days do not start at 00:00; of a day that the zone left out,
/// the first of the next).
QDateTime start_of(QDate day, const QTimeZone& zone);

/// The first instant after a calendar day: a date's end.
QDateTime end_of(QDate day, const QTimeZone& zone);

/// The calendar day of an instant in the zone, whatever zone it came in.
QDate local_day(const QDateTime& instant, const QTimeZone& zone);

/// Whether the wall clock shows the time of `instant` a second time (clocks going back).
bool shows_twice(const QDateTime& instant, const QTimeZone& zone);

/// An offset from UTC as people write it: -04:00.
QString offset_text(int seconds);

}  // namespace lardiner::batch
