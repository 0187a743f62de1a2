// What a declaration is in the words of a destination's list: CONTAINS, may contain.
#include "facts/allergen_text.h"

#include <algorithm>

namespace lardiner::facts {

std::vector<book::ListedAllergen> in_contains(const std::vector<book::Declaration>& declarations,
                                              const book::AllergenList& list) {
  std::vector<book::ListedAllergen> out = book::listed(declarations, list);
  std::erase_if(out, [](const book::ListedAllergen& allergen) { return allergen.in_ingredient_list_only; });
  return out;
}

QString entries_text(const Wording& wording, const std::vector<book::ListedAllergen>& allergens) {
  QStringList out;
  for (size_t i = 0; i < allergens.size();) {
    const QString& entry = allergens[i].entry;
    QStringList species;
    for (; i < allergens.size() && allergens[i].entry == entry; ++i)
      if (!allergens[i].species.isEmpty()) species << allergen_word(wording, allergens[i].species);
    const QString name = allergen_word(wording, entry);
    out << (species.isEmpty() ? name : wording.sentence("with_parts", {name, wording.words.list(species)}));
  }
  return wording.words.list(out);
}

QString contains_text(const Wording& wording, const book::Declared& declared, const book::AllergenList& list) {
  const auto allergens = in_contains(declared.contains, list);
  if (!allergens.empty()) return wording.sentence("contains", {entries_text(wording, allergens)});
  // A "may contain" beside a plain "none" would read as safe.
  const bool may = !in_contains(declared.may_contain, list).empty();
  return wording.sentence(may ? "none_of_as_ingredient" : "none_of",
                          {wording.words.word(QStringLiteral("list.") + list.id)});
}

QString may_contain_text(const Wording& wording, const book::Declared& declared, const book::AllergenList& list) {
  std::vector<book::ListedAllergen> may = in_contains(declared.may_contain, list);
  const auto has = in_contains(declared.contains, list);
  std::erase_if(may, [&](const book::ListedAllergen& a) { return std::find(has.begin(), has.end(), a) != has.end(); });
  return may.empty() ? QString() : wording.sentence("may_contain", {entries_text(wording, may)});
}

}  // namespace lardiner::facts
