// What a label says of allergens: CONTAINS, may contain, and the difference that a substitution made.
#include "facts/scene.h"

namespace lardiner::facts {

namespace {

// "milk, tree nuts (cashew, pecan), fish (cod)": an entry once, with its species behind it.
QString entries(const Scene& scene, const std::vector<book::ListedAllergen>& allergens) {
  QStringList out;
  for (size_t i = 0; i < allergens.size();) {
    const QString& entry = allergens[i].entry;
    QStringList species;
    for (; i < allergens.size() && allergens[i].entry == entry; ++i)
      if (!allergens[i].species.isEmpty()) species << allergen_word(scene, allergens[i].species);
    const QString name = allergen_word(scene, entry);
    out << (species.isEmpty() ? name : scene.sentence("with_parts", {name, scene.words.list(species)}));
  }
  return scene.words.list(out);
}

std::vector<book::ListedAllergen> in_contains(const std::vector<book::Declaration>& declarations,
                                              const book::AllergenList& list) {
  std::vector<book::ListedAllergen> out = book::listed(declarations, list);
  std::erase_if(out, [](const book::ListedAllergen& allergen) { return allergen.in_ingredient_list_only; });
  return out;
}

QString list_name(const Scene& scene, const book::AllergenList& list) {
  return scene.words.word(QStringLiteral("list.") + list.id);
}

std::vector<Paragraph> contains(const Scene& scene, const book::AllergenList& list) {
  const auto allergens = in_contains(scene.batch.declared.contains, list);
  if (allergens.empty()) {
    // A "may contain" beside a plain "none" would read as safe.
    const bool may = !in_contains(scene.batch.declared.may_contain, list).empty();
    return strong(scene.sentence(may ? "none_of_as_ingredient" : "none_of", {list_name(scene, list)}));
  }
  return strong(scene.sentence("contains", {entries(scene, allergens)}));
}

// What the label warns of besides: a substance is not repeated as a "may" when it is in the food.
std::vector<Paragraph> may_contain(const Scene& scene, const book::AllergenList& list) {
  std::vector<book::ListedAllergen> may = in_contains(scene.batch.declared.may_contain, list);
  const auto has = in_contains(scene.batch.declared.contains, list);
  std::erase_if(may, [&](const book::ListedAllergen& a) { return std::find(has.begin(), has.end(), a) != has.end(); });
  if (may.empty()) return {};
  return plain(scene.sentence("may_contain", {entries(scene, may)}));
}

std::vector<Paragraph> differences(const Scene& scene, const book::AllergenList& list) {
  std::vector<Paragraph> out;
  for (const batch::Difference& difference : scene.batch.differences) {
    const auto adds = in_contains(difference.adds, list);
    if (adds.empty()) continue;
    const QString words = scene.sentence("substitution_adds", {scene.words.upper(entries(scene, adds))});
    out.push_back({Run{words, true}});
  }
  return out;
}

}  // namespace

void add_contains_facts(const Scene& scene, std::vector<Fact>& facts) {
  const book::AllergenList* list = destination_list(scene);
  if (!list || !scene.batch.declared.stated) {
    scene.errors.push_back(
        {problem::Code::Missing, QStringLiteral("the allergens of \"%1\" are not known").arg(scene.batch.record.item),
         scene.batch.record.place,
         QStringLiteral("complete the declarations of its supplier items and the kitchen's allergen_list")});
    return;
  }
  facts.push_back({FactId::Contains, contains(scene, *list)});
  facts.push_back({FactId::MayContain, may_contain(scene, *list)});
  facts.push_back({FactId::Difference, differences(scene, *list)});
}

}  // namespace lardiner::facts
