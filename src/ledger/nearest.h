// What to say of a lot that is not recorded: the codes that are near it.
#pragma once

#include <QString>
#include <QStringList>

#include "ledger/store.h"

namespace lardiner::ledger {

/// Codes that are at most one letter away from `code` or that differ in the case or in letters that are easily taken
/// for one another; at most ten, the latest first.
QStringList nearest_codes(Store& store, const QString& code);

/// That no such lot is recorded, with the nearest as the remedy, or `otherwise` where none is near.
problem::Error unknown_lot(Store& store, const QString& code, const problem::Place& place, const QString& otherwise);

}  // namespace lardiner::ledger
