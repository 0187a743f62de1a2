// What an entry does to one lot: its state, and the rows that say so.
#include "ledger/project_lot.h"

#include "history/holders.h"

namespace lardiner::ledger {

using history::Event;
using history::Holder;
using history::Kind;
using history::Lot;

namespace {

// All that can befall food may date it, also at an instant at which something else befell it.
Dated dated_by(Kind kind) {
  switch (kind) {
    case Kind::Moved:
    case Kind::Used:
    case Kind::Counted:
    case Kind::Dispatched:
    case Kind::Arrived:
    case Kind::Hold:
    case Kind::Release:
    case Kind::Printed:
    case Kind::Reprinted:
    case Kind::Voided:
    case Kind::RecallOpened:
    case Kind::RecallClosed:
    case Kind::PrintAsked:
    case Kind::PrintSent:
    case Kind::PrintDone:
      return Dated::Changed;
    default:
      return Dated::All;
  }
}

}  // namespace

void resolve_containers(const Work& work, qint64 id, Event& event) {
  if (!event.containers.empty() || !history::befalls_containers(event.kind)) return;
  Lot* lot = work.lots.lot(id);
  if (!lot) return;
  problem::Errors told_later;  // by the event itself
  for (const Holder* holder : history::touched(*lot, event, told_later)) event.containers.push_back(holder->number);
}

problem::Errors befall(const Work& work, qint64 id, const history::Entry& entry) {
  Lot* lot = work.lots.lot(id);
  if (!lot) return work.lots.unreadable() ? problem::Errors{*work.lots.unreadable()} : problem::Errors{};
  touch(work, id);
  const State before = state_of(*lot);
  const problem::Errors errors = history::happen(*lot, entry);
  if (errors.empty()) write_state(work, id, *lot, before, dated_by(entry.event.kind));
  return errors;
}

void touch(const Work& work, qint64 lot) {
  work.store.statement("INSERT OR IGNORE INTO touched (lot, seq) VALUES (?, ?)").with(lot).with(work.seq).run();
}

State state_of(const Lot& lot) {
  State state;
  state.held = static_cast<qint64>(lot.holds.size());
  state.refused = lot.made && !lot.made->batch.refused.empty();
  if (lot.made)
    if (const std::optional<QDateTime> due = batch::cooling_due(*lot.made)) state.cooling_due = due->toSecsSinceEpoch();
  return state;
}

void write_state(const Work& work, qint64 id, const Lot& lot, const State& before, Dated dated) {
  const State now = state_of(lot);
  if (!(now == before))
    work.store.statement("UPDATE lot SET held = ?, refused = ?, cooling_due = ? WHERE id = ?")
        .with(now.held)
        .with(qint64{now.refused})
        .with(now.cooling_due)
        .with(id)
        .run();
  write_holders(work.store, id, lot, dated, work.lots.rows(id));
}

}  // namespace lardiner::ledger
