// Which dates the lots on hand must show, and why one is passed over.
#include "plan/day_plan_on_hand.h"

#include <algorithm>

#include "batch/use_by_limits.h"
#include "plan/amounts_of.h"

namespace lardiner::plan {

using book::EndKind;
using book::State;
using measure::Quantity;

namespace {

// Food is moved from the freezer to the walk-in a day before it is used: common practice, no source.
constexpr Instant kThawing = 24 * 3600 * kSecond;

Row row_of(State state, const std::optional<batch::StatedEnd>& date, bool tcs) {
  const bool frozen = state == State::Frozen;
  if (!date) return frozen ? Row::FrozenUndated : Row::Quality;
  const bool quality = date->kind == EndKind::BestBefore;
  if (frozen) return quality ? Row::FrozenQuality : Row::FrozenDated;
  return quality && !tcs ? Row::Quality : Row::Dated;
}

Instant end_of(const std::optional<batch::StatedEnd>& date) { return date ? date->end.toMSecsSinceEpoch() : kForever; }

std::int64_t planned_amount(Items& items, const HandLot& at, Quantity quantity) {
  if (!at.made)
    return weight_of(items.weighing, *items.bought[at.item].ingredient, quantity).value_or(Quantity{}).amount;
  const Quantity amount = amount_of(items.weighing, *items.made[at.item].product, quantity).value_or(Quantity{});
  const std::int64_t piece = measure::one(measure::Unit::Piece).amount;
  return amount.dimension == measure::Dimension::Count ? amount.amount / piece * piece : amount.amount;
}

std::optional<HandLot> placed(const Items& items, const OnHand& lot) {
  HandLot out;
  if (const std::optional<size_t> made = items.made_index(lot.item)) {
    out.made = true;
    out.item = *made;
    return out;
  }
  const std::optional<size_t> bought = items.bought_index(lot.item);
  if (!bought) return std::nullopt;
  out.item = *bought;
  return out;
}

}  // namespace

OnHandRows on_hand_rows(Items& items, const std::vector<OnHand>& on_hand, LotDates dates, const Calendar& calendar) {
  OnHandRows out;
  for (size_t i = 0; i < on_hand.size(); ++i) {
    const OnHand& lot = on_hand[i];
    const std::optional<batch::StatedEnd> date = dates.of(lot);
    const Instant end = end_of(date);
    if (std::min(end, end_of(lot.use_by)) <= calendar.now()) {
      out.past.push_back({i, PassedOver::Why::PastDate});
      continue;
    }
    std::optional<HandLot> at = placed(items, lot);
    if (!at) continue;
    at->lot = i;
    at->end = end;
    at->amount = planned_amount(items, *at, lot.quantity);
    const bool tcs = at->made ? items.made[at->item].tcs : items.bought[at->item].tcs;
    at->row = row_of(lot.state, date, tcs);
    const bool unknown = tcs && !date && lot.state != State::Frozen;
    (unknown ? out.undated : out.lots).push_back(*at);
  }
  return out;
}

Instant thawed_end(const std::vector<book::ShelfLife>& lives, Instant at, bool thaws, const Calendar& calendar) {
  const auto life =
      std::find_if(lives.begin(), lives.end(), [](const book::ShelfLife& l) { return l.state == State::Thawed; });
  if (life == lives.end()) return 0;
  const Instant taken = thaws ? at : std::max(calendar.now(), thaw_by(at));
  return batch::make_limit({}, life->length, calendar.time(taken), calendar.zone()).end.toMSecsSinceEpoch();
}

// The thawed days are counted by the day on which it leaves the freezer.
Instant first_thawed(const std::vector<book::ShelfLife>& lives, Instant at, Instant until, bool thaws,
                     const Calendar& calendar) {
  const Instant thawing = thaws ? 0 : kThawing;
  for (Instant taken = calendar.now(); taken + thawing < at; taken = calendar.start(calendar.day_of(taken) + 1))
    if (thawed_end(lives, taken + thawing, thaws, calendar) >= until) return taken + thawing;
  return at;
}

Instant thaw_by(Instant at) { return at - kThawing; }

bool time_to_thaw(Instant at, bool thaws, const Calendar& calendar) { return thaws || thaw_by(at) >= calendar.now(); }

}  // namespace lardiner::plan
