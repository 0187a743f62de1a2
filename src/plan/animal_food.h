// Whether food that must be cooked is of animal origin; for the order of work, and for what sheets call raw.
#pragma once

#include "book/item.h"

namespace lardiner::plan {

/// Every class of food that must be cooked is, but plants; also where the book says so.
bool is_animal_food(const book::Ingredient& ingredient);

}  // namespace lardiner::plan
