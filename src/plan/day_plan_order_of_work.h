// In which order the makings of a plan are begun, and when; for day_plan.cpp.
#pragma once

#include <vector>

#include "plan/day_plan_explosion.h"

namespace lardiner::plan {

struct Begun {
  size_t making = 0;  ///< index into Explosion::makings
  Instant start = 0;
  bool clean_down = false;
};

/// Makes the windows of `makings` wait for what goes into them, and begins each in its window, starts never falling,
/// what goes into it ready before it. What can be begun on a day is begun on it; of that, ready-to-eat before raw, then
/// from fewest allergens to most. REQUIRES: each making can wait so long, as `exploded` sees to.
std::vector<Begun> order_of_work(const Items& items, std::vector<Making>& makings, const Calendar& calendar);

}  // namespace lardiner::plan
