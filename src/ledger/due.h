// What runs out: cooling and time-control deadlines, what is past, what ends today, what to use first.
#pragma once

#include <QDateTime>
#include <vector>

#include "ledger/lineage.h"

namespace lardiner::ledger {

struct Due {
  enum class What {
    Cooling,   ///< the next stage of a cooling must be reached by then
    Running,   ///< ends at a time of day: hot holding, time control, a finished dish
    Past,      ///< to be discarded
    Today,     ///< its last good day is today
    UseFirst,  ///< ends within the days asked for
    Relabel    ///< its label is no longer true; of lots made here
  };
  What what = What::Past;
  LotName lot;
  QDateTime ends;  ///< first instant past; of Cooling the deadline; of Relabel invalid where there is no date
  std::vector<int> containers;
  QString kind, place;
  bool held = false;  ///< on hold, in a recall or not released: not to be used whatever its date
  bool frozen = false;
};

/// By urgency: Cooling, Running (those past among them), Past, Today, UseFirst up to `days` after today, Relabel;
/// within each by end, then lot. Errors: the store's.
problem::Expected<std::vector<Due>> due(Store& store, const QDateTime& now, const QTimeZone& zone, int days);

}  // namespace lardiner::ledger
