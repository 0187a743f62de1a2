// What allergens a line of a sheet brings, by the kitchen's list.
#include "plan/brought_allergens.h"

#include "book/roll_up.h"

namespace lardiner::plan {

Brought brought_allergens(const book::Book& book, const QString& item) {
  const book::AllergenList* list = book.law.list(book.kitchen.allergen_list);
  if (!list) return {};
  const book::Declared declared = book::declared(book, item);
  Brought out;
  out.known = declared.stated;
  for (const book::ListedAllergen& allergen : book::listed(declared.contains, *list)) {
    const bool told = !out.entries.empty() && out.entries.back() == allergen.entry;
    if (!told && !allergen.in_ingredient_list_only) out.entries.push_back(allergen.entry);
  }
  return out;
}

}  // namespace lardiner::plan
