// What stands on hand of one item, the first to expire in front; each gram is taken once.
#include "plan/day_plan_shelf.h"

#include <algorithm>
#include <numeric>
#include <tuple>

#include "measure/wide.h"

namespace lardiner::plan {

void Shelf::add(Row row, size_t lot, Instant end, std::int64_t amount) {
  if (amount > 0) rows_[static_cast<size_t>(row)].lots.push_back({end, lot, amount, amount, row >= Row::FrozenDated});
}

void Shelf::sort() {
  for (Lots& row : rows_) {
    std::sort(row.lots.begin(), row.lots.end(),
              [](const Lot& a, const Lot& b) { return std::tie(a.end, a.lot) < std::tie(b.end, b.lot); });
    row.next.resize(row.lots.size() + 1);
    std::iota(row.next.begin(), row.next.end(), size_t{0});
  }
}

// Empty lots are skipped for good, so that all takings together cost little more than one walk.
size_t Shelf::first_left(Lots& row, size_t at) {
  size_t found = at;
  while (found < row.lots.size() && row.lots[found].left == 0) found = std::max(row.next[found], found + 1);
  while (at < found) {
    const size_t after = std::max(row.next[at], at + 1);
    row.next[at] = found;
    at = after;
  }
  return found;
}

Shelf::Lot* Shelf::first(Row row, Instant least) {
  Lots& lots = rows_[static_cast<size_t>(row)];
  if (least == kNever || lots.lots.empty()) return nullptr;
  const auto from = std::lower_bound(lots.lots.begin(), lots.lots.end(), least,
                                     [](const Lot& lot, Instant end) { return lot.end < end; });
  const size_t at = first_left(lots, static_cast<size_t>(from - lots.lots.begin()));
  return at < lots.lots.size() ? &lots.lots[at] : nullptr;
}

Shelf::Lot* Shelf::first_of(const LeastEnds& least, Row a, Row b) {
  Lot* one = first(a, least[static_cast<size_t>(a)]);
  Lot* other = first(b, least[static_cast<size_t>(b)]);
  if (!one || !other) return one ? one : other;
  return std::tie(other->end, other->lot) < std::tie(one->end, one->lot) ? other : one;
}

Shelf::Lot* Shelf::first_of(const LeastEnds& least) {
  if (Lot* lot = first_of(least, Row::Dated, Row::Quality)) return lot;
  if (Lot* lot = first_of(least, Row::FrozenDated, Row::FrozenQuality)) return lot;
  return first(Row::FrozenUndated, least[static_cast<size_t>(Row::FrozenUndated)]);
}

std::vector<Shelf::Taken> Shelf::take(const LeastEnds& least, std::int64_t wanted) {
  std::vector<Taken> taken;
  while (wanted > 0) {
    Lot* lot = first_of(least);
    if (!lot) break;
    const std::int64_t amount = std::min(wanted, lot->left);
    lot->left -= amount;
    wanted -= amount;
    taken.push_back({lot->lot, amount, lot->frozen});
  }
  return taken;
}

std::int64_t Shelf::left(const LeastEnds& least) const {
  measure::Wide all = 0;
  for (size_t row = 0; row < kRows; ++row)
    for (const Lot& lot : rows_[row].lots)
      if (least[row] != kNever && lot.end >= least[row]) all += lot.left;
  return measure::saturated(all);
}

std::vector<size_t> Shelf::untouched(Row row) const {
  std::vector<size_t> lots;
  for (const Lot& lot : rows_[static_cast<size_t>(row)].lots)
    if (lot.left == lot.amount) lots.push_back(lot.lot);
  return lots;
}

}  // namespace lardiner::plan
