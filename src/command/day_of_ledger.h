// A day of the ledger as its record tells it.
#pragma once

#include "command/sheet_ledger.h"
#include "facts/day_record.h"

namespace lardiner::command {

/// Everything that happened on `day`, whenever it was recorded. A place is held to the adopted limits of cold and of
/// hot holding, whichever is nearer: between them nothing is in limit. Errors: an entry that cannot be read, the
/// store's.
problem::ExpectedAll<facts::Day> day_of_ledger(SheetLedger& ledger, QDate day);

}  // namespace lardiner::command
