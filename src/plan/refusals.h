// What the book lacks, or has wrong, for several of this layer's sheets.
#pragma once

#include "book/item.h"
#include "problem/error.h"

namespace lardiner::plan {

problem::Error not_in_pieces(const book::Product& product);
problem::Error nothing_edible(const book::Ingredient& ingredient);

}  // namespace lardiner::plan
