// The station's desk over a kitchen: what its pages ask of the book, the ledger and the commands' own work.
#pragma once

#include "command/kept_book.h"
#include "command/kept_plan.h"
#include "command/ledger_run.h"
#include "command/print_board.h"
#include "station/desk.h"

namespace lardiner::command {

/// Opens the ledger for writing, and makes it where there is none. `program` is this one, to be run for each picture;
/// `book`, `plan` and `board` outlive the desk. Errors: the ledger's, those of the faces.
problem::ExpectedAll<std::unique_ptr<station::Desk>> kitchen_desk(const Options& options, const QString& program,
                                                                  KeptBook& book, KeptPlan& plan,
                                                                  const std::vector<NamedPrinter>& printers,
                                                                  PrintBoard& board);

}  // namespace lardiner::command
