// What a label says of allergens: CONTAINS, may contain, and the difference that a substitution made.
#include "facts/allergen_text.h"
#include "facts/scene.h"

namespace lardiner::facts {

namespace {

std::vector<Paragraph> differences(const Scene& scene, const book::AllergenList& list) {
  std::vector<Paragraph> out;
  for (const batch::Difference& difference : scene.batch.differences) {
    const auto adds = in_contains(difference.adds, list);
    if (adds.empty()) continue;
    const QString words = scene.sentence("substitution_adds", {scene.words.upper(entries_text(scene, adds))});
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
  facts.push_back({FactId::Contains, strong(contains_text(scene, scene.batch.declared, *list))});
  facts.push_back({FactId::MayContain, plain(may_contain_text(scene, scene.batch.declared, *list))});
  facts.push_back({FactId::Difference, differences(scene, *list)});
}

}  // namespace lardiner::facts
