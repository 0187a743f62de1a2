// The days and instants of a plan, counted from the time of the run; for day_plan.cpp and its parts.
#pragma once

#include <QDateTime>
#include <QTimeZone>
#include <cstdint>
#include <limits>
#include <unordered_map>

namespace lardiner::plan {

/// Milliseconds since the beginning of 1970, UTC: what a plan compares by the thousand.
using Instant = std::int64_t;

inline constexpr Instant kNever = std::numeric_limits<Instant>::max();  ///< no instant is late enough
inline constexpr Instant kForever = kNever - 1;                         ///< the end of what has none
inline constexpr Instant kSecond = 1000;

/// The kitchen's calendar. Day 0 is the day of the run; days before it are negative.
class Calendar {
 public:
  Calendar(QTimeZone zone, const QDateTime& now);

  Instant now() const { return now_; }
  const QTimeZone& zone() const { return zone_; }
  Instant start(int day) const;
  int day_of(Instant at) const;

  /// When the clock of that day shows the time of the run.
  Instant hour_of_run(int day) const;

  /// The first end of a day that is not before `at`; of what is past, or past all days, `at` itself.
  Instant end_of_day(Instant at) const;

  QDateTime time(Instant at) const { return QDateTime::fromMSecsSinceEpoch(at, zone_); }

 private:
  QTimeZone zone_;
  Instant now_;
  QDate today_;
  QTime hour_;  // of the run, on the kitchen's clock
  mutable std::unordered_map<int, Instant> starts_;
};

}  // namespace lardiner::plan
