// The picture of a plan's start windows: when each making can start, when the plan starts it, when it is ready.
#pragma once

#include "facts/sheet_phrases.h"
#include "plan/day_plan.h"

namespace lardiner::facts {

/// In minutes from `now`. Marks: now, each midnight, and hours as far apart as leaves at most a dozen of them.
Spans windows_of(const SheetPhrases& phrases, const plan::DayPlan& plan, const QDateTime& now);

}  // namespace lardiner::facts
