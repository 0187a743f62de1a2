// Plain English of days, instants and readings, for reasons and errors.
#pragma once

#include <QDate>
#include <QDateTime>
#include <QString>
#include <QTimeZone>

#include "book/shelf_life.h"
#include "measure/temperature.h"

namespace lardiner::batch {

/// "Wed 25 Nov 2026"
QString day_text(QDate day);

/// "Wed 25 Nov 2026 14:00"; with its offset where the wall clock shows that time twice.
QString instant_text(const QDateTime& instant, const QTimeZone& zone);

/// "14:05", with its offset where needed.
QString time_text(const QDateTime& instant, const QTimeZone& zone);

/// "1 day", "4 days"
QString days_text(int days);

/// "73.5 °C"
QString reading_text(measure::Temperature reading);

/// "hot held"
QString state_text(book::State state);

}  // namespace lardiner::batch
