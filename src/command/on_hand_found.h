// What is on hand for a plan or a sheet: a file that says so, else the ledger where there is one.
#pragma once

#include "command/work_run.h"
#include "ledger/on_hand.h"

namespace lardiner::command {

struct OnHandFound {
  std::vector<plan::OnHand> lots;
  bool from_ledger = false;
  std::vector<ledger::Counted> counted;  ///< of the ledger: the places that were ever counted
};

/// `path`: the file of `--on-hand`; empty: the kitchen's ledger, and nothing where there is none. Errors: every fault
/// of the file, what the faces do not have, the ledger's.
problem::ExpectedAll<OnHandFound> find_on_hand(const Options& options, const QString& path, const WorkRun& run);

/// "On hand as recorded; last counted: walk-in 1 Wed 25 Nov 2026 19:30", with its line's end; empty: from a file.
QString counted_text(const OnHandFound& found, const QTimeZone& zone);

}  // namespace lardiner::command
