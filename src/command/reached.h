// Which lots an entry concerns besides the one it names, and which sites have some of them: told as it is recorded.
#pragma once

#include <vector>

#include "command/ledger_run.h"
#include "history/event.h"

namespace lardiner::command {

/// All lots that a hold, a recall or a correction concerns; of any other entry the one it names. REQUIRES: the entry
/// has been appended.
std::vector<ledger::LotName> reached(LedgerRun& run, const history::Entry& entry);

/// Holds of a place and corrections of a supplier's item that concern no lot, which looks like success and is none:
/// what to say of each. A hold that is released among the entries concerned some. REQUIRES: as above.
QStringList reached_nothing(LedgerRun& run, const std::vector<history::Entry>& entries);

/// "call harbour-street-cafe: it has lot A26329CLB03L, containers 1, 2, whose labels do not say so", for what was
/// learned of food wherever it is: each lot once. REQUIRES: as above.
QStringList calls_to_sites(LedgerRun& run, const std::vector<history::Entry>& entries);

}  // namespace lardiner::command
