// Whether the containers of a lot are good now, group by group, and whether a label still tells the truth.
#pragma once

#include "command/lot_report.h"

namespace lardiner::command {

/// "GOOD", "PAST ITS DATE", "NOT RELEASED", "ON HOLD", "IN A RECALL", "NO DATE", "GONE"
QString verdict(history::Good::State state);

/// What a scanned label shows when it is no longer true: "SUPERSEDED: this label shows …"; empty: it is.
QString superseded(const LedgerRun& run, const history::Lot& lot, const Asked& asked);

/// The date that the code of a container's present label shows, as its attribute; empty: none.
QString present_end(const LedgerRun& run, const history::Lot& lot, int container);

/// The same as words: "use by Tue 01 Dec 2026".
QString end_in_words(const QString& attribute, const QDateTime& now);

}  // namespace lardiner::command
