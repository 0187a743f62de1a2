// What the commands of the ledger have in common: the book, the time of the run, and the ledger of its station.
#pragma once

#include "command/commands.h"
#include "ledger/ledger.h"

namespace lardiner::command {

struct LedgerRun {
  book::Book book;
  QDateTime now;
  ledger::Ledger ledger;

  const QTimeZone& zone() const { return book.kitchen.zone; }
  ledger::Stamp stamp() const;
};

/// The ledger of `--ledger`, else KITCHEN/ledger/STATION.sqlite; for writing it is made where there is none. Errors:
/// the book's, those of Ledger::open.
problem::ExpectedAll<LedgerRun> read_ledger_run(const Options& options, ledger::Access access);

/// The same with a book that was read already.
problem::ExpectedAll<LedgerRun> ledger_run(const Options& options, book::Book book, ledger::Access access);

/// Makes the kitchen's own folder of ledgers, unless `--ledger` names another place. That it failed, opening says.
void make_ledger_folder(const Options& options);

/// Where that ledger is.
QString ledger_path(const Options& options, const book::Kitchen& kitchen);

/// A lot's code as labels have it: in capitals, without blanks.
QString as_printed(const QString& typed);

/// A lot that a person names, as it is recorded or else as labels have it. Errors: none of that code, with the nearest;
/// of several items, which ones.
problem::Expected<ledger::LotName> lot_named(ledger::Ledger& ledger, const QString& code, const QString& item);

}  // namespace lardiner::command
