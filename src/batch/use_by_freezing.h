// Chilled time as a budget: what the freezer does to each limit; for use_by.cpp.
#pragma once

#include <vector>

#include "batch/use_by_limits.h"

namespace lardiner::batch {

/// Moves the ends of the limits that stand still in the freezer, and of a container that is there now sets `days_left`
/// of all limits, with a limit for each rule that will start at its thawing. A freezing with no day left is added to
/// `errors`.
void stop_while_frozen(std::vector<Limit>& limits, const Question& question, const Timeline& timeline,
                       problem::Errors& errors);

}  // namespace lardiner::batch
