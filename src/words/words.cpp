// The fixed words of labels and sheets in each language, and dates and numbers as each language writes them.
#include "words/words.h"

#include "words/date_names.h"
#include "words/plural.h"

namespace lardiner::words {

namespace {

constexpr qsizetype kGap = 3;  // "{0}"

// Where the next gap begins; -1: there is none.
qsizetype gap_from(const QString& text, qsizetype from) {
  const auto is_digit = [](QChar sign) { return sign >= u'0' && sign <= u'9'; };
  for (qsizetype at = text.indexOf(u'{', from); at >= 0 && at + kGap <= text.size(); at = text.indexOf(u'{', at + 1))
    if (is_digit(text[at + 1]) && text[at + 2] == u'}') return at;
  return -1;
}

QString two_digits(int number) { return QString::number(number).rightJustified(2, u'0'); }

// Text without spaces may be broken between any two ideographs: a date is held together by word joiners.
QString held_together(const QString& date) {
  QString out;
  for (qsizetype i = 0; i < date.size(); ++i) {
    const bool ideograph =
        date[i].script() == QChar::Script_Han || (i > 0 && date[i - 1].script() == QChar::Script_Han);
    if (i > 0 && ideograph && !date[i].isSpace() && !date[i - 1].isSpace()) out += QChar(0x2060);
    out += date[i];
  }
  return out;
}

// A day that its own sign follows (1日) needs no zero before it.
QString day_in(const QString& form, int day) {
  const qsizetype after = form.indexOf(QLatin1String("{1}")) + 3;
  return after < form.size() && form[after].isLetter() ? QString::number(day) : two_digits(day);
}

}  // namespace

Language::Language(QString code, QHash<QString, QString> words, QString reviewed_by)
    : code_(std::move(code)),
      words_(std::move(words)),
      reviewed_by_(std::move(reviewed_by)),
      locale_(code_),
      weekdays_(weekday_names(locale_)),
      months_(month_names(locale_)) {}

QString Language::word(const QString& key) const {
  const auto found = words_.constFind(key);
  return found == words_.constEnd() ? u'[' + key + u']' : *found;
}

bool Language::has(const QString& key) const { return words_.contains(key); }

QString Language::sentence(const QString& key, const QStringList& values) const {
  const QString text = word(key);
  QString filled;
  qsizetype done = 0;
  for (qsizetype at = gap_from(text, 0); at >= 0; at = gap_from(text, done)) {
    const int which = text[at + 1].digitValue();
    filled += QStringView(text).mid(done, at - done);
    filled += which < values.size() ? QStringView(values[which]) : QStringView(text).mid(at, kGap);
    done = at + kGap;
  }
  return filled += QStringView(text).mid(done);
}

QStringList Language::around(const QString& key) const {
  const QString text = word(key);
  QStringList parts;
  qsizetype done = 0;
  for (qsizetype at = gap_from(text, 0); at >= 0; at = gap_from(text, done)) {
    parts += text.mid(done, at - done);
    done = at + kGap;
  }
  return parts << text.mid(done);
}

QString Language::counted(const QString& key, const QString& figure) const {
  return sentence(plural_key(key, plural_of(code_, figure)), {figure});
}

QString Language::tag() const { return code_ == QLatin1String("zh") ? QStringLiteral("zh-Hans") : code_; }

QString Language::weekday(QDate date) const { return weekdays_.value(date.dayOfWeek() - 1); }

QString Language::month(QDate date) const { return months_.value(date.month() - 1); }

QString Language::day_month(QDate date) const {
  const QString key = QStringLiteral("day_month");
  return upper(sentence(key, {weekday(date), day_in(word(key), date.day()), month(date)}));
}

QString Language::year(QDate date) const { return sentence(QStringLiteral("year"), {QString::number(date.year())}); }

QString Language::date(QDate date) const {
  const QString key = QStringLiteral("date");
  const QString whole_month = month(date).replace(u' ', QChar(0x00A0));
  return held_together(
      sentence(key, {weekday(date), day_in(word(key), date.day()), whole_month, QString::number(date.year())}));
}

QString Language::date_time(const QDateTime& local) const { return date(local.date()) + u' ' + time(local.time()); }

QString Language::time(const QTime& time) const { return two_digits(time.hour()) + u':' + two_digits(time.minute()); }

QChar Language::decimal_mark() const { return locale_.decimalPoint().at(0); }

QString Language::upper(const QString& text) const { return locale_.toUpper(text); }

QString Language::list(const QStringList& items) const { return joined(QStringLiteral("items"), items); }

QString Language::clauses(const QStringList& parts) const { return joined(QStringLiteral("clauses"), parts); }

QString Language::sentences(const QStringList& parts) const { return joined(QStringLiteral("sentences"), parts); }

QString Language::joined(const QString& key, const QStringList& parts) const {
  QString out = parts.value(0);
  for (qsizetype i = 1; i < parts.size(); ++i) out = sentence(key, {out, parts[i]});
  return out;
}

}  // namespace lardiner::words
