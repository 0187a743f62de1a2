// What stands in the kitchen, lot by lot, for a form that asks about each.
#pragma once

#include <vector>

#include "history/groups.h"
#include "station/visit.h"

namespace lardiner::station {

/// Containers of a lot that are here and alike.
struct StandingHere {
  ledger::LotName name;
  history::Group group;
};

/// What ends first in front, then by lot; of `place` alone where it is named. Errors: an entry that cannot be read.
problem::Expected<std::vector<StandingHere>> standing_here(Desk& desk, const QString& place);

/// Part of a form's names that tells the lot: "A26329CLB03L|chilli-lime-butter".
QString key_of(const ledger::LotName& name);

/// "5 tubs (5–9)", until when, as its label says it, and where it is not good why. For who is signed in.
void add_standing(const Visit& visit, Part& row, const StandingHere& here);

}  // namespace lardiner::station
