// What an amount of an item that is there is worth in makings of a formula; for target.cpp and units_from.cpp.
#pragma once

#include "book/book.h"
#include "book/weighing.h"
#include "plan/assembly.h"

namespace lardiner::plan {

/// Makings of the formula that `there` is enough for: pieces of what the formula counts by the piece, else by weight
/// (of an ingredient as purchased through the trim yield; a volume or a count weighs by its measures what it weighs in
/// a formula). REQUIRES: the product's lines have weights. Errors: an item that is not in the formula, of which nothing
/// goes in, or whose measure the book does not know.
problem::Expected<measure::Ratio> makings_of_there(const book::Book& book, book::Weighing& weighing,
                                                   const book::Product& product, const There& there);

/// Pieces of an item in one making; nothing unless all its lines are counted. REQUIRES as above.
std::optional<measure::Ratio> pieces_of_item(book::Weighing& weighing, const book::Product& product,
                                             const QString& item);

}  // namespace lardiner::plan
