// Allergens: uniting declarations, and what a destination's list makes of them.
#include "book/allergen.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace lardiner::book {

namespace {

// What a declaration is about, its content aside.
auto kind(const Declaration& d) { return std::tie(d.substance, d.species, d.exemption); }

// An unknown content sorts above every known one.
bool less_content(const Declaration& a, const Declaration& b) {
  if (!a.mg_per_kg || !b.mg_per_kg) return a.mg_per_kg && !b.mg_per_kg;
  return *a.mg_per_kg < *b.mg_per_kg;
}

bool over_threshold(const Declaration& declaration, const ListEntry& entry) {
  if (!entry.from_mg_per_kg || !declaration.mg_per_kg) return true;
  const auto content = *declaration.mg_per_kg <=> *entry.from_mg_per_kg;
  return content > 0 || (content == 0 && entry.threshold_included);
}

bool falls_under(const Declaration& declaration, const ListEntry& entry) {
  const bool of_a_species = !entry.species.isEmpty() && !declaration.species.isEmpty();
  return entry.substances.contains(declaration.substance) &&
         (!of_a_species || entry.species.contains(declaration.species)) && over_threshold(declaration, entry);
}

QString named(const Declaration& declaration, const ListEntry& entry) {
  if (entry.substance_named) return declaration.substance;
  return entry.species_named ? declaration.species : QString();
}

}  // namespace

bool operator<(const Declaration& a, const Declaration& b) {
  return kind(a) != kind(b) ? kind(a) < kind(b) : less_content(a, b);
}

bool operator==(const Declaration& a, const Declaration& b) { return kind(a) == kind(b) && a.mg_per_kg == b.mg_per_kg; }

std::vector<Declaration> gathered(std::vector<Declaration> declarations) {
  std::stable_sort(declarations.begin(), declarations.end(), [](const Declaration& a, const Declaration& b) {
    return kind(a) != kind(b) ? kind(a) < kind(b) : less_content(b, a);  // the highest content first
  });
  const auto same = [](const Declaration& a, const Declaration& b) { return kind(a) == kind(b); };
  declarations.erase(std::unique(declarations.begin(), declarations.end(), same), declarations.end());
  return declarations;
}

Declared united(const Declared& a, const Declared& b) {
  const auto both = [](std::vector<Declaration> all, const std::vector<Declaration>& more) {
    all.insert(all.end(), more.begin(), more.end());
    return gathered(std::move(all));
  };
  return {a.stated && b.stated, both(a.contains, b.contains), both(a.may_contain, b.may_contain)};
}

bool AllergenList::exempts(const Declaration& declaration) const {
  return std::any_of(exemptions.begin(), exemptions.end(), [&](const Exemption& exemption) {
    return exemption.id == declaration.exemption && exemption.substances.contains(declaration.substance);
  });
}

std::vector<ListedAllergen> listed(const std::vector<Declaration>& declarations, const AllergenList& list) {
  std::vector<ListedAllergen> all;
  for (const ListEntry& entry : list.entries) {
    std::set<QString> names;
    for (const Declaration& declaration : declarations) {
      if (falls_under(declaration, entry) && !list.exempts(declaration)) names.insert(named(declaration, entry));
    }
    for (const QString& name : names) all.push_back({entry.id, name, entry.in_ingredient_list_only});
  }
  return all;
}

bool lacks_species(const Declaration& declaration, const AllergenList& list) {
  return declaration.species.isEmpty() && !list.exempts(declaration) &&
         std::any_of(list.entries.begin(), list.entries.end(), [&](const ListEntry& entry) {
           return entry.species_named && entry.substances.contains(declaration.substance);
         });
}

const AllergenList* AllergenLaw::list(const QString& id) const {
  const auto at = std::find_if(lists.begin(), lists.end(), [&](const AllergenList& list) { return list.id == id; });
  return at == lists.end() ? nullptr : &*at;
}

QStringList AllergenLaw::list_ids() const {
  QStringList ids;
  for (const AllergenList& list : lists) ids += list.id;
  return ids;
}

QStringList AllergenLaw::species_of(const QString& substance) const {
  const auto at =
      std::find_if(species.begin(), species.end(), [&](const auto& pair) { return pair.first == substance; });
  return at == species.end() ? QStringList() : at->second;
}

}  // namespace lardiner::book
