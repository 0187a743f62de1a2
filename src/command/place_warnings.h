// What a temperature of a place that is out of its limits asks for, told as it is recorded.
#pragma once

#include <vector>

#include "command/ledger_run.h"
#include "history/event.h"

namespace lardiner::command {

/// For each hold of a place, and each temperature that is out of limits, what stood there then and has left it since.
/// For each temperature out of the limits that its entry keeps: the reading, the limits, which lots stand in the place
/// now, and, where somebody has to be told, how to hold them all: `to_hold`, with %1 for the place. Nothing where a
/// later hold of the place is among the entries. REQUIRES: they have been appended.
problem::Errors place_warnings(LedgerRun& run, const std::vector<history::Entry>& entries, const QString& to_hold = {});

}  // namespace lardiner::command
