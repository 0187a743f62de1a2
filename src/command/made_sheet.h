// The sheets of the commands, made of what each is told, before they are handed over.
#pragma once

#include <QJsonObject>

#include "command/sheet_ledger.h"
#include "facts/work_sheet.h"

namespace lardiner::command {

struct MadeSheet {
  facts::WorkSheet sheet;
  QJsonObject json;  ///< the command's report
};

/// Errors: those of the option that asks for too much, or for what there is not.
problem::ExpectedAll<MadeSheet> made_prep(const WorkRun& run, const PrepOptions& wish);
problem::ExpectedAll<MadeSheet> made_assembly(const WorkRun& run, const AssemblyOptions& wish);

/// Errors: an entry that cannot be read; of the note, that nothing was dispatched with it.
problem::ExpectedAll<facts::WorkSheet> made_day_record(SheetLedger& ledger, QDate day);
problem::ExpectedAll<facts::WorkSheet> made_dispatch_note(SheetLedger& ledger, const QString& note);

}  // namespace lardiner::command
