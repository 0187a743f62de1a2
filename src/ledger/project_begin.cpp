// What begins a lot: a batch with its inputs, or a receipt.
#include "ledger/project_begin.h"

#include <algorithm>

#include "batch/read_records_parts.h"
#include "history/for_use.h"
#include "history/lot.h"
#include "ledger/entries.h"
#include "ledger/further_allergens.h"
#include "ledger/reach.h"

namespace lardiner::ledger {

using history::Entry;
using history::Event;
using history::Kind;
using history::Lot;
using problem::Code;
using problem::Error;
using problem::Errors;

namespace {

void add_name(const Work& work, const QString& code, const QString& item, const QString& supplier_item) {
  work.store
      .statement("INSERT INTO lot (code, item, supplier_item, kind, name, held, refused) VALUES (?, ?, ?, 0, '', 0, 0)")
      .with(code)
      .with(item)
      .with(supplier_item)
      .run();
  work.lots.read_again(code);
}

// The lot's row, made as a name alone where there is none.
qint64 ensure(const Work& work, const QString& code, const QString& item, const QString& supplier_item) {
  const std::optional<qint64> known = work.lots.id(code, item);
  if (known) return *known;
  add_name(work, code, item, supplier_item);
  return work.lots.id(code, item).value_or(0);
}

// The row of a lot that begins, in place of the name that it was, if it was one.
qint64 write_begun(const Work& work, const Lot& lot, LotKind kind) {
  std::optional<qint64> dimension;
  if (!lot.holders.empty()) dimension = static_cast<qint64>(lot.holders.front().holds.dimension);
  const State state = state_of(lot);
  work.store
      .statement(
          "INSERT INTO lot (code, item, supplier_item, kind, seq, began, name, dimension, held, refused, cooling_due)"
          " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (code, item) DO UPDATE SET kind = excluded.kind,"
          " seq = excluded.seq, began = excluded.began, name = excluded.name, dimension = excluded.dimension,"
          " supplier_item = excluded.supplier_item, held = excluded.held, refused = excluded.refused,"
          " cooling_due = excluded.cooling_due")
      .with(lot.code)
      .with(lot.item)
      .with(lot.supplier_item)
      .with(static_cast<qint64>(kind))
      .with(work.seq)
      .with(lot.began.toSecsSinceEpoch())
      .with(lot.made ? lot.made->name : QString())
      .with(dimension)
      .with(state.held)
      .with(qint64{state.refused})
      .with(state.cooling_due)
      .run();
  work.lots.read_again(lot.code);
  return work.lots.id(lot.code, lot.item).value_or(0);
}

// What batches that were recorded before took from it.
void take_what_went(const Work& work, qint64 id, Lot& lot) {
  Statement& rows = work.store.statement(
      "SELECT amount, dimension FROM input WHERE input = ? AND amount IS NOT NULL AND assumed = 0");
  rows.with(id);
  while (rows.next()) {
    const measure::Quantity amount{static_cast<measure::Dimension>(rows.number(1)), rows.number(0)};
    history::take(lot, amount, {}, lot.began);
  }
}

// One edge. The same lot as two inputs of a batch is one edge with the sum of both.
void connect(const Work& work, qint64 output, qint64 input, bool assumed,
             const std::optional<measure::Quantity>& amount) {
  std::optional<qint64> value, dimension;
  if (amount) {
    value = amount->amount;
    dimension = static_cast<qint64>(amount->dimension);
  }
  work.store
      .statement(
          "INSERT INTO input (output, input, assumed, amount, dimension) VALUES (?, ?, ?, ?, ?)"
          " ON CONFLICT (output, input) DO UPDATE SET assumed = min(assumed, excluded.assumed),"
          " amount = CASE WHEN amount IS NULL THEN excluded.amount"
          " WHEN dimension IS excluded.dimension THEN amount + excluded.amount ELSE amount END,"
          " dimension = coalesce(dimension, excluded.dimension)")
      .with(output)
      .with(input)
      .with(qint64{assumed})
      .with(value)
      .with(dimension)
      .run();
}

// An open recall of a lot is one of all that is made of it later.
void inherit_recalls(const Work& work, qint64 output, qint64 input) {
  if (!work.lots.any_recalled()) return;
  work.store
      .statement(
          "INSERT OR IGNORE INTO concern (seq, lot, kind) SELECT seq, ?, kind FROM concern WHERE lot = ? AND kind = ?")
      .with(output)
      .with(input)
      .with(static_cast<qint64>(Kind::RecallOpened))
      .run();
}

// Of an input whose lot nobody wrote, those of all lots of its item that may have been it.
void inherit_recalls_of_item(const Work& work, qint64 output, const QString& item, const QDateTime& used) {
  if (!work.lots.any_recalled()) return;
  work.store
      .statement(
          "INSERT OR IGNORE INTO concern (seq, lot, kind) SELECT concern.seq, ?, concern.kind FROM lot"
          " JOIN concern ON concern.lot = lot.id WHERE lot.item = ? AND lot.code <> '' AND concern.kind = ?"
          " AND (lot.began IS NULL OR lot.began <= ?)")
      .with(output)
      .with(item)
      .with(static_cast<qint64>(Kind::RecallOpened))
      .with(used.toSecsSinceEpoch())
      .run();
}

void draw(const Work& work, qint64 input, const batch::Input& from, const QDateTime& at) {
  if (!from.quantity) return;
  Lot* lot = work.lots.lot(input);
  if (!lot || lot->holders.empty() || lot->holders.front().holds.dimension != from.quantity->dimension) return;
  const State before = state_of(*lot);
  history::take(*lot, *from.quantity, {}, at);
  write_state(work, input, *lot, before, Dated::Changed);
}

// Of a making.
struct Time {
  QDateTime begun, over;
};

// Where nobody wrote the lot it is assumed to be any of the candidates, and besides one that nobody named: a lot of the
// same day that was not recorded yet may have been it.
void add_input(const Work& work, qint64 output, const batch::Input& input, const Time& time) {
  const bool known = !input.lot.isEmpty();
  for (const QString& code : known ? QStringList{input.lot} : input.candidates + QStringList{QString()}) {
    const qint64 id = ensure(work, code, input.item, known ? input.supplier_item : QString());
    connect(work, output, id, !known, known ? input.quantity : std::nullopt);
    inherit_recalls(work, output, id);
    if (known) draw(work, id, input, time.begun);
  }
  if (!known) inherit_recalls_of_item(work, output, input.item, time.over);
}

// The package that an opened, thawed, cut or decanted ingredient came out of.
batch::Input package_of(const batch::Record& record) {
  batch::Input package;
  package.item = record.item;
  package.supplier_item = record.supplier_item;
  package.lot = record.supplier_lot;
  package.quantity = record.quantity;
  return package;
}

void add_inputs(const Work& work, qint64 output, const batch::Record& record, const QTimeZone& zone) {
  const Time time{record.made_at, batch::latest_use(record, zone)};
  for (const batch::Input& input : record.inputs) add_input(work, output, input, time);
  if (record.deed != batch::Deed::Made) add_input(work, output, package_of(record), time);
}

// An earlier correction reaches a lot that it did not know; once.
Errors take_on(const Work& work, qint64 lot, qint64 seq, const Entry& correction) {
  Statement& row = work.store.statement("SELECT 1 FROM concern WHERE seq = ? AND lot = ?").with(seq).with(lot);
  const bool has = row.one();
  row.end();
  if (has) return {};
  work.store.statement("INSERT INTO concern (seq, lot, kind) VALUES (?, ?, ?)")
      .with(seq)
      .with(lot)
      .with(static_cast<qint64>(Kind::Correction))
      .run();
  return befall({work.store, work.lots, seq}, lot, correction);
}

// Corrections of what its supplier's item declares that came before it did: they are of it, and of what is recorded as
// made of it.
Errors take_on_additions(const Work& work, qint64 received, const Event& event) {
  for (const Addition& addition : additions(work.store, event.item, event.supplier_item, event.lot)) {
    if (!stands(addition, event.checked)) continue;
    const auto correction = entry_at(work.store, addition.seq);
    if (!correction) return {correction.error()};
    for (const qint64 lot : reach(work.store, {received}, Direction::Forward)) {
      const Errors errors = *correction ? take_on(work, lot, addition.seq, (*correction)->entry) : Errors();
      if (!errors.empty()) return errors;
    }
  }
  return {};
}

bool declares_all(const batch::Fixed& fixed, const QStringList& substances) {
  return std::all_of(substances.begin(), substances.end(),
                     [&](const QString& substance) { return history::declares(fixed.batch.declared, substance); });
}

// Corrections that its inputs have, where it was recorded without what they add.
Errors inherit_additions(const Work& work, qint64 made, const Event& event) {
  if (!work.lots.any_additions()) return {};
  std::vector<qint64> corrections;
  Statement& rows = work.store.statement(
      "SELECT DISTINCT concern.seq FROM input JOIN concern ON concern.lot = input.input"
      " WHERE output = ? AND kind = ? ORDER BY concern.seq");
  rows.with(made).with(static_cast<qint64>(Kind::Correction));
  while (rows.next()) corrections.push_back(rows.number(0));
  for (const qint64 seq : corrections) {
    const auto correction = entry_at(work.store, seq);
    if (!correction) return {correction.error()};
    if (!*correction || declares_all(*event.made, (*correction)->entry.event.adds)) continue;
    const Errors errors = take_on(work, made, seq, (*correction)->entry);
    if (!errors.empty()) return errors;
  }
  return {};
}

// Recalls of what is in it, and corrections of it, that came before it was recorded.
Errors catch_up(const Work& work, qint64 id, Lot& lot) {
  std::vector<qint64> concerns;
  Statement& rows = work.store.statement("SELECT seq FROM concern WHERE lot = ? AND seq < ? ORDER BY seq");
  rows.with(id).with(work.seq);
  while (rows.next()) concerns.push_back(rows.number(0));
  for (const qint64 seq : concerns) {
    const auto recorded = entry_at(work.store, seq);
    if (!recorded) return {recorded.error()};
    if (!*recorded) continue;
    const Errors errors = history::happen(lot, (*recorded)->entry);
    if (!errors.empty()) return errors;
    work.store.statement("INSERT OR IGNORE INTO touched (lot, seq) VALUES (?, ?)").with(id).with(seq).run();
  }
  return {};
}

Error recorded_already(const Work& work, qint64 id, const Event& event) {
  Statement& row = work.store
                       .statement(
                           "SELECT station, number FROM lot JOIN event USING (seq)"
                           " JOIN chain ON chain.id = event.chain WHERE lot.id = ?")
                       .with(id);
  const QString entry = row.one() ? history::EntryId{row.text(0), row.number(1)}.text() : QString();
  row.end();
  return {Code::Duplicate, QStringLiteral("lot %1 is recorded already, as entry %2").arg(event.lot, entry),
          event.source, QStringLiteral("what was recorded is not edited: record a correction of that entry")};
}

}  // namespace

Errors begin_lot(const Work& work, Entry& entry) {
  const Event& event = entry.event;
  const bool made = event.kind == Kind::Made;
  const std::optional<LotName> known = work.lots.named(event.lot, event.item);
  if (known && known->kind != LotKind::Named)
    return made ? Errors{recorded_already(work, known->id, event)} : befall(work, known->id, entry);
  problem::Expected<Lot> begun = history::begin(entry);
  if (!begun) return {begun.error()};
  if (known) take_what_went(work, known->id, *begun);
  const qint64 id = write_begun(work, *begun, made ? LotKind::Made : LotKind::Received);
  touch(work, id);
  const State written = state_of(*begun);
  if (made) add_inputs(work, id, event.made->batch.record, begun->zone);
  Lot& lot = work.lots.keep(id, std::move(*begun));
  Errors errors;
  if (known || work.lots.any_recalled()) {
    errors = catch_up(work, id, lot);
    work.lots.add_concerns(id, lot);
  }
  write_state(work, id, lot, written, Dated::Changed);
  if (errors.empty()) errors = made ? inherit_additions(work, id, event) : take_on_additions(work, id, event);
  return errors;
}

}  // namespace lardiner::ledger
