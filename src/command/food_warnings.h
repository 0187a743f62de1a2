// What food that came, left or was reheated asks for, told as it is recorded: what happened is evidence and is taken as
// it was, but nobody should learn of it from a sheet of the evening alone.
#pragma once

#include <vector>

#include "command/ledger_run.h"
#include "history/event.h"

namespace lardiner::command {

/// For each entry what is wrong with it: a dispatch of what must not be served (past its date, on hold, in a recall,
/// not released, without a date); what needs temperature control and was neither cold nor hot when it came, left or
/// arrived; food held or reheated short of its limit. REQUIRES: they have been appended.
problem::Errors food_warnings(LedgerRun& run, const std::vector<history::Entry>& entries);

}  // namespace lardiner::command
