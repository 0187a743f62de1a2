// The fixed words of labels and sheets in each language, and dates and numbers as each language writes them.
#include "words/words.h"

#include <QRegularExpression>

namespace lardiner::words {

namespace {

QString two_digits(int number) { return QString::number(number).rightJustified(2, u'0'); }

// "Mo." is printed as "Mo": a full stop within a date could be read as a decimal mark.
QString without_stops(QString name) { return name.remove(u'.'); }

}  // namespace

Language::Language(QString code, QHash<QString, QString> words, QString reviewed_by)
    : code_(std::move(code)), words_(std::move(words)), reviewed_by_(std::move(reviewed_by)), locale_(code_) {}

QString Language::word(const QString& key) const { return words_.value(key, u'[' + key + u']'); }

bool Language::has(const QString& key) const { return words_.contains(key); }

QString Language::sentence(const QString& key, const QStringList& values) const {
  static const QRegularExpression gap(QStringLiteral("\\{([0-9])\\}"));
  const QString text = word(key);
  QString filled;
  qsizetype done = 0;
  for (auto gaps = gap.globalMatch(text); gaps.hasNext();) {
    const auto match = gaps.next();
    filled += text.mid(done, match.capturedStart() - done) + values.value(match.captured(1).toInt(), match.captured());
    done = match.capturedEnd();
  }
  return filled + text.mid(done);
}

QString Language::weekday_short(QDate date) const {
  return without_stops(locale_.dayName(date.dayOfWeek(), QLocale::ShortFormat));
}

QString Language::month_short(QDate date) const {
  return without_stops(locale_.monthName(date.month(), QLocale::ShortFormat));
}

QString Language::day_month(QDate date) const {
  return upper(weekday_short(date) + u' ' + two_digits(date.day()) + u' ' + month_short(date));
}

QString Language::date(QDate date) const {
  return weekday_short(date) + u' ' + two_digits(date.day()) + u' ' + month_short(date) + u' ' +
         QString::number(date.year());
}

QString Language::date_time(const QDateTime& local) const { return date(local.date()) + u' ' + time(local.time()); }

QString Language::time(const QTime& time) const { return two_digits(time.hour()) + u':' + two_digits(time.minute()); }

QChar Language::decimal_mark() const { return locale_.decimalPoint().at(0); }

QString Language::upper(const QString& text) const { return locale_.toUpper(text); }

QString Language::list(const QStringList& items) const { return items.join(QStringLiteral(", ")); }

}  // namespace lardiner::words
