// lardiner history: one lot, whether it is good, and all that is known of it.
#include "command/commands.h"
#include "command/lot_report.h"
#include "command/output.h"

namespace lardiner::command {

ExitStatus history_of(const Options& options, const HistoryOptions& wish) {
  auto run = read_ledger_run(options, ledger::Access::Read);
  if (!run) return refuse(run.error(), options.json);
  const auto lot = lot_named(run->ledger, wish.lot, wish.item);
  if (!lot) return refuse({lot.error()}, options.json);
  const auto report = lot_report(*run, *lot);
  if (!report) return refuse({report.error()}, options.json);
  const bool printed = options.json ? print(json_of(*run, *report, {})) : print(text(*run, *report, {}));
  return reported(printed, kDone);
}

}  // namespace lardiner::command
