// What was made of a lot before something that had befallen it was recorded.
#pragma once

#include <vector>

#include "command/ledger_run.h"
#include "history/event.h"

namespace lardiner::command {

/// For each entry that says of a lot what a batch of it could not know: opened, thawed, held hot or put on time control
/// before it was used, discarded before, not released, or on hold. REQUIRES: they have been appended.
problem::Errors late_warnings(LedgerRun& run, const std::vector<history::Entry>& entries);

}  // namespace lardiner::command
