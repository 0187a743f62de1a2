// The lines of a pull as the scale shall read them, adding up to the printed total; for scaling.cpp.
#pragma once

#include <optional>
#include <vector>

#include "plan/scaling.h"

namespace lardiner::plan {

/// Sets `weighed` of each line from its `net`, `step`, `fine` and `restricted`, and returns their sum. Fine lines are
/// their nearest step, restricted ones the step below, and so is every other line its own nearest step but the largest
/// (of equals the first by item), which takes the residue: then the sum is the exact total to the nearest step of the
/// kitchen's scale, or up to it where a line is restricted, so that its share is not raised by rounding. No more than
/// `most` is printed where the exact total is not more. Where so many lines round one way that the largest would be
/// off by over a tenth, or no line can bear a residue, each is just rounded and the total is their sum.
measure::Quantity weigh_out(std::vector<ScaledLine>& lines, measure::Quantity scale_step,
                            std::optional<measure::Quantity> most);

}  // namespace lardiner::plan
