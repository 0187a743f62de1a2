// Why a supplier's lot must not have gone into anything.
#pragma once

#include "command/ledger_run.h"

namespace lardiner::command {

struct Unfit {
  QString why;     ///< "on hold"; empty: nothing is known against it
  QString remedy;  ///< a hint
};

/// On hold or in a recall, also when it is known only from what was made of it; not accepted when it came; all of it
/// discarded before `used`. Of a lot of ours nothing is said.
Unfit unfit_of(LedgerRun& run, const QString& item, const QString& code, const QDateTime& used);

}  // namespace lardiner::command
