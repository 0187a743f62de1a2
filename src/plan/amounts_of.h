// Amounts of an item in the dimension in which it is made or bought.
#pragma once

#include <optional>

#include "book/book.h"
#include "book/weighing.h"
#include "measure/quantity.h"

namespace lardiner::plan {

/// `amount` of the product in its own dimension; nothing where the book does not say what a piece or a volume weighs.
std::optional<measure::Quantity> amount_of(book::Weighing& weighing, const book::Product& product,
                                           measure::Quantity amount);

/// What `amount` of an ingredient that is there weighs for sure, as purchased: by its measures, which are of what is
/// edible in it, else a count by the smallest pieces of its grade; nothing where the book does not say.
std::optional<measure::Quantity> weight_of(const book::Weighing& weighing, const book::Ingredient& ingredient,
                                           measure::Quantity amount);

}  // namespace lardiner::plan
