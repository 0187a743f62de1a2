// The HOLD label: what it is, DO NOT USE, and what is missing; never a date to use it by.
#include "facts/scene.h"

namespace lardiner::facts {

void add_hold_facts(const Scene& scene, std::vector<Fact>& facts) {
  facts.push_back({FactId::Hold, strong(scene.word("hold"))});
  facts.push_back({FactId::DoNotUse, strong(scene.word("do_not_use"))});
  QStringList missing;
  for (const QString& key : scene.batch.missing) missing << scene.words.word(key);
  if (missing.isEmpty()) missing << scene.word("missing.other");
  facts.push_back({FactId::Missing, plain(scene.sentence("no_date", {scene.words.clauses(missing)}))});
}

}  // namespace lardiner::facts
