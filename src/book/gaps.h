// What the book does not say and a dated label cannot do without.
#pragma once

#include "book/book.h"
#include "book/restricted.h"
#include "book/roll_up.h"

namespace lardiner::book {

// Two kinds: a gap in what a thing is made of stops the label of everything that contains it; a gap in what only its
// own label says stops that label alone.

/// Of what it is: declarations, TCS, whether it must be cooked.
problem::Errors gaps_in_composition(const Ingredient& ingredient);
problem::Errors gaps_in_composition(const Product& product);

/// Of what the product's own label says: shelf life for the state of each container, finishing targets, names in the
/// languages asked for, the address on labels for sale.
problem::Errors gaps_on_label(const Book& book, const Product& product, Readiness readiness);

/// The part of `gaps_on_label` that is about words: names, units, cues, and for sale what it is made of.
problem::Errors gaps_in_words(const Book& book, const Product& product);

/// Restricted ingredients of which it cannot be told how much is in a finished product.
problem::Errors gaps_in_restricted(const Book& book, const Product& product, const std::vector<Contents>& restricted);

}  // namespace lardiner::book
