// Instants and days in the ledger's text. Qt reads and writes formats of an instant several times slower.
#include "batch/json_instant.h"

#include <array>

namespace lardiner::batch {

namespace {

constexpr int kDaySeconds = 24 * 60 * 60;
constexpr qsizetype kDayLength = 10, kInstantLength = 20;

// Writes `number` in `count` figures that end before `end`.
void put(char16_t* end, int number, int count) {
  for (; count > 0; --count, number /= 10) *--end = static_cast<char16_t>(u'0' + number % 10);
}

// The figures of `text` from `at`; -1 where one is no figure.
int figures(const QString& text, qsizetype at, qsizetype count) {
  int number = 0;
  for (qsizetype i = at; i < at + count; ++i) {
    const int figure = text[i].unicode() - u'0';
    if (figure < 0 || figure > 9) return -1;
    number = number * 10 + figure;
  }
  return number;
}

std::optional<QDate> day_at_start(const QString& text) {
  if (text[4] != u'-' || text[7] != u'-') return std::nullopt;
  const QDate date(figures(text, 0, 4), figures(text, 5, 2), figures(text, 8, 2));
  return date.isValid() ? std::optional(date) : std::nullopt;
}

}  // namespace

QString instant_json(const QDateTime& instant) {
  const qint64 seconds = instant.toSecsSinceEpoch();
  const qint64 days = seconds >= 0 ? seconds / kDaySeconds : (seconds + 1) / kDaySeconds - 1;
  const int second = static_cast<int>(seconds - days * kDaySeconds);
  int year = 0, month = 0, day = 0;
  QDate(1970, 1, 1).addDays(days).getDate(&year, &month, &day);
  std::array<char16_t, kInstantLength> text{u'0', u'0', u'0', u'0', u'-', u'0', u'0', u'-', u'0', u'0',
                                            u'T', u'0', u'0', u':', u'0', u'0', u':', u'0', u'0', u'Z'};
  char16_t* const at = text.data();
  put(at + 4, year, 4);
  put(at + 7, month, 2);
  put(at + 10, day, 2);
  put(at + 13, second / 3600, 2);
  put(at + 16, second / 60 % 60, 2);
  put(at + 19, second % 60, 2);
  return QString::fromUtf16(at, kInstantLength);
}

std::optional<QDateTime> instant_from(const QString& text) {
  if (text.size() != kInstantLength || text[10] != u'T' || text[13] != u':' || text[16] != u':' || text[19] != u'Z')
    return std::nullopt;
  const std::optional<QDate> date = day_at_start(text);
  const QTime time(figures(text, 11, 2), figures(text, 14, 2), figures(text, 17, 2));
  if (!date || !time.isValid()) return std::nullopt;
  return QDateTime(*date, time, Qt::UTC);
}

std::optional<QDate> day_from(const QString& text) {
  return text.size() == kDayLength ? day_at_start(text) : std::nullopt;
}

}  // namespace lardiner::batch
