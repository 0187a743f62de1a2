// The state that a container's events have left it in.
#pragma once

#include "batch/record.h"
#include "book/shelf_life.h"

namespace lardiner::facts {

/// After the last event that changes it; opened or packed food stays as cold as it was.
book::State state_of(const batch::Record& record, int container, book::State at_first);

}  // namespace lardiner::facts
