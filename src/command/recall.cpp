// lardiner recall: everything that holds a lot, what is on hand of it, and where the rest went, as a sheet.
#include "command/commands.h"
#include "command/ledger_run.h"
#include "command/one_batch.h"
#include "command/output.h"
#include "command/recall_of_ledger.h"
#include "command/sheet_ledger.h"
#include "command/work_sheet_json.h"

namespace lardiner::command {

ExitStatus recall(const Options& options, const RecallOptions& wish) {
  auto ledger = read_sheet_ledger(options, wish.sheet.out);
  if (!ledger) return refuse(ledger.error(), options.json);
  const auto lot = lot_named(ledger->ledger, wish.lot, wish.item);
  if (!lot) return refuse({lot.error()}, options.json);
  const WorkRun& run = ledger->run;
  const auto filled = recall_of({run.book, ledger->ledger, run.now, run.languages.front()->code()}, lot->id);
  if (!filled) return refuse(filled.error(), options.json);
  const auto sheet = facts::recall_sheet(run.setting(), *filled);
  if (!sheet) return refuse(sheet.error(), options.json);
  return hand_over(options, wish.sheet, run, *sheet, json_of(*sheet));
}

}  // namespace lardiner::command
