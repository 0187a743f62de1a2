// Whether the tables that are computed from the entries say what the entries give.
#pragma once

#include <QStringList>

#include "problem/error.h"

namespace lardiner::ledger {

/// The computed tables of the ledger `path` that differ from those that its entries give, by name. The work is done on
/// copies in the machine's folder for temporary files, twice the ledger's size; the ledger is only read, while others
/// may write to it. Errors: an entry that cannot be read or cannot have happened; the store's; no room for the copies.
problem::ExpectedAll<QStringList> unlike_tables(const QString& path);

}  // namespace lardiner::ledger
