// A lot as it stood before one of its entries: what its containers held then.
#include "ledger/lot_before.h"

#include <algorithm>

#include "ledger/entries.h"

namespace lardiner::ledger {

using history::Lot;

namespace {

// What a batch took, at the place of its entry.
struct Draw {
  qint64 seq;
  measure::Quantity amount;
};

std::vector<Draw> draws(Store& store, qint64 lot, qint64 seq) {
  std::vector<Draw> found;
  Statement& rows = store.statement(
      "SELECT lot.seq, amount, input.dimension FROM input JOIN lot ON lot.id = input.output"
      " WHERE input.input = ? AND assumed = 0 AND amount IS NOT NULL AND lot.seq < ? ORDER BY lot.seq");
  rows.with(lot).with(seq);
  while (rows.next())
    found.push_back({rows.number(0), {static_cast<measure::Dimension>(rows.number(2)), rows.number(1)}});
  return found;
}

void take_until(Lot& lot, std::vector<Draw>& waiting, qint64 seq) {
  const auto later = std::find_if(waiting.begin(), waiting.end(), [&](const Draw& draw) { return draw.seq >= seq; });
  for (auto draw = waiting.begin(); draw != later; ++draw)
    if (!lot.holders.empty() && lot.holders.front().holds.dimension == draw->amount.dimension)
      history::take(lot, draw->amount, {}, lot.began);
  waiting.erase(waiting.begin(), later);
}

}  // namespace

problem::Expected<Lot> lot_before(Store& store, qint64 id, qint64 seq) {
  const auto entries = entries_of_lot(store, id);
  if (!entries) return tl::unexpected(entries.error());
  std::vector<Draw> waiting = draws(store, id, seq);
  if (store.fault()) return tl::unexpected(*store.fault());
  if (entries->empty() || entries->front().seq >= seq)
    return tl::unexpected(
        problem::Error{problem::Code::Conflict, QStringLiteral("an entry befell a lot before the lot was begun"),
                       at_file(store.path()), QStringLiteral("lardiner verify tells whether it was changed")});
  problem::Expected<Lot> lot = history::begin(entries->front().entry);
  if (!lot) return lot;
  for (auto recorded = entries->begin() + 1; recorded != entries->end() && recorded->seq < seq; ++recorded) {
    take_until(*lot, waiting, recorded->seq);
    const problem::Errors errors = history::happen(*lot, recorded->entry);
    if (!errors.empty()) return tl::unexpected(errors.front());
  }
  take_until(*lot, waiting, seq);
  return lot;
}

}  // namespace lardiner::ledger
