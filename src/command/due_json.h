// What is due, as JSON.
#pragma once

#include <QJsonObject>
#include <vector>

#include "command/ledger_run.h"
#include "ledger/due.h"

namespace lardiner::command {

/// {"due": [{"what": "cooling", "lot": …, "containers": [1, 2], "ends": "2026-11-25T14:00:00-05:00", …}, …]}
QJsonObject due_json(const LedgerRun& run, const std::vector<ledger::Due>& all);

}  // namespace lardiner::command
