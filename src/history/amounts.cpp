// How much of a lot is where: what is taken from its containers, and whether all of it is accounted for.
#include <algorithm>

#include "history/lot.h"

namespace lardiner::history {

using measure::Quantity;

namespace {

bool begun(const Holder& holder) { return holder.opened || measure::less(holder.left, holder.holds); }

std::vector<Holder*> in_order(Lot& lot, const std::vector<int>& containers) {
  std::vector<Holder*> holders;
  for (Holder& holder : lot.holders) {
    const bool named =
        containers.empty() || std::find(containers.begin(), containers.end(), holder.number) != containers.end();
    if (named && holder.where == Where::Here && holder.holds.dimension == lot.quantity.dimension)
      holders.push_back(&holder);
  }
  std::stable_partition(holders.begin(), holders.end(), [](const Holder* holder) { return begun(*holder); });
  return holders;
}

// What is left to be taken once `holder` has given what it has.
Quantity taken_from(Holder& holder, Quantity wanted) {
  if (holder.holds.amount == 0) return {wanted.dimension, 0};
  const Quantity given = measure::less(wanted, holder.left) ? wanted : holder.left;
  holder.left = holder.left - given;
  if (holder.left.amount == 0) holder.where = Where::Used;
  return wanted - given;
}

}  // namespace

Quantity take(Lot& lot, Quantity quantity, const std::vector<int>& containers, const QDateTime& at) {
  if (quantity.dimension != lot.quantity.dimension) return quantity;
  for (Holder* const holder : in_order(lot, containers)) {
    if (quantity.amount <= 0) break;
    quantity = taken_from(*holder, quantity);
    if (!holder->seen.isValid() || holder->seen < at) holder->seen = at;
  }
  return quantity;
}

Balance balance(const Lot& lot, Quantity drawn) {
  const Quantity none{lot.quantity.dimension, 0};
  Balance sum{lot.quantity, lot.used + drawn, none, none, none, none, none, 0};
  for (const Holder& holder : lot.holders) {
    if (holder.left.dimension != none.dimension) continue;
    switch (holder.where) {
      case Where::Here:
        sum.on_hand = sum.on_hand + holder.left;
        break;
      case Where::Dispatched:
      case Where::AtSite:
        sum.dispatched = sum.dispatched + holder.left;
        break;
      case Where::Discarded:
        sum.discarded = sum.discarded + holder.left;
        break;
      case Where::Missing:
        sum.missing = sum.missing + holder.left;
        break;
      case Where::Used:
        break;
    }
  }
  sum.difference = sum.made - sum.used - sum.dispatched - sum.discarded - sum.missing - sum.on_hand;
  return sum;
}

}  // namespace lardiner::history
