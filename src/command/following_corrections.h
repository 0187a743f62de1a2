// Corrections that follow from what is recorded late: what was made of a lot before its own making, receipt or
// correction was known.
#pragma once

#include <vector>

#include "command/ledger_run.h"
#include "history/event.h"

namespace lardiner::command {

/// Of an event that is about to be appended: further allergens of lots that are known only from what was made of them.
/// A batch that is recorded after what was made of it, and declares what that does not; a receipt of another supplier's
/// item than batches took its lot for; a correction of an ingredient that such a lot is made of by the book. They come
/// after the event, by the same person, at the time of the run.
std::vector<history::Event> following_corrections(LedgerRun& run, const history::Event& event);

}  // namespace lardiner::command
