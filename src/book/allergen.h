// Allergens: the substances that a supplier declares, and the lists that a destination's law asks for.
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <utility>
#include <vector>

#include "measure/quantity.h"
#include "problem/error.h"
#include "reader/value.h"

namespace lardiner::book {

/// One declared substance: "milk", "tree-nut:cashew", "fish:cod", "sulphites 15 mg/kg", "soy exempt
/// highly-refined-oil".
struct Declaration {
  QString substance;                        ///< id: milk, egg, fish, crustacean, mollusc, tree-nut, wheat, …
  QString species;                          ///< cashew, cod; empty where none is named
  std::optional<measure::Ratio> mg_per_kg;  ///< sulphites only; absent: unknown, over every threshold
  QString exemption;                        ///< id of the exemption claimed, judged by each list
  problem::Place place;

  friend bool operator<(const Declaration& a, const Declaration& b);
  friend bool operator==(const Declaration& a, const Declaration& b);  ///< place aside
};

/// What is known of a thing's allergens. Not stated is unknown, and unknown is never printed as none.
struct Declared {
  bool stated = false;
  std::vector<Declaration> contains;     ///< as `gathered`
  std::vector<Declaration> may_contain;  ///< as `gathered`; from a risk assessment, kept apart

  friend bool operator==(const Declared&, const Declared&) = default;
};

/// Sorted, each once; of one substance's several contents the highest (unknown above all), since a mixture holds no
/// more of it to the kilogram than its strongest part.
std::vector<Declaration> gathered(std::vector<Declaration> declarations);

/// Union: stated only when both are. No declaration is ever lost by order, depth, split or repetition. Nothing that
/// contains nothing, `Declared{true, {}, {}}`, changes nothing.
Declared united(const Declared& a, const Declared& b);

/// An entry of a list: "milk" or "cereals containing gluten".
struct ListEntry {
  QString id;                  ///< key of the words: allergen.<id>
  QStringList substances;      ///< that fall under it
  QStringList species;         ///< only these species, when not empty; one that is not named falls under it too
  bool species_named = false;  ///< the law wants the species (US: nuts, fish, crustaceans)
  bool substance_named =
      false;  ///< the law wants the substance (EU: which cereal); its id is then the listed `species`
  std::optional<measure::Ratio> from_mg_per_kg;  ///< threshold, with `threshold_included`
  bool threshold_included = false;
  bool in_ingredient_list_only = false;  ///< declared in the ingredient list, not in CONTAINS (US sulphites)
  QString source;
};

struct Exemption {
  QString id;
  QStringList substances;
  QString source;
};

struct AllergenList {
  QString id;  ///< "us", "eu", "ca"; words key list.<id>
  QString source;
  bool emphasised = false;  ///< allergens stand out within the ingredient list (EU Art. 21)
  std::vector<ListEntry> entries;
  std::vector<Exemption> exemptions;

  /// Whether this list exempts what is declared. An exemption that it does not know for that substance exempts nothing.
  bool exempts(const Declaration& declaration) const;
};

/// What a destination's list makes of a declaration set.
struct ListedAllergen {
  QString entry;    ///< id of the list entry
  QString species;  ///< words key allergen.<species>; named when the law wants it, else empty
  bool in_ingredient_list_only = false;
  friend bool operator==(const ListedAllergen&, const ListedAllergen&) = default;
};

/// In the list's own order, species alphabetically; each once. A tree nut, fish or crustacean without a species is
/// listed under its entry's name (and `check` asks for the species where the law wants it).
std::vector<ListedAllergen> listed(const std::vector<Declaration>& declarations, const AllergenList& list);

/// Whether `list` wants a species of `declaration` that it does not name.
bool lacks_species(const Declaration& declaration, const AllergenList& list);

/// The substances and species known, and all lists: templates/rules/allergens.toml.
struct AllergenLaw {
  QStringList substances;
  std::vector<std::pair<QString, QStringList>> species;  ///< substance -> species
  QStringList measured;                                  ///< substances whose content is stated (sulphites)
  std::vector<AllergenList> lists;

  const AllergenList* list(const QString& id) const;
  QStringList list_ids() const;
  /// The species of `substance` that are known; empty where it has none.
  QStringList species_of(const QString& substance) const;
};

/// Reads templates/rules/allergens.toml; every fault at once. An entry or exemption without a source, or of a substance
/// or species that the file does not name, is refused.
problem::ExpectedAll<AllergenLaw> read_allergen_law(const QByteArray& toml, const QString& file);

/// Reads one `contains` entry as written above: `<substance>[:<species>] [<content>] [exempt <exemption>]`. Sulphites
/// need their content, `15 mg/kg` (or ppm), or the word `unknown`, which counts as over every threshold. The error has
/// no place: the caller gives it one.
problem::Expected<Declaration> parse_declaration(const QString& text, const AllergenLaw& law);

}  // namespace lardiner::book
