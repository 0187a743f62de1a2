// Rows of batch records and of events as what is appended to the ledger: batches computed with the lots that it has.
#pragma once

#include <vector>

#include "batch/fixed.h"
#include "command/ledger_run.h"
#include "history/event.h"
#include "reader/value.h"

namespace lardiner::command {

/// How often what is appended is computed, where others record each time what may change it.
inline constexpr int kMostAttempts = 5;

struct Recording {
  std::vector<history::Event> events;  ///< batches first, those that others are made of before these; then by time
  problem::Errors errors;              ///< of what cannot be recorded
  problem::Errors held;                ///< of batches that are recorded on hold, where that was asked for
  std::vector<QString> warnings;
};

/// `hold`: a batch without a date is recorded all the same, not released. One whose cooling is still to be shown always
/// is: that is the ordinary course.
Recording recording(LedgerRun& run, const std::vector<reader::Value>& rows, bool decimal_comma, bool hold);

/// What was appended, and what was told of it.
struct Appended {
  std::vector<history::Entry> entries;
  problem::Errors held;
  std::vector<QString> warnings;
};

/// The same, appended: all or none. Where others record meanwhile what a batch is computed from (an allergen, a date, a
/// hold), it is computed anew. Errors: those of the recording; the ledger's.
problem::ExpectedAll<Appended> append_rows(LedgerRun& run, const std::vector<reader::Value>& rows, bool decimal_comma,
                                           bool hold);

}  // namespace lardiner::command
