// What a declaration is in the words of a destination's list: CONTAINS, may contain.
#pragma once

#include <vector>

#include "book/allergen.h"
#include "facts/wording.h"

namespace lardiner::facts {

/// What stands in CONTAINS: all that the list names, but what it wants in the ingredient list alone.
std::vector<book::ListedAllergen> in_contains(const std::vector<book::Declaration>& declarations,
                                              const book::AllergenList& list);

/// "milk, tree nuts (cashew, pecan), fish (cod)": an entry once, with its species behind it.
QString entries_text(const Wording& wording, const std::vector<book::ListedAllergen>& allergens);

/// "CONTAINS milk", or "None of" the list. REQUIRES: `declared` is stated.
QString contains_text(const Wording& wording, const book::Declared& declared, const book::AllergenList& list);

/// What is warned of besides; a substance is not repeated as a "may" when it is in the food. May be empty.
QString may_contain_text(const Wording& wording, const book::Declared& declared, const book::AllergenList& list);

}  // namespace lardiner::facts
