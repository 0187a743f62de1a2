// The days and instants of a plan, counted from the time of the run.
#include "plan/day_plan_calendar.h"

#include <utility>

#include "batch/clock.h"

namespace lardiner::plan {

namespace {

constexpr Instant kDay = 24 * 3600 * kSecond;

}  // namespace

Calendar::Calendar(QTimeZone zone, const QDateTime& now)
    : zone_(std::move(zone)),
      now_(now.toMSecsSinceEpoch()),
      today_(batch::local_day(now, zone_)),
      hour_(now.toTimeZone(zone_).time()) {}

Instant Calendar::start(int day) const {
  const auto [at, is_new] = starts_.emplace(day, 0);
  if (is_new) at->second = batch::start_of(today_.addDays(day), zone_).toMSecsSinceEpoch();
  return at->second;
}

int Calendar::day_of(Instant at) const {
  int day = static_cast<int>((at - start(0)) / kDay);  // clocks that change make it a day more or less
  while (start(day) > at) --day;
  while (start(day + 1) <= at) ++day;
  return day;
}

Instant Calendar::hour_of_run(int day) const {
  return QDateTime(today_.addDays(day), hour_, zone_).toMSecsSinceEpoch();
}

Instant Calendar::end_of_day(Instant at) const { return at >= kForever || at <= now_ ? at : start(day_of(at - 1) + 1); }

}  // namespace lardiner::plan
