// A copy of a ledger while it is written to, and a ledger out of a copy; each verified before it counts.
#pragma once

#include <QString>
#include <vector>

#include "ledger/ledger.h"

namespace lardiner::ledger {

/// Writes a copy of the ledger as of one moment to `to`, while others go on writing. It is made beside its place,
/// verified, and appears whole or not at all; one file, without a log beside it. Gives the heads that it ends with.
/// Errors: a file that is there; a chain that does not verify (named by its entry); the disk's.
problem::Expected<std::vector<Head>> back_up(const QString& from, const QString& to);

/// Verifies the backup `from` and makes it the ledger `to`, with its tables computed anew from the entries. Errors: a
/// ledger that is there already, for nothing is written over, or the log of one; a chain that does not verify; what
/// `back_up` says.
problem::Expected<std::vector<Head>> restore(const QString& from, const QString& to);

}  // namespace lardiner::ledger
