// What stood in a place at a time in the past and does not any more.
#include "command/stood_there.h"

#include <algorithm>
#include <set>

#include "batch/clock.h"
#include "ledger/entries.h"
#include "ledger/on_hand.h"

namespace lardiner::command {

namespace {

using history::Event;
using history::Kind;

// By which a container can leave a place.
bool takes_away(Kind kind) {
  return kind == Kind::Moved || kind == Kind::Dispatched || kind == Kind::Used || kind == Kind::Discarded ||
         kind == Kind::Counted || kind == Kind::Made || kind == Kind::Split;
}

// The lots that something was taken from after `then`.
std::set<qint64> taken_from(LedgerRun& run, const QDateTime& then) {
  std::set<qint64> lots;
  const QDate from = batch::local_day(then, run.zone()), to = batch::local_day(run.now, run.zone());
  (void)ledger::each_of_days(run.ledger.store(), from, to, [&](const ledger::Recorded& recorded) {
    const Event& event = recorded.entry.event;
    if (!takes_away(event.kind) || event.at <= then) return true;
    for (const ledger::LotName& name : run.ledger.lots().named(event.lot)) lots.insert(name.id);
    return true;
  });
  return lots;
}

// As what had happened by then left it, in the order in which it was recorded.
bool stood(const std::vector<ledger::Recorded>& entries, const QString& place, const QDateTime& then) {
  if (entries.empty() || entries.front().entry.event.at > then) return false;
  auto lot = history::begin(entries.front().entry);
  for (size_t at = 1; lot && at < entries.size(); ++at)
    if (entries[at].entry.event.at <= then) (void)history::happen(*lot, entries[at].entry);
  return lot && std::any_of(lot->holders.begin(), lot->holders.end(), [&](const history::Holder& holder) {
           return holder.where == history::Where::Here && holder.place == place;
         });
}

}  // namespace

std::vector<ledger::LotName> left_since(LedgerRun& run, const QString& place, const QDateTime& then) {
  ledger::Store& store = run.ledger.store();
  const std::vector<qint64> here = ledger::lots_in(store, place);
  std::vector<ledger::LotName> left;
  for (const qint64 id : taken_from(run, then)) {
    if (std::find(here.begin(), here.end(), id) != here.end()) continue;
    const auto entries = ledger::entries_of_lot(store, id);
    const auto name = run.ledger.lots().named(id);
    if (entries && name && stood(*entries, place, then)) left.push_back(*name);
  }
  return left;
}

}  // namespace lardiner::command
