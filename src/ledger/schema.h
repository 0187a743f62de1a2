// The tables of a ledger: what is evidence, and what is computed from it; and how older files become newer ones.
#pragma once

#include <functional>

#include "ledger/store.h"

namespace lardiner::ledger {

/// The version of the tables that this program writes.
inline constexpr int kSchemaVersion = 2;

/// Brings the file to kSchemaVersion, whole or not at all; where tables of an older program were there already,
/// `compute_anew` computes them from the entries within the same transaction. Errors: a file of a newer program, a file
/// that is no ledger; those of `compute_anew`; the store's.
problem::Expected<bool> migrate(Store& store, const std::function<problem::Errors()>& compute_anew);

/// Refuses a file that is not of kSchemaVersion, and changes nothing.
problem::Expected<bool> check_version(Store& store);

/// Refuses a file that is no ledger, has nothing in it or is of a newer program. Its entries can be read: they are
/// written alike in every version.
problem::Expected<bool> check_entries(Store& store);

/// The names of the tables that are computed from the entries.
QStringList projections();

/// Empties them.
void clear_projections(Store& store);

/// Every row of the computed tables as text, table by table and sorted: for comparing what is kept with what is
/// rebuilt.
QStringList dump_projections(Store& store);

}  // namespace lardiner::ledger
