// The ledger as the sheets see it: the book and its words, the ledger, and what a sheet says of its lots and
// containers.
#pragma once

#include "command/work_run.h"
#include "facts/container_text.h"
#include "history/lot.h"
#include "ledger/ledger.h"

namespace lardiner::command {

struct SheetLedger {
  WorkRun run;
  ledger::Ledger ledger;
};
/// `out`: the file that is asked for; may be empty.
problem::ExpectedAll<SheetLedger> read_sheet_ledger(const Options& options, const QString& out);

/// The lot that a code and an item name; nullptr where it is only named, or there is none.
const history::Lot* lot_of(ledger::Ledger& ledger, const QString& code, const QString& item);

/// Containers by kind, as sheets name them.
std::vector<facts::Containers> containers_of(const history::Lot& lot, const std::vector<int>& numbers);

/// A site as the sheets call it; its id where the book has no such site.
QString site_name(const WorkRun& run, const QString& site);
QString site_name(const book::Book& book, const QString& language, const QString& site);

}  // namespace lardiner::command
