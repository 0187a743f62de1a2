// How labels of a record of a file would differ from what the ledger has.
#pragma once

#include "batch/batch.h"
#include "history/lot.h"

namespace lardiner::command {

struct Otherwise {
  QString how;   ///< "is recorded with another date"; empty: labels of both would say the same
  QString hint;  ///< empty: what holds now is to be printed
};

/// Of `batch` as the file has it, and `now` as the ledger has it of its lot.
Otherwise otherwise(const batch::Batch& batch, const batch::Batch& now, const history::Lot& lot);

/// Whether a record cannot know what is the matter with a lot that went in: a corrected date, an allergen that was
/// found since, what befell its containers.
bool is_otherwise_now(const history::Lot& lot);

}  // namespace lardiner::command
