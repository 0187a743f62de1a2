// The lists of a plan that are carried about: what to pull, what to buy, which lots are not used, the orders.
#pragma once

#include "facts/sheet_phrases.h"
#include "plan/day_plan.h"

namespace lardiner::facts {

/// "Harbour Street 118"; empty where the order names neither site nor number.
QString whom(const SheetPhrases& phrases, const plan::Order& order);

/// In this order; one of which there is nothing to say has no rows.
std::vector<Table> carried_lists(const SheetPhrases& phrases, const plan::DayPlan& plan);

}  // namespace lardiner::facts
