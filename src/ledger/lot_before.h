// A lot as it stood before one of its entries: what its containers held then.
#pragma once

#include "history/lot.h"
#include "ledger/store.h"

namespace lardiner::ledger {

/// With all that befell it and all that batches took from it before `seq`. Errors: the store's; an entry that cannot be
/// read; a lot that was not begun before.
problem::Expected<history::Lot> lot_before(Store& store, qint64 lot, qint64 seq);

}  // namespace lardiner::ledger
