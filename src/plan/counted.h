// What a formula counts: the pieces of a line, the units of a making, and what must be pulled to have them for sure.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "book/book.h"
#include "book/weighing.h"

namespace lardiner::plan {

/// Pieces of a line in one making as written; nothing where it is not counted. `weights`: of all its lines.
std::optional<measure::Ratio> pieces_of_line(const book::Product& product,
                                             const std::vector<measure::Quantity>& weights, size_t line);

/// `wanted` with the product's make-over, in whole units.
std::int64_t units_to_make(const book::Product& product, measure::Ratio wanted);

/// `pull`, or where that is more the weight that holds so many graded pieces for sure (whole ones, counted up).
/// `ingredient` may be nullptr, of a product.
measure::Quantity sure_to_hold(measure::Quantity pull, const book::Ingredient* ingredient,
                               std::optional<measure::Ratio> pieces);

}  // namespace lardiner::plan
