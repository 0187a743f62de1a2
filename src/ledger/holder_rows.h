// The rows of a lot's containers: what they say, and writing no more of them than differs.
#pragma once

#include <optional>
#include <vector>

#include "history/lot.h"
#include "ledger/store.h"

namespace lardiner::ledger {

/// A row of `holder` but for its lot and number; instants in seconds since 1970 UTC.
struct HolderRow {
  qint64 whereabouts = 0;
  QString place, site, note, kind;
  qint64 holds = 0, remains = 0;
  std::optional<qint64> ends;  ///< the first instant past, as history shows it; absent: none can be told
  qint64 running = 0, frozen = 0, opened = 0, labelled = 0, superseded = 0, seen = 0;
  friend bool operator==(const HolderRow&, const HolderRow&) = default;
};

/// Those of a lot, by the containers' numbers from 1.
std::vector<HolderRow> holder_rows(Store& store, qint64 lot);

/// Which containers an entry may date anew: those alone whose rows say something else now, or all.
enum class Dated { Changed, All };

/// Writes what the containers say now where it differs from `rows`, which is what the table says, and then says that.
/// Neighbours that changed alike are written together.
void write_holders(Store& store, qint64 id, const history::Lot& lot, Dated dated, std::vector<HolderRow>& rows);

}  // namespace lardiner::ledger
