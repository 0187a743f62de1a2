// Which needs of one product are met by one making; for day_plan.cpp and its parts.
#pragma once

#include <vector>

#include "plan/day_plan_needs.h"

namespace lardiner::plan {

/// The fewest makings whose windows meet all needs: by their latest starts, each taking in whatever can still begin
/// then (stabbing of intervals, which is optimal). A need is merged only where everything in it can be made anew in
/// time, so that no merging makes anything impossible; one that is made for a single order or level meets only others
/// of the same. REQUIRES: each need can be made by itself.
std::vector<std::vector<Need>> merged(std::vector<Need> needs);

}  // namespace lardiner::plan
