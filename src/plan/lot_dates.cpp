// Until when a lot on hand is good, where the kitchen's own rules say less than its label.
#include "plan/lot_dates.h"

#include "batch/compute_lookup.h"
#include "book/standing.h"

namespace lardiner::plan {

using batch::StatedEnd;
using book::EndKind;
using book::State;

LotDates::LotDates(const book::Book& book, const std::vector<OnHand>& lots, Keeping& keeping, const Calendar& calendar)
    : book_(book), keeping_(keeping), calendar_(calendar) {
  QStringList ids;
  for (const OnHand& lot : lots)
    if (lot.prepared && book.product(lot.item)) ids += lot.item;
  ids.removeDuplicates();
  const book::Reach reached = book::reach(book, ids);
  const book::Standings standings(book, reached);
  for (const QString& id : ids) {
    const bool ready = standings.of(id).readiness >= book::Readiness::CookedReadyToEat;
    ways_.insert(id, keeping.way(*book.product(id), ready, {}));
  }
}

std::optional<StatedEnd> LotDates::of(const OnHand& lot) {
  const bool tcs = batch::is_tcs(book_, lot.item);
  const bool unsealed = lot.state == State::Thawed || lot.state == State::Opened;
  if (tcs && unsealed && lot.use_by && lot.use_by->kind == EndKind::BestBefore) return std::nullopt;
  const std::optional<StatedEnd> kept_until = kept(lot);
  if (!kept_until) return lot.use_by;
  if (!lot.use_by) return tcs ? std::nullopt : kept_until;  // nobody knows how old what is in it was
  StatedEnd earlier = kept_until->end < lot.use_by->end ? *kept_until : *lot.use_by;
  if (lot.use_by->kind == EndKind::UseBy) earlier.kind = EndKind::UseBy;
  return earlier;
}

// By the start of its making, or of that day; nothing where nothing limits it, or the book does not say.
std::optional<StatedEnd> LotDates::kept(const OnHand& lot) {
  const bool counts = lot.state == State::Chilled || lot.state == State::Ambient;
  const auto way = ways_.constFind(lot.item);
  if (!counts || !lot.prepared || way == ways_.constEnd()) return std::nullopt;
  const Instant end = keeping_.end(*way, lot.prepared->toMSecsSinceEpoch());
  if (end == 0 || end == kForever) return std::nullopt;
  return StatedEnd{calendar_.time(end), keeping_.by_day(*way),
                   keeping_.quality_only(*way) ? EndKind::BestBefore : EndKind::UseBy};
}

}  // namespace lardiner::plan
