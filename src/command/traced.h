// A lot's lineage both ways, with those that may hold it, and the balance of its amounts.
#pragma once

#include <optional>

#include "command/ledger_run.h"
#include "ledger/lineage.h"

namespace lardiner::command {

struct Traced {
  ledger::Lineage lineage;
  std::vector<ledger::LotName> perhaps;     ///< batches that name no lot of its item
  std::optional<history::Balance> balance;  ///< absent: it is only named

  const ledger::LotName* lot(qint64 id) const;
};

problem::Expected<Traced> traced_lot(LedgerRun& run, qint64 lot);

/// made = used + dispatched + discarded + missing + on hand + difference of a lot; nothing where it is only named.
std::optional<history::Balance> balance_of(ledger::Ledger& ledger, qint64 lot);

}  // namespace lardiner::command
