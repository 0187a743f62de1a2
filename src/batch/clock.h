// Local times to instants: a time that occurs twice or never is refused unless its offset is written.
#pragma once

#include <QDateTime>
#include <QTimeZone>

#include "problem/error.h"
#include "reader/fields.h"

namespace lardiner::batch {

/// REQUIRES: written.seconds_of_day. The error has no place. Source of the rule: the design's chapter on identity; Qt 6.4 silently takes the later
/// of a doubled local time, so offsets around the instant are compared here.
problem::Expected<QDateTime> instant(const reader::Written& written, const QTimeZone& zone);

/// The first instant of a calendar day in the zone (some days do not start at 00:00).
QDateTime start_of(QDate day, const QTimeZone& zone);

/// The first instant after a calendar day: a date's end.
QDateTime end_of(QDate day, const QTimeZone& zone);

}  // namespace lardiner::batch
