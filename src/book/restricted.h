// How much of a restricted ingredient is in what is made, by weight through any depth.
#pragma once

#include <optional>
#include <unordered_map>

#include "book/reach.h"
#include "book/weighing.h"

namespace lardiner::book {

/// In one making of each product; nothing where a weight is not known.
using Amounts = std::unordered_map<const Product*, std::optional<measure::Quantity>>;

Amounts amounts_of(const Ingredient& ingredient, const Book& book, const Reach& reached, Weighing& weighing);

/// In one making of `product`, from the amounts in its parts.
std::optional<measure::Quantity> amount_in(const Product& product, const Ingredient& ingredient, const Book& book,
                                           const Amounts& of_parts, Weighing& weighing);

/// Whether the maximum of a finished product applies: it leaves the kitchen, or nothing else is made of it.
bool finished(const Book& book, const Product& product);

}  // namespace lardiner::book
