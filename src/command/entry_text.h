// One entry of the ledger as a line of a report, and as JSON.
#pragma once

#include <QJsonObject>

#include "history/event.h"

namespace lardiner::command {

/// "A-12  Wed 25 Nov 2026 11:00  frozen, containers 13-24, JO": what it did, when, who; when it was recorded, where
/// that was more than an hour later.
QString entry_line(const history::Entry& entry, const QTimeZone& zone);

QJsonObject entry_json(const history::Entry& entry, const QTimeZone& zone);

}  // namespace lardiner::command
