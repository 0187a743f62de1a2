// What must be bought, in whole buying units; for day_plan.cpp.
#pragma once

#include <vector>

#include "plan/day_plan_explosion.h"

namespace lardiner::plan {

/// By ingredient. `starts`: of each of the explosion's makings.
std::vector<Buy> buying(const Items& items, const std::vector<BuyNeed>& needs, const std::vector<Instant>& starts,
                        const Calendar& calendar);

}  // namespace lardiner::plan
