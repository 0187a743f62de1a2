// What must be bought, in whole buying units.
#include "plan/day_plan_buying.h"

#include <algorithm>

#include "measure/wide.h"
#include "plan/amounts_of.h"

namespace lardiner::plan {

using measure::Quantity;
using measure::Ratio;

namespace {

struct Total {
  measure::Wide amount = 0;
  Instant by = kNever;
};

Buy in_units(const Items& items, const book::Ingredient& ingredient, Quantity need) {
  Buy buy;
  buy.ingredient = &ingredient;
  buy.need = buy.buy = need;
  const std::optional<Quantity> unit =
      ingredient.bought_by ? weight_of(items.weighing, ingredient, *ingredient.bought_by) : std::nullopt;
  if (!unit || unit->amount <= 0) return buy;
  buy.units = need.amount / unit->amount + (need.amount % unit->amount != 0 ? 1 : 0);
  buy.buy = measure::scaled(*ingredient.bought_by, Ratio(*buy.units, 1));
  return buy;
}

}  // namespace

std::vector<Buy> buying(const Items& items, const std::vector<BuyNeed>& needs, const std::vector<Instant>& starts,
                        const Calendar& calendar) {
  std::vector<Total> totals(items.bought.size());
  for (const BuyNeed& need : needs) {
    totals[need.item].amount += need.amount;
    totals[need.item].by = std::min(totals[need.item].by, starts[need.making]);
  }
  std::vector<Buy> buys;
  for (size_t item = 0; item < totals.size(); ++item) {
    if (totals[item].amount == 0 || items.bought[item].ingredient->always_there) continue;
    const Quantity need{measure::Dimension::Mass, measure::saturated(totals[item].amount)};
    buys.push_back(in_units(items, *items.bought[item].ingredient, need));
    buys.back().by = calendar.time(totals[item].by);
  }
  std::sort(buys.begin(), buys.end(), [](const Buy& a, const Buy& b) { return a.ingredient->id < b.ingredient->id; });
  return buys;
}

}  // namespace lardiner::plan
