// What was made of a lot before something that had befallen it was recorded.
#include "command/late_warnings.h"

#include <algorithm>

#include "batch/read_records_parts.h"
#include "command/lot_called.h"
#include "command/sheet_ledger.h"
#include "ledger/lineage.h"

namespace lardiner::command {

namespace {

using history::Event;
using history::Kind;

// Whether it may make an earlier date or an unfit food of what was in use after it.
bool counts(const Event& event, const history::Lot* lot) {
  switch (event.kind) {
    case Kind::Opened:
    case Kind::Thawed:
    case Kind::HotHeld:
    case Kind::TimeControl:
    case Kind::Discarded:
    case Kind::Hold:
      return true;
    case Kind::Cooled:
    case Kind::Made:
      return lot && lot->made && !lot->made->batch.refused.empty();
    default:
      return false;
  }
}

// Of what was made of it, that which was made after the event; of food that is unfit whenever it was made, all.
bool was_made_after(const Event& event, const history::Lot& lot) {
  const bool whenever = event.kind == Kind::Cooled || event.kind == Kind::Made || event.kind == Kind::Hold;
  return whenever || batch::latest_use(lot.made->batch.record, lot.zone) >= event.at;
}

// What is recorded together with the opening or thawing of a supplier's package was computed with it.
bool was_computed_with(const Event& event, const ledger::LotName& of, const QString& made,
                       const std::vector<history::Entry>& entries) {
  if (of.kind == ledger::LotKind::Made || (event.kind != Kind::Opened && event.kind != Kind::Thawed)) return false;
  return std::any_of(entries.begin(), entries.end(), [&](const history::Entry& entry) {
    return entry.event.kind == Kind::Made && entry.event.lot == made;
  });
}

QStringList made_of(LedgerRun& run, const Event& event, const ledger::LotName& name,
                    const std::vector<history::Entry>& entries) {
  QStringList lots;
  for (const ledger::LotName& other : ledger::lots_reached(run.ledger.store(), name.id, ledger::Direction::Forward)) {
    const history::Lot* lot = other.id == name.id ? nullptr : run.ledger.lots().lot(other.id);
    if (lot && lot->made && was_made_after(event, *lot) && !was_computed_with(event, name, other.code, entries))
      lots << called(run.book, other);
  }
  return lots;
}

}  // namespace

problem::Errors late_warnings(LedgerRun& run, const std::vector<history::Entry>& entries) {
  problem::Errors warnings;
  for (const history::Entry& entry : entries) {
    const Event& event = entry.event;
    for (const ledger::LotName& name : run.ledger.lots().named(event.lot)) {
      const history::Lot* lot = run.ledger.lots().lot(name.id);
      const bool meant = !event.lot.isEmpty() && (event.item.isEmpty() || event.item == name.item);
      if (!meant || !counts(event, lot)) continue;
      const QStringList lots = made_of(run, event, name, entries);
      if (lots.isEmpty()) continue;
      warnings.push_back(
          {problem::Code::Unsafe,
           QStringLiteral("warning: made of lot %1 before this was known: %2")
               .arg(event.lot, first_of(lots, QStringLiteral("; "))),
           event.source,
           QStringLiteral("put on hold what is no better than that lot (event=hold), or correct its date "
                          "(event=correction use_by=…)")});
    }
  }
  return warnings;
}

}  // namespace lardiner::command
