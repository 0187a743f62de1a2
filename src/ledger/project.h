// What an entry changes in the computed tables: run as it is appended, and again when they are rebuilt.
#pragma once

#include "history/event.h"
#include "ledger/lots.h"
#include "ledger/store.h"

namespace lardiner::ledger {

/// Writes what `entry` changes, in the transaction that is open; with `resolve` first puts into its event the numbers
/// of the containers that it reaches. Errors: what cannot have happened; then the transaction must be rolled back and
/// the lots forgotten. None is an empty list; the store's fault is its own.
problem::Errors project(Store& store, Lots& lots, qint64 seq, history::Entry& entry, bool resolve);

}  // namespace lardiner::ledger
