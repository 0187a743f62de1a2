// What corrections of a supplier's item say that a lot contains besides.
#include "ledger/further_allergens.h"

#include "ledger/entries.h"

namespace lardiner::ledger {

namespace {

QStringList added_by(Store& store, qint64 correction) {
  const auto entry = entry_at(store, correction);
  return entry && *entry ? (*entry)->entry.event.adds : QStringList();
}

}  // namespace

QStringList further_allergens(Store& store, qint64 lot) {
  std::vector<qint64> corrections;
  Statement& rows = store.statement("SELECT seq FROM concern WHERE lot = ? AND kind = ? ORDER BY seq");
  rows.with(lot).with(static_cast<qint64>(history::Kind::Correction));
  while (rows.next()) corrections.push_back(rows.number(0));
  QStringList all;
  for (const qint64 seq : corrections) all += added_by(store, seq);
  all.removeDuplicates();
  return all;
}

std::vector<Addition> additions(Store& store, const QString& item, const QString& supplier_item, const QString& code) {
  std::vector<Addition> found;
  Statement& rows =
      store.statement("SELECT seq, supplier_item, lot, day FROM declares_besides WHERE item = ? ORDER BY seq");
  rows.with(item);
  while (rows.next()) {
    const Addition one{rows.number(0), rows.text(1), rows.text(2), QDate::fromJulianDay(rows.number(3)), {}};
    const bool its = supplier_item.isEmpty() || one.supplier_item == supplier_item;
    const bool lot = one.lot.isEmpty() || code.isEmpty() || one.lot == code;
    if (its && lot) found.push_back(one);
  }
  for (Addition& one : found) one.substances = added_by(store, one.seq);
  return found;
}

bool stands(const Addition& addition, const std::optional<QDate>& checked) {
  return !addition.lot.isEmpty() || !checked || *checked <= addition.day;
}

void remember_addition(Store& store, qint64 seq, const history::Entry& entry) {
  store.statement("INSERT INTO declares_besides (seq, item, supplier_item, lot, day) VALUES (?, ?, ?, ?, ?)")
      .with(seq)
      .with(entry.event.item)
      .with(entry.event.supplier_item)
      .with(entry.event.lot)
      .with(history::local_day(entry).toJulianDay())
      .run();
}

}  // namespace lardiner::ledger
