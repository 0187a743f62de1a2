// Sharing a total out in whole steps so that the parts add up to it.
#pragma once

#include <cstdint>
#include <vector>

#include "measure/quantity.h"

namespace lardiner::measure {

/// `total` steps shared in proportion to `weights` (all non-negative, not all zero): each part is its exact share
/// rounded, and the residue goes to the largest weight (the first of equals), so the parts always sum to `total` and a
/// small line is never changed by the rounding of others. Where that would leave the largest with less than nothing
/// (more lines than steps), shares are rounded down instead. REQUIRES: total not negative, 1 to 1,000,000 weights.
std::vector<std::int64_t> share_out(std::int64_t total, const std::vector<std::int64_t>& weights);

}  // namespace lardiner::measure
