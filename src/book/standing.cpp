// How safe each product is as it stands, and what cook it still needs.
#include "book/standing.h"

#include <algorithm>

namespace lardiner::book {

namespace {

const CookMinimum* more_demanding(const CookMinimum* a, const CookMinimum* b) {
  if (a == nullptr || b == nullptr) return a == nullptr ? b : a;
  return a->demand < b->demand ? b : a;
}

// The minimum of a class; of a class that the rule set does not know, its most demanding one.
const CookMinimum* minimum_for(const RuleSet& rules, const QString& food) {
  if (const CookMinimum* minimum = rules.cook_for(food)) return minimum;
  const CookMinimum* most = nullptr;
  for (const CookMinimum& minimum : rules.cook) most = more_demanding(most, &minimum);
  return most;
}

Standing standing_of(const Ingredient& ingredient, const RuleSet& rules) {
  if (!ingredient.must_be_cooked) return {};
  if (!*ingredient.must_be_cooked) return {Readiness::ReadyToEatUncooked, nullptr, nullptr};
  const CookMinimum* minimum = minimum_for(rules, ingredient.food);
  return {Readiness::MustBeCooked, minimum, minimum};
}

}  // namespace

Readiness readiness(const std::vector<Readiness>& parts, Process process) {
  if (parts.empty()) return Readiness::Unknown;
  const Readiness least = *std::min_element(parts.begin(), parts.end());
  if (least == Readiness::Unknown || process == Process::None) return least;
  const bool raw = least < Readiness::CookedReadyToEat;
  return raw && process == Process::PartCook ? Readiness::NotFullyCooked : Readiness::CookedReadyToEat;
}

Standings::Standings(const Book& book, const Reach& reached) : book_(book) {
  for (const Product* product : reached.products) standings_.insert(product, of(*product));
}

Standing Standings::of(const QString& item) const {
  if (const Product* product = book_.product(item)) return standings_.value(product);
  const Ingredient* ingredient = book_.ingredient(item);
  return ingredient == nullptr ? Standing{} : standing_of(*ingredient, book_.rules);
}

Standing Standings::of(const Product& product) const {
  Standing standing;
  std::vector<Readiness> parts;
  for (const FormulaLine& line : product.formula) {
    const Standing part = of(line.item);
    parts.push_back(part.readiness);
    standing.before = more_demanding(standing.before, part.still);
  }
  if (standing.before != nullptr && !product.food.isEmpty())
    standing.before = more_demanding(standing.before, minimum_for(book_.rules, product.food));
  standing.readiness = readiness(parts, product.process);
  standing.still = product.process == Process::Cook ? nullptr : standing.before;
  return standing;
}

}  // namespace lardiner::book
