// The tables of a ledger: what is evidence, and what is computed from it; and how older files become newer ones.
#pragma once

#include "ledger/store.h"

namespace lardiner::ledger {

/// The version of the tables that this program writes.
inline constexpr int kSchemaVersion = 1;

/// Brings the file to kSchemaVersion, step by step, each step whole or not at all. Errors: a file of a newer program,
/// a file that is no ledger; the store's.
problem::Expected<bool> migrate(Store& store);

/// Refuses a file that is not of kSchemaVersion, and changes nothing.
problem::Expected<bool> check_version(Store& store);

/// Empties the tables that are computed from the entries.
void clear_projections(Store& store);

/// Every row of the computed tables as text, table by table and sorted: for comparing what is kept with what is
/// rebuilt.
QStringList dump_projections(Store& store);

}  // namespace lardiner::ledger
