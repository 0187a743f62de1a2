// Whether food that must be cooked is of animal origin.
#include "plan/animal_food.h"

namespace lardiner::plan {

bool is_animal_food(const book::Ingredient& ingredient) {
  return ingredient.animal || ingredient.food != QStringLiteral("plant-hot-held");
}

}  // namespace lardiner::plan
