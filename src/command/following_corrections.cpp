// Corrections that follow from what is recorded late: what was made of a lot before its own making, receipt or
// correction was known.
#include "command/following_corrections.h"

#include <algorithm>

#include "history/for_use.h"
#include "ledger/lineage.h"

namespace lardiner::command {

using history::Event;
using history::Kind;

namespace {

// As events write it. How much of it there is does not stand for what is made of it.
QString text_of(const book::Declaration& declaration) {
  return declaration.species.isEmpty() ? declaration.substance : declaration.substance + u':' + declaration.species;
}

// What `more` declares and `less` does not.
QStringList missing(const book::Declared& more, const book::Declared& less) {
  QStringList found;
  for (const book::Declaration& one : more.contains)
    if (!history::declares(less, text_of(one))) found << text_of(one);
  return found;
}

class Following {
 public:
  Following(LedgerRun& run, const Event& event) : run_(run), store_(run.ledger.store()), event_(event) {}

  std::vector<Event> find() {
    if (event_.kind == Kind::Made) follow_making();
    if (event_.kind == Kind::Received) follow_receipt();
    if (event_.kind == Kind::Correction && !event_.adds.isEmpty()) follow_correction();
    return std::move(found_);
  }

 private:
  std::optional<ledger::LotName> named_alone() const {
    const std::optional<ledger::LotName> lot = run_.ledger.lots().named(event_.lot, event_.item);
    return lot && lot->kind == ledger::LotKind::Named ? lot : std::nullopt;
  }

  void add(const QString& item, const QString& supplier_item, const QString& lot, QStringList adds,
           const QString& reason) {
    adds.removeDuplicates();
    if (adds.isEmpty()) return;
    Event correction;
    correction.kind = Kind::Correction;
    correction.at = run_.now;
    correction.by = event_.by;
    correction.item = item;
    correction.supplier_item = supplier_item;
    correction.lot = lot;
    correction.adds = std::move(adds);
    correction.reason = reason;
    correction.source = event_.source;
    found_.push_back(std::move(correction));
  }

  void follow_making() {
    const std::optional<ledger::LotName> known = named_alone();
    if (!known) return;
    QStringList adds;
    for (const ledger::LotName& name : ledger::lots_reached(store_, known->id, ledger::Direction::Forward)) {
      const history::Lot* lot = run_.ledger.lots().lot(name.id);
      if (lot && lot->made) adds += missing(event_.made->batch.declared, facts_of(*lot));
    }
    add(event_.item, {}, event_.lot, adds, QStringLiteral("recorded after what was made of it"));
  }

  book::Declared facts_of(const history::Lot& lot) const {
    book::Declared declared = lot.made->batch.declared;
    history::declare_besides(declared, lot.further_allergens, run_.book.law);
    return declared;
  }

  void follow_receipt() {
    const std::optional<ledger::LotName> known = named_alone();
    const book::Ingredient* ingredient = run_.book.ingredient(event_.item);
    if (!known || !ingredient) return;
    ledger::Statement& row = store_.statement("SELECT supplier_item FROM lot WHERE id = ?").with(known->id);
    const QString used_as = row.one() ? row.text(0) : QString();
    row.end();
    const book::SupplierItem* came = ingredient->supplier_item(event_.supplier_item);
    const book::SupplierItem* used = ingredient->supplier_item(used_as);
    if (!came || !used || came == used) return;
    add(event_.item, came->id, event_.lot, missing(came->declared, used->declared),
        QStringLiteral("received as %1, used as %2 before").arg(came->id, used->id));
  }

  // Of a lot of ours whose making is not recorded nobody knows of which lots it is.
  void follow_correction() {
    if (!event_.lot.isEmpty() || !run_.book.ingredient(event_.item)) return;
    std::vector<std::pair<QString, QString>> lots;
    ledger::Statement& rows = store_.statement("SELECT item, code FROM lot WHERE kind = 0 AND code <> '' ORDER BY id");
    while (rows.next()) lots.emplace_back(rows.text(0), rows.text(1));
    for (const auto& [item, code] : lots)
      if (is_made_of(item)) add(item, {}, code, event_.adds, QStringLiteral("made of %1 by the book").arg(event_.item));
  }

  bool is_made_of(const QString& item) const {
    const book::Product* product = run_.book.product(item);
    return product && std::any_of(product->formula.begin(), product->formula.end(), [&](const book::FormulaLine& line) {
             return line.item == event_.item || is_made_of(line.item);
           });
  }

  LedgerRun& run_;
  ledger::Store& store_;
  const Event& event_;
  std::vector<Event> found_;
};

}  // namespace

std::vector<Event> following_corrections(LedgerRun& run, const Event& event) { return Following(run, event).find(); }

}  // namespace lardiner::command
