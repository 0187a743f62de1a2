// Codes that were scanned or typed into a form, a line each.
#pragma once

#include <set>
#include <vector>

#include "station/visit.h"

namespace lardiner::station {

/// A lot that codes named, and which of its containers; none: the code names the lot alone.
struct ScannedLot {
  ledger::LotName name;
  std::set<int> containers;
  QStringList untrue;  ///< what labels that were scanned say and is true no longer
};

/// By lot, in the order of the lines; a lot and a container once. A number behind a code is that of a container:
/// "A26329CLB03L 5". Errors: each line that opens no lot of the ledger.
problem::ExpectedAll<std::vector<ScannedLot>> scanned_codes(const Visit& visit, const QString& lines);

}  // namespace lardiner::station
