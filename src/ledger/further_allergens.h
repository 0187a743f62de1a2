// What corrections of a supplier's item say that a lot contains besides.
#pragma once

#include <QStringList>

#include "ledger/store.h"

namespace lardiner::ledger {

/// Substances, each once; of a lot that is only named too. Of an entry that cannot be read the store's fault tells.
QStringList further_allergens(Store& store, qint64 lot);

}  // namespace lardiner::ledger
