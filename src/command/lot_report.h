// The history of one lot: what it is, whether it is good and until when and why, then all that is known of it.
#pragma once

#include <QJsonObject>
#include <QString>
#include <optional>

#include "command/ledger_run.h"
#include "ledger/entries.h"
#include "ledger/lineage.h"

namespace lardiner::command {

/// Everything that a report of a lot says, gathered once.
struct LotReport {
  ledger::LotName name;
  std::optional<history::Lot> lot;  ///< absent: it is only named by what was made of it
  std::vector<ledger::Recorded> entries;
  std::vector<ledger::Edge> inputs, outputs;
  std::vector<ledger::LotName> others;  ///< the lots of the edges
  QString barred;                       ///< of one that is only named: "on hold"; empty: nothing is known against it
};
problem::Expected<LotReport> lot_report(LedgerRun& run, const ledger::LotName& name);

/// A label that is asked about: of a container, with the date that it shows.
struct Asked {
  std::optional<int> container;
  QString label_end;  ///< Scanned::label_end; empty: none was scanned, or it shows none
  bool scanned = false;
};

/// The answer to a scan comes first and in capitals where it is not good: GOOD, PAST, NOT RELEASED, ON HOLD, RECALLED,
/// SUPERSEDED. REQUIRES: the run that gave the report.
QString text(const LedgerRun& run, const LotReport& report, const Asked& asked);
QJsonObject json_of(const LedgerRun& run, const LotReport& report, const Asked& asked);

}  // namespace lardiner::command
