// Dates, reasons and container numbers of reports, in English and as JSON.
#pragma once

#include <QJsonObject>
#include <QString>
#include <QTimeZone>
#include <vector>

#include "batch/use_by.h"

namespace lardiner::command {

/// Reports are English, whatever the labels speak: "Tue 01 Dec 2026".
QString day(QDate date);

/// "Tue 01 Dec 2026 14:00", with its offset where the clock shows that time twice; of a date its last good day.
QString moment(const QDateTime& instant, bool is_date, const QTimeZone& zone);

/// "use by Tue 01 Dec 2026", "frozen Wed 25 Nov 2026, 5 days left after thawing", "no date".
QString headline(const batch::UseBy& use_by, const QTimeZone& zone);

/// "1-12, 14"
QString numbers(const std::vector<int>& sorted);

/// "    decided Tue 01 Dec 2026  chilled, 7 days … [FDA Food Code 2022 3-501.17(A)]", with its line's end.
QString reason_line(const batch::Reason& reason, const QTimeZone& zone);

QJsonObject use_by_json(const batch::UseBy& use_by, const std::vector<int>& containers, const QTimeZone& zone);

}  // namespace lardiner::command
