// What corrections of a supplier's item say that a lot contains besides.
#include "ledger/further_allergens.h"

#include "history/event.h"
#include "ledger/entries.h"

namespace lardiner::ledger {

QStringList further_allergens(Store& store, qint64 lot) {
  std::vector<qint64> corrections;
  Statement& rows = store.statement("SELECT seq FROM concern WHERE lot = ? AND kind = ? ORDER BY seq");
  rows.with(lot).with(static_cast<qint64>(history::Kind::Correction));
  while (rows.next()) corrections.push_back(rows.number(0));
  QStringList all;
  for (const qint64 seq : corrections)
    if (const auto entry = entry_at(store, seq); entry && *entry) all += (*entry)->entry.event.adds;
  all.removeDuplicates();
  return all;
}

}  // namespace lardiner::ledger
