// Declarations that lack the species which a destination's list wants.
#include "book/checks.h"
#include "reader/quote.h"

namespace lardiner::book {

using problem::Code;
using reader::quoted;

namespace {

// The lists of the kitchen and of the sites it sends to.
QStringList lists_used(const Book& book) {
  QStringList ids{book.kitchen.allergen_list};
  for (const Site& site : book.sites)
    if (!site.allergen_list.isEmpty() && !ids.contains(site.allergen_list)) ids += site.allergen_list;
  return ids;
}

void check_item(const Checking& checking, const SupplierItem& item, const AllergenList& list) {
  for (const Declaration& declaration : item.declared.contains) {
    if (!lacks_species(declaration, list)) continue;
    const QString example = checking.book.law.species_of(declaration.substance).value(0, QStringLiteral("…"));
    checking.error(Code::Missing,
                   QStringLiteral("supplier item %1 declares %2 without the species, which the list \"%3\" wants named")
                       .arg(quoted(item.id), declaration.substance, list.id),
                   declaration.place,
                   QStringLiteral("write it with the species, as in \"%1:%2\"").arg(declaration.substance, example));
  }
}

}  // namespace

void check_declarations(const Checking& checking) {
  for (const QString& id : lists_used(checking.book)) {
    const AllergenList* list = checking.book.law.list(id);
    if (list == nullptr) continue;
    for (const Ingredient& ingredient : checking.book.ingredients)
      for (const SupplierItem& item : ingredient.supplier_items) check_item(checking, item, *list);
  }
}

}  // namespace lardiner::book
