// Weekdays and months as a language names them on labels: never a figure alone.
#include "words/date_names.h"

#include <QRegularExpression>
#include <algorithm>

namespace lardiner::words {

namespace {

// "Mo." is printed as "Mo": a full stop within a date could be read as a decimal mark.
QString without_stops(QString name) { return name.remove(u'.'); }

bool has_figure(const QString& name) {
  return std::any_of(name.begin(), name.end(), [](QChar c) { return c.isDigit(); });
}

bool in_letters(const QString& name) { return !name.isEmpty() && !has_figure(name); }

bool is_figure_with_its_sign(const QString& name) {
  static const QRegularExpression form(QStringLiteral("^\\d{1,2}\\p{L}+$"));
  return form.match(name).hasMatch();
}

bool is_word_and_figure(const QString& name) {
  static const QRegularExpression form(QStringLiteral("^\\p{L}{2,} \\d{1,2}$"));
  return form.match(name).hasMatch();
}

QStringList days(const QLocale& locale, QLocale::FormatType format) {
  QStringList names;
  for (int day = 1; day <= 7; ++day) names << without_stops(locale.dayName(day, format));
  return names;
}

QStringList months(const QLocale& locale, QLocale::FormatType format) {
  QStringList names;
  for (int month = 1; month <= 12; ++month) names << without_stops(locale.monthName(month, format));
  return names;
}

template <typename Says>
bool all(const QStringList& names, const Says& says) {
  return std::all_of(names.begin(), names.end(), says);
}

}  // namespace

QStringList weekday_names(const QLocale& locale) {
  for (const auto format : {QLocale::ShortFormat, QLocale::LongFormat})
    if (const QStringList names = days(locale, format); all(names, in_letters)) return names;
  return {};
}

QStringList month_names(const QLocale& locale) {
  const QStringList brief = months(locale, QLocale::ShortFormat);
  if (all(brief, in_letters) || all(brief, is_figure_with_its_sign)) return brief;
  const QStringList full = months(locale, QLocale::LongFormat);
  return all(full, in_letters) || all(full, is_word_and_figure) ? full : QStringList();
}

}  // namespace lardiner::words
