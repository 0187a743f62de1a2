// The picture of a plan's start windows: when each making can start, when the plan starts it, when it is ready.
#include "facts/start_windows.h"

#include <algorithm>

#include "batch/clock.h"
#include "facts/plan_sheet.h"

namespace lardiner::facts {

namespace {

constexpr int kMostMarks = 12;  // between the days, or of days

int minutes(const QDateTime& from, const QDateTime& to) { return static_cast<int>(from.secsTo(to) / 60); }

// Hours between the marks of an axis: whole parts of a day.
int hours_apart(int length) {
  for (const int hours : {1, 2, 3, 6, 12})
    if (length / 60 <= hours * kMostMarks) return hours;
  return 24;
}

// Whole hours of the wall clock, equally far apart; midnight stands as the day. Over many days, some of these alone.
std::vector<Spans::Mark> marks(const SheetPhrases& phrases, const QDateTime& now, int length) {
  const QTimeZone& zone = phrases.book().kitchen.zone;
  std::vector<Spans::Mark> out{{0, phrases.both("sheet.now") + u' ' + phrases.time(now), true}};
  const int apart = hours_apart(length), days_apart = length / (24 * 60 * kMostMarks) + 1;
  int days = 0;
  QDateTime at = batch::start_of(batch::local_day(now, zone), zone);
  for (; minutes(now, at) <= length; at = at.addSecs(3600)) {
    const QDateTime local = at.toTimeZone(zone);
    if (at <= now || local.time().hour() % apart != 0) continue;
    const bool midnight = local.time().hour() == 0;
    if (midnight && ++days % days_apart != 0) continue;
    out.push_back({minutes(now, at), midnight ? phrases.day(local.date()) : phrases.time(at), midnight && apart < 24});
  }
  return out;
}

}  // namespace

Spans windows_of(const SheetPhrases& phrases, const plan::DayPlan& plan, const QDateTime& now) {
  Spans out;
  out.caption = phrases.both("sheet.windows");
  for (const plan::PlannedMaking& making : plan.makings) {
    const int to = minutes(now, making.latest);
    out.spans.push_back({phrases.name(phrases.first(), making.product->id), minutes(now, making.earliest), to,
                         to + making.seconds / 60, minutes(now, making.start), making.any_time_before});
    out.length = std::max(out.length, out.spans.back().end);
  }
  out.marks = marks(phrases, now, out.length);
  for (const char* key : {"sheet.windows_read", "sheet.windows_unknown"}) {
    std::vector<SmallLine> lines;
    phrases.add_small(lines, [&](const Wording& wording) { return wording.word(key); });
    for (const SmallLine& line : lines) out.notes << line.text;
  }
  return out;
}

problem::ExpectedAll<Spans> start_windows(const SheetSetting& setting, const plan::DayPlan& plan,
                                          const QDateTime& now) {
  problem::Errors errors;
  const SheetPhrases phrases(setting, errors);
  Spans spans = windows_of(phrases, plan, now);
  if (errors.empty()) return spans;
  problem::sort(errors);
  return tl::unexpected(errors);
}

}  // namespace lardiner::facts
