// The sheet of a single batch: what is known of it ahead, and how the sheet is handed over.
#pragma once

#include <QJsonObject>
#include <vector>

#include "command/work_run.h"
#include "facts/work_sheet.h"
#include "plan/drawn_lots.h"

namespace lardiner::command {

/// The batch of the day of the run: its lot where a number is given, and the lots that it takes of what is on hand.
/// Errors: a number that is none, a product without a code for its lots, every fault of the lots on hand.
problem::ExpectedAll<facts::Ahead> batch_ahead(const WorkRun& run, book::Weighing& weighing,
                                               const book::Product& product, const SheetOptions& wish,
                                               const std::vector<plan::Wanted>& wanted);

/// The sheet on the terminal (with --json `report`), or as the PDF that was asked for, everything or nothing.
/// REQUIRES: the run has faces where a PDF is asked for.
ExitStatus hand_over(const Options& options, const SheetOptions& wish, const WorkRun& run,
                     const facts::WorkSheet& sheet, QJsonObject report);

}  // namespace lardiner::command
