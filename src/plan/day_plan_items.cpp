// What the book says of everything that a plan may make or buy, worked out once.
#include "plan/day_plan_items.h"

#include <algorithm>
#include <map>

#include "book/roll_up.h"
#include "plan/amounts_of.h"
#include "plan/animal_food.h"
#include "plan/counted.h"

namespace lardiner::plan {

using book::Readiness;
using measure::Dimension;
using measure::Quantity;
using measure::Ratio;

namespace {

bool is_tcs(const book::TcsStatement& tcs) { return tcs.is != book::TcsStatement::Is::No; }

// How it leaves the kitchen: the first container that does; of what only stays inside, the first.
PutUp put_up_of(const book::Product& product) {
  const auto& all = product.containers;
  if (all.empty()) return {};
  auto chosen = std::find_if(all.begin(), all.end(),
                             [](const book::ContainerSpec& spec) { return spec.purpose != book::Purpose::Inside; });
  if (chosen == all.end()) chosen = all.begin();
  return {chosen->kept == book::State::Frozen, chosen->package == book::Package::ReducedOxygen};
}

// The whole time that the adopted code gives the cooling.
int cooling_seconds(const book::RuleSet& rules, const book::Product& product) {
  int most = 0;
  for (const book::CoolingStage& stage : product.cooled_from_ambient ? rules.cooling_from_ambient : rules.cooling)
    most = std::max(most, stage.within_seconds);
  return most;
}

// A counted line of graded pieces needs the weight that holds them for sure.
Quantity as_purchased(const book::Product& product, const std::vector<Quantity>& weights, size_t line,
                      const book::Ingredient& ingredient) {
  const Quantity pull = measure::scaled(weights[line], Ratio(1, 1) / ingredient.edible);
  const std::optional<Ratio> pieces = pieces_of_line(product, weights, line);
  if (!pieces || !ingredient.count_grade || !ingredient.count_grade->fewest) return pull;
  const Quantity sure =
      measure::scaled(ingredient.count_grade->per, *pieces / Ratio(*ingredient.count_grade->fewest, 1));
  return measure::less(pull, sure) ? sure : pull;
}

void add_part(std::vector<Part>& parts, const Part& part) {
  const auto same = std::find_if(parts.begin(), parts.end(),
                                 [&](const Part& p) { return p.made == part.made && p.item == part.item; });
  if (same == parts.end())
    parts.push_back(part);
  else
    same->weight = same->weight + part.weight;
}

// The entries of a list that each ingredient falls under, numbered in the order of the list.
std::vector<std::vector<int>> numbered(const std::vector<book::Declared>& declared, const book::AllergenList* list) {
  std::map<std::pair<qsizetype, QString>, int> numbers;
  std::vector<std::vector<std::pair<qsizetype, QString>>> found(declared.size());
  for (size_t i = 0; i < declared.size() && list; ++i)
    for (const book::ListedAllergen& listed : book::listed(declared[i].contains, *list)) {
      const auto entry = std::find_if(list->entries.begin(), list->entries.end(),
                                      [&](const book::ListEntry& e) { return e.id == listed.entry; });
      found[i].emplace_back(entry - list->entries.begin(), listed.species);
      numbers.emplace(found[i].back(), 0);
    }
  int next = 0;
  for (auto& [key, number] : numbers) number = next++;
  std::vector<std::vector<int>> all(declared.size());
  for (size_t i = 0; i < declared.size(); ++i) {
    for (const auto& key : found[i]) all[i].push_back(numbers[key]);
    std::sort(all[i].begin(), all[i].end());
  }
  return all;
}

}  // namespace

Items::Items(const book::Book& book, const QStringList& ids, Keeping& keeping) : weighing(book), book_(book) {
  const book::Reach reached = book::reach(book, ids);
  const book::Standings standings(book, reached);
  std::vector<book::Declared> declared;
  for (const book::Ingredient* ingredient : reached.ingredients) {
    bought_index_.insert(ingredient->id, bought.size());
    bought.push_back(
        {ingredient, is_tcs(ingredient->tcs), standings.of(ingredient->id).readiness < Readiness::CookedReadyToEat});
    declared.push_back(book::declared(book, ingredient->id));
    allergens_of_bought_stated_.push_back(declared.back().stated);
  }
  allergens_of_bought_ = numbered(declared, book.law.list(book.kitchen.allergen_list));
  for (const book::Product* product : reached.products) {
    made.push_back(made_of(*product, standings, keeping));
    made_index_.insert(product->id, made.size() - 1);
  }
}

std::optional<size_t> Items::made_index(const QString& id) const {
  const auto at = made_index_.constFind(id);
  return at == made_index_.constEnd() ? std::nullopt : std::optional(*at);
}

std::optional<size_t> Items::bought_index(const QString& id) const {
  const auto at = bought_index_.constFind(id);
  return at == bought_index_.constEnd() ? std::nullopt : std::optional(*at);
}

bool Items::needs_control(const QString& id) const {
  if (const std::optional<size_t> item = made_index(id)) return made[*item].tcs;
  const std::optional<size_t> item = bought_index(id);
  return !item || bought[*item].tcs;
}

Made Items::made_of(const book::Product& product, const book::Standings& standings, Keeping& keeping) {
  Made out;
  out.product = &product;
  add_parts(out);
  add_safety(out, standings);
  add_times(out);
  add_allergens(out);
  add_raw_foods(out);
  out.put_up = put_up_of(product);
  out.way = keeping.way(product, !out.raw, {});
  out.quality_only = keeping.quality_only(out.way);
  out.order_way = keeping.way(product, !out.raw, out.put_up);
  out.by_day = keeping.by_day(out.way) && keeping.by_day(out.order_way);
  for (const Part& part : out.parts) out.by_day = out.by_day && (!part.made || made[part.item].by_day);
  return out;
}

void Items::add_parts(Made& out) {
  const book::Product& product = *out.product;
  const auto& weights = weighing.lines(product);
  const problem::ExpectedAll<Quantity> weight = weighing.output(product);
  if (!weights || !weight) {
    out.errors = weights ? weight.error() : weights.error();
    return;
  }
  out.one_weight = *weight;
  out.one = product.makes                           ? *product.makes
            : product.made_as() == Dimension::Count ? measure::one(measure::Unit::Piece)
                                                    : *weight;
  if (product.made_in) out.made_in = amount_of(weighing, product, *product.made_in);
  for (size_t i = 0; i < weights->size(); ++i) {
    const book::FormulaLine& line = product.formula[i];
    if (const std::optional<size_t> sub = made_index(line.item))
      add_part(out.parts, {true, *sub, (*weights)[i]});
    else if (const std::optional<size_t> goods = bought_index(line.item))
      add_part(out.parts, {false, *goods, as_purchased(product, *weights, i, *bought[*goods].ingredient)});
  }
}

void Items::add_safety(Made& out, const book::Standings& standings) {
  const book::Standing standing = standings.of(*out.product);
  out.tcs = is_tcs(out.product->tcs);
  out.raw = standing.readiness < Readiness::CookedReadyToEat;
  out.cooks = out.product->process == book::Process::Cook && standing.before != nullptr;
  out.handles_raw = out.raw;
  for (const Part& part : out.parts) {
    const bool part_raw = part.made ? made[part.item].raw : bought[part.item].raw;
    const bool tcs = part.made ? made[part.item].tcs : bought[part.item].tcs;
    out.handles_raw = out.handles_raw || part_raw;
    out.holds_ready = out.holds_ready || (part.made ? made[part.item].holds_ready : !part_raw && tcs);
  }
}

// What is cooked before it goes in is not handled raw.
void Items::add_raw_foods(Made& out) const {
  out.raw_foods_known = !out.parts.empty();
  for (const Part& part : out.parts) {
    if (part.made) {
      const Made& sub = made[part.item];
      if (!sub.raw) continue;
      out.raw_foods.insert(sub.raw_foods.begin(), sub.raw_foods.end());
      out.raw_foods_known = out.raw_foods_known && sub.raw_foods_known;
      continue;
    }
    const book::Ingredient& ingredient = *bought[part.item].ingredient;
    if (!bought[part.item].raw) continue;
    if (ingredient.must_be_cooked == true && !ingredient.food.isEmpty()) {
      if (is_animal_food(ingredient)) out.raw_foods.insert(ingredient.food);
    } else {
      out.raw_foods_known = false;
    }
  }
}

void Items::add_times(Made& out) const {
  bool cools = false;
  out.time_stated = !out.product->steps.empty();
  for (const book::Step& step : out.product->steps) {
    out.time_stated = out.time_stated && step.seconds;
    if (!step.seconds) continue;
    out.seconds += step.seconds->second;
    if (step.kind == book::StepKind::Cook) out.cook_seconds = out.seconds;
    if (step.kind == book::StepKind::Thaw) out.thaws = true;
    if (step.kind == book::StepKind::Cool) cools = true;
  }
  if (out.product->cooled && !cools) out.seconds += cooling_seconds(book_.rules, *out.product);
}

void Items::add_allergens(Made& out) {
  out.allergens_stated = !out.parts.empty();
  for (const Part& part : out.parts) {
    const std::vector<int>& more = part.made ? made[part.item].allergens : allergens_of_bought_[part.item];
    const bool stated = part.made ? made[part.item].allergens_stated : allergens_of_bought_stated_[part.item];
    std::vector<int> all;
    std::set_union(out.allergens.begin(), out.allergens.end(), more.begin(), more.end(), std::back_inserter(all));
    out.allergens = std::move(all);
    out.allergens_stated = out.allergens_stated && stated;
  }
}

}  // namespace lardiner::plan
