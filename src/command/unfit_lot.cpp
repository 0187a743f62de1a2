// Why a supplier's lot must not have gone into anything.
#include "command/unfit_lot.h"

#include <algorithm>

#include "history/for_use.h"

namespace lardiner::command {

using history::Holder;
using history::Kind;
using history::Where;

namespace {

const QString kAnother = QStringLiteral("use another lot; what was made of it can be recorded on hold: --hold");

// What is open against a lot that has no entry of its own.
QString barred_by_name(ledger::Store& store, qint64 lot) {
  ledger::Statement& rows = store.statement("SELECT max(kind) FROM concern WHERE lot = ? AND kind IN (?, ?)");
  rows.with(lot).with(static_cast<qint64>(Kind::Hold)).with(static_cast<qint64>(Kind::RecallOpened));
  const bool some = rows.one() && !rows.absent(0);
  const qint64 kind = some ? rows.number(0) : -1;
  rows.end();
  if (!some) return {};
  return kind == static_cast<qint64>(Kind::RecallOpened) ? QStringLiteral("in a recall") : QStringLiteral("on hold");
}

bool all_discarded(const history::Lot& lot, const QDateTime& used) {
  return std::all_of(lot.holders.begin(), lot.holders.end(),
                     [&](const Holder& holder) { return holder.where == Where::Discarded && holder.seen <= used; });
}

}  // namespace

Unfit unfit_of(LedgerRun& run, const QString& item, const QString& code, const QDateTime& used) {
  const std::optional<ledger::LotName> name = code.isEmpty() ? std::nullopt : run.ledger.lots().named(code, item);
  if (!name || name->kind == ledger::LotKind::Made) return {};
  if (name->kind == ledger::LotKind::Named) {
    const QString barred = barred_by_name(run.ledger.store(), name->id);
    return barred.isEmpty() ? Unfit{} : Unfit{barred, kAnother};
  }
  const history::Lot* lot = run.ledger.lots().lot(name->id);
  if (!lot) return {};
  if (const QString barred = history::barred(*lot); !barred.isEmpty()) return {barred, kAnother};
  if (lot->holders.empty()) return {QStringLiteral("not in the kitchen: it was not accepted"), kAnother};
  if (all_discarded(*lot, used))
    return {QStringLiteral("not in the kitchen: all of it was discarded before"), kAnother};
  return {};
}

}  // namespace lardiner::command
