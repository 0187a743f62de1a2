// What corrections of a supplier's item say that a lot contains besides.
#pragma once

#include <QDate>
#include <QStringList>
#include <optional>

#include "history/event.h"
#include "ledger/store.h"

namespace lardiner::ledger {

/// Substances that corrections added to this lot while it was known, each once; of a lot that is only named too. Of an
/// entry that cannot be read the store's fault tells.
QStringList further_allergens(Store& store, qint64 lot);

/// A correction of what a supplier's item declares, which stands for lots that come later.
struct Addition {
  qint64 seq = 0;  ///< its entry
  QString supplier_item;
  QString lot;  ///< of this one alone; empty: of all
  QDate day;    ///< in the kitchen's zone
  QStringList substances;
};

/// Those that may be of a lot, the oldest first. Without a supplier item or a code it may be of any. Of an entry that
/// cannot be read the store's fault tells.
std::vector<Addition> additions(Store& store, const QString& item, const QString& supplier_item, const QString& code);

/// Whether it stands beside a declaration that was last read on `checked`: one that was read on a later day knows
/// better of all lots but one that the correction names.
bool stands(const Addition& addition, const std::optional<QDate>& checked);

/// Keeps a Correction that adds, for the lots that come later. REQUIRES: a transaction is open.
void remember_addition(Store& store, qint64 seq, const history::Entry& entry);

}  // namespace lardiner::ledger
