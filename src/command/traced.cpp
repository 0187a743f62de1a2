// A lot's lineage both ways, with those that may hold it, and the balance of its amounts.
#include "command/traced.h"

#include <algorithm>

namespace lardiner::command {

const ledger::LotName* Traced::lot(qint64 id) const {
  const auto found = std::lower_bound(lineage.lots.begin(), lineage.lots.end(), id,
                                      [](const ledger::LotName& lot, qint64 other) { return lot.id < other; });
  return found != lineage.lots.end() && found->id == id ? &*found : nullptr;
}

std::optional<history::Balance> balance_of(ledger::Ledger& ledger, qint64 id) {
  const history::Lot* lot = ledger.lots().lot(id);
  if (!lot) return std::nullopt;
  const measure::Dimension dimension = lot->quantity.dimension;
  history::Balance balance = history::balance(*lot, ledger::drawn(ledger.store(), id, dimension));
  balance.unsaid = ledger::drawn_unsaid(ledger.store(), id, dimension);
  return balance;
}

problem::Expected<Traced> traced_lot(LedgerRun& run, qint64 lot) {
  ledger::Store& store = run.ledger.store();
  Traced traced{ledger::lineage(store, lot), {}, balance_of(run.ledger, lot)};
  for (const qint64 id : ledger::perhaps_in(store, run.ledger.lots(), lot))
    if (!traced.lot(id))
      if (const auto name = run.ledger.lots().named(id)) traced.perhaps.push_back(*name);
  if (run.ledger.lots().unreadable()) return tl::unexpected(*run.ledger.lots().unreadable());
  if (store.fault()) return tl::unexpected(*store.fault());
  return traced;
}

}  // namespace lardiner::command
