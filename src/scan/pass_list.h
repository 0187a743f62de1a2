// The further passes: what each makes of a bitmap, and how that is read.
#pragma once

#include <vector>

#include "symbol/read.h"

namespace lardiner::scan {

struct Pass {
  const char* name;
  symbol::Grey (*made)(const symbol::Grey&);
  symbol::Reading reading;
};

/// In the order of yield for cost, as measured on the damaged labels of tests/bench/damage. Made for modules of about 4
/// to 15 pixels.
const std::vector<Pass>& further_passes();

}  // namespace lardiner::scan
