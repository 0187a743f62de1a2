// Where a container's events have brought it: its timeline in order, and the state that this left it in.
#pragma once

#include <vector>

#include "batch/record.h"
#include "book/shelf_life.h"

namespace lardiner::facts {

/// The events that touch a container, by their time.
std::vector<const batch::Event*> timeline(const batch::Record& record, int container);

/// The state that the last of them left it in; opened or packed food stays as cold as it was.
book::State state_of(const batch::Record& record, int container, book::State at_first);

}  // namespace lardiner::facts
