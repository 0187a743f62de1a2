// What a reading of food is judged by, when nothing but the entry says what it was.
#include "command/food_limits.h"

namespace lardiner::command {

using history::Kind;

book::HeldTo held_to(const history::Event& event, const book::RuleSet& rules) {
  if (!event.temperature) return {};
  const bool hot = event.kind == Kind::HotHeld || event.what == QLatin1String("hot-held");
  const bool cold = event.what == QLatin1String("cold-held");
  return hot || (!cold && measure::at_least(*event.temperature, rules.hot_holding))
             ? book::HeldTo{rules.hot_holding, std::nullopt}
             : book::HeldTo{std::nullopt, rules.cold_holding};
}

const measure::TemperatureLimit& warmest_when_cold(const history::Event& event, const book::Book& book) {
  const book::Ingredient* ingredient = event.kind == Kind::Received ? book.ingredient(event.item) : nullptr;
  return ingredient && ingredient->received_at_most ? *ingredient->received_at_most : book.rules.cold_holding;
}

std::optional<book::TimeAtTemperature> reheat_minimum(const history::Event& event, const book::RuleSet& rules) {
  const book::ReheatMinimum* minimum = rules.reheat_for(QStringLiteral("hot-holding"));
  return event.kind == Kind::Reheated && minimum ? std::optional(minimum->at) : std::nullopt;
}

}  // namespace lardiner::command
