// What stood in a place at a time in the past and does not any more.
#pragma once

#include "command/ledger_run.h"

namespace lardiner::command {

/// Lots of which something stood in the place at `then`, as their entries have it now, and nothing does any more: it
/// was moved, left the kitchen or was used since. Of an entry that cannot be read the store's fault tells.
std::vector<ledger::LotName> left_since(LedgerRun& run, const QString& place, const QDateTime& then);

}  // namespace lardiner::command
