// What corrections of supplier items say of an input, as far as the book does not know better.
#include "command/corrected_declarations.h"

#include "ledger/further_allergens.h"

namespace lardiner::command {

namespace {

std::optional<QDate> checked(const book::Ingredient* ingredient, const QString& supplier_item) {
  const book::SupplierItem* item = ingredient ? ingredient->supplier_item(supplier_item) : nullptr;
  return item && item->checked.isValid() ? std::optional(item->checked) : std::nullopt;
}

// What the book makes it of: of a lot that nobody recorded its formula alone is known.
QStringList by_book(ledger::Ledger& ledger, const book::Book& book, const book::Product& product) {
  QStringList all;
  for (const book::FormulaLine& line : product.formula) all += corrected_besides(ledger, book, {line.item, {}, {}});
  return all;
}

QStringList of_inputs(ledger::Ledger& ledger, const book::Book& book, const batch::Record& record) {
  QStringList all;
  for (const batch::Input& input : record.inputs) {
    if (!input.lot.isEmpty()) all += corrected_besides(ledger, book, {input.item, input.supplier_item, input.lot});
    if (!input.lot.isEmpty()) continue;
    for (const QString& code : input.candidates) all += corrected_besides(ledger, book, {input.item, {}, code});
    all += corrected_besides(ledger, book, {input.item, {}, {}});
  }
  return all;
}

}  // namespace

QStringList corrected_besides(ledger::Ledger& ledger, const book::Book& book, const Bought& bought) {
  const std::optional<ledger::LotName> lot =
      bought.lot.isEmpty() ? std::nullopt : ledger.lots().named(bought.lot, bought.item);
  QStringList all = lot ? ledger::further_allergens(ledger.store(), lot->id) : QStringList();
  if (lot && lot->kind != ledger::LotKind::Named) return all;
  if (const book::Product* product = book.product(bought.item)) return all + by_book(ledger, book, *product);
  for (const ledger::Addition& addition :
       ledger::additions(ledger.store(), bought.item, bought.supplier_item, bought.lot))
    if (ledger::stands(addition, checked(book.ingredient(bought.item), addition.supplier_item)))
      all += addition.substances;
  return all;
}

QStringList corrected_besides(ledger::Ledger& ledger, const book::Book& book, const batch::Record& record) {
  QStringList all = of_inputs(ledger, book, record);
  if (const book::Product* product = book.product(record.item))
    for (const book::FormulaLine& line : product->formula)
      if (!batch::lists(record, line.item)) all += corrected_besides(ledger, book, {line.item, {}, {}});
  if (record.deed != batch::Deed::Made)
    all += corrected_besides(ledger, book, {record.item, record.supplier_item, record.supplier_lot});
  all.removeDuplicates();
  return all;
}

}  // namespace lardiner::command
