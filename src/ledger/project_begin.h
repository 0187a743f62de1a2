// What begins a lot: a batch with its inputs, or a receipt.
#pragma once

#include "ledger/project_lot.h"

namespace lardiner::ledger {

/// Of a Made or Received entry: the lot, its containers, what went into it, and what that leaves of each input. A lot
/// of a supplier may be received again: its packages are added. Errors: a batch that is recorded already; history's.
problem::Errors begin_lot(const Work& work, history::Entry& entry);

}  // namespace lardiner::ledger
