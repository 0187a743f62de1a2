// A batch that is recorded and refused: what it lacks, and its dates, which nobody may show; for fixed*.cpp.
#pragma once

#include "batch/fixed.h"

namespace lardiner::batch {

/// Adds a reason at the record's place, and what a HOLD label says is missing.
void miss(Fixed& fixed, const char* missing, problem::Error error);

/// A refused batch has no date until it is released. REQUIRES: it was not refused before.
void withhold(Fixed& fixed);

}  // namespace lardiner::batch
