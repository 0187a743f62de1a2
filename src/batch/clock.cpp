// Local times to instants: a time that occurs twice or never is refused unless its offset is written.
#include "batch/clock.h"

#include <QHash>
#include <algorithm>
#include <cstdlib>
#include <vector>

namespace lardiner::batch {

namespace {

// Offsets from UTC lie between -12:00 and +14:00 (IANA time zone database), so the instants that a wall clock can mean
// lie within this many seconds of the same reading taken as UTC; no zone has changed its offset twice in as short a
// time.
constexpr qint64 kWindow = 16 * 3600;

int offset_at(qint64 instant, const QTimeZone& zone) {
  return zone.offsetFromUtc(QDateTime::fromSecsSinceEpoch(instant, Qt::UTC));
}

// The instants at which the wall clock shows `wall` (seconds, as if it were UTC): one, two, or none; ascending.
std::vector<qint64> instants_of(qint64 wall, const QTimeZone& zone) {
  const int before = offset_at(wall - kWindow, zone);
  const int after = offset_at(wall + kWindow, zone);
  std::vector<qint64> found;
  if (offset_at(wall - before, zone) == before) found.push_back(wall - before);
  if (after != before && offset_at(wall - after, zone) == after) found.push_back(wall - after);
  std::sort(found.begin(), found.end());
  return found;
}

// The change of offset near `wall`. REQUIRES: instants_of(wall) is empty or has two, so that there is one.
qint64 change_near(qint64 wall, const QTimeZone& zone) {
  qint64 low = wall - kWindow;
  qint64 high = wall + kWindow;
  const int before = offset_at(low, zone);
  while (high - low > 1) {
    const qint64 middle = low + (high - low) / 2;
    (offset_at(middle, zone) == before ? low : high) = middle;
  }
  return high;
}

qint64 wall_seconds(QDate day, int seconds_of_day) {
  return QDateTime(day, QTime(0, 0), Qt::UTC).toSecsSinceEpoch() + seconds_of_day;
}

QString wall_text(qint64 wall) {
  const QDateTime shown = QDateTime::fromSecsSinceEpoch(wall, Qt::UTC);
  const bool whole_minute = shown.time().second() == 0;
  return shown.toString(whole_minute ? QStringLiteral("yyyy-MM-dd HH:mm") : QStringLiteral("yyyy-MM-dd HH:mm:ss"));
}

QString zone_name(const QTimeZone& zone) { return QString::fromLatin1(zone.id()); }

// "write the offset: 2026-11-01 01:30-04:00 or 2026-11-01 01:30-05:00"
QString offsets_hint(qint64 wall, const std::vector<qint64>& instants) {
  QStringList written;
  for (const qint64 instant : instants) written << wall_text(wall) + offset_text(static_cast<int>(wall - instant));
  return QStringLiteral("write the offset: ") + written.join(QStringLiteral(" or "));
}

problem::Error never_shown(qint64 wall, const QTimeZone& zone) {
  const qint64 change = change_near(wall, zone);
  const qint64 from = change + offset_at(change - 1, zone);
  const qint64 to = change + offset_at(change, zone);
  return {problem::Code::Malformed,
          QStringLiteral("%1 does not exist in %2: the clocks go from %3 to %4")
              .arg(wall_text(wall), zone_name(zone), wall_text(from), wall_text(to)),
          {},
          QStringLiteral("write a time before %1 or from %2 on").arg(wall_text(from), wall_text(to))};
}

problem::Error shown_twice(qint64 wall, const std::vector<qint64>& instants, const QTimeZone& zone) {
  return {problem::Code::Malformed,
          QStringLiteral("%1 occurs twice in %2: the clocks go back").arg(wall_text(wall), zone_name(zone)),
          {},
          offsets_hint(wall, instants)};
}

problem::Error wrong_offset(qint64 wall, int offset, const std::vector<qint64>& instants, const QTimeZone& zone) {
  return {problem::Code::Conflict,
          QStringLiteral("the offset %1 does not belong to %2 in %3")
              .arg(offset_text(offset), wall_text(wall), zone_name(zone)),
          {},
          offsets_hint(wall, instants)};
}

QDateTime first_of(QDate day, const QTimeZone& zone) {
  const qint64 midnight = wall_seconds(day, 0);
  const std::vector<qint64> instants = instants_of(midnight, zone);
  return QDateTime::fromSecsSinceEpoch(instants.empty() ? change_near(midnight, zone) : instants.front(), zone);
}

// The same few days are asked for over and over, and asking a zone is slow: those of one zone are remembered.
class StartsOfDays {
 public:
  QDateTime of(QDate day, const QTimeZone& zone) {
    if (zone != zone_ || known_.size() >= kMost) {
      known_.clear();
      zone_ = zone;
    }
    QDateTime& start = known_[day.toJulianDay()];
    if (!start.isValid()) start = first_of(day, zone);
    return start;
  }

 private:
  static constexpr qsizetype kMost = 4000;
  QTimeZone zone_;
  QHash<qint64, QDateTime> known_;
};

}  // namespace

problem::Expected<QDateTime> instant(const reader::Written& written, const QTimeZone& zone) {
  const qint64 wall = wall_seconds(written.date, written.seconds_of_day.value_or(0));
  const std::vector<qint64> instants = instants_of(wall, zone);
  if (instants.empty()) return tl::unexpected(never_shown(wall, zone));
  if (!written.offset_seconds) {
    if (instants.size() > 1) return tl::unexpected(shown_twice(wall, instants, zone));
    return QDateTime::fromSecsSinceEpoch(instants.front(), zone);
  }
  const qint64 meant = wall - *written.offset_seconds;
  if (std::find(instants.begin(), instants.end(), meant) == instants.end()) {
    return tl::unexpected(wrong_offset(wall, *written.offset_seconds, instants, zone));
  }
  return QDateTime::fromSecsSinceEpoch(meant, zone);
}

QDateTime start_of(QDate day, const QTimeZone& zone) {
  thread_local StartsOfDays known;
  return known.of(day, zone);
}

QDateTime end_of(QDate day, const QTimeZone& zone) { return start_of(day.addDays(1), zone); }

QDate local_day(const QDateTime& instant, const QTimeZone& zone) { return instant.toTimeZone(zone).date(); }

bool shows_twice(const QDateTime& instant, const QTimeZone& zone) {
  const qint64 utc = instant.toSecsSinceEpoch();
  return instants_of(utc + offset_at(utc, zone), zone).size() > 1;
}

QString offset_text(int seconds) {
  const int minutes = std::abs(seconds) / 60;
  return QStringLiteral("%1%2:%3")
      .arg(seconds < 0 ? QLatin1Char('-') : QLatin1Char('+'))
      .arg(minutes / 60, 2, 10, QLatin1Char('0'))
      .arg(minutes % 60, 2, 10, QLatin1Char('0'));
}

}  // namespace lardiner::batch
