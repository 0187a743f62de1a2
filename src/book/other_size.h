// Other sizes of an assembled item: the formula of one, in proportion.
#pragma once

#include "book/book.h"

namespace lardiner::book {

/// Gives each product with `formula_of` the lines of the product it names, as if they were written: weights and volumes
/// of a unit in proportion to the two unit weights, pieces of a unit as they are; amounts of a whole making in
/// proportion to the units of the two makings as well. A disher or tool is of the other size and is left out, except
/// where pieces are laid. What is refused keeps an empty formula. Errors: an unknown product (not told unless `whole`:
/// it may stand in a file that could not be read), the product itself, one that has a formula_of, a unit weight that is
/// not stated, and a line of a whole making of which the units are not known.
void take_formulas(Book& book, bool whole, problem::Errors& errors);

}  // namespace lardiner::book
