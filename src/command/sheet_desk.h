// The sheets that the station shows and prints: those of the commands.
#pragma once

#include "command/kitchen.h"
#include "facts/work_sheet.h"
#include "station/desk.h"

namespace lardiner::command {

/// In `language`, a code; empty: in the languages of the kitchen's sheets. Errors: the command's, without the names of
/// its options.
problem::ExpectedAll<facts::WorkSheet> sheet_for(const Options& options, const station::SheetWish& wish,
                                                 const QString& language);

}  // namespace lardiner::command
