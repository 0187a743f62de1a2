// Weekdays and months as a language names them on labels: never a figure alone.
#pragma once

#include <QLocale>
#include <QStringList>

namespace lardiner::words {

/// The seven, Monday first: CLDR's short names where all are in letters ("Tue", "周二"), else the long ones ("Thứ Ba",
/// whose short is "Th 3"); full stops are left out. Empty where neither are in letters.
QStringList weekday_names(const QLocale& locale);

/// The twelve, as `weekday_names`; and figures that their own sign follows at once ("12月"), or long names of a word
/// and a figure ("tháng 12"): they name themselves months. Empty where CLDR knows no such names.
QStringList month_names(const QLocale& locale);

}  // namespace lardiner::words
