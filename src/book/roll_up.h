// What follows from a formula: declarations through any depth, readiness, minimum temperatures, weights.
#pragma once

#include <QStringList>
#include <optional>
#include <vector>

#include "book/book.h"

namespace lardiner::book {

/// Derived, never declared. Ordered from the least safe to eat.
enum class Readiness { Unknown, MustBeCooked, NotFullyCooked, CookedReadyToEat, ReadyToEatUncooked };

/// What an item of the book is made of, as far as the book knows. Where an ingredient has several supplier items, the
/// union of all of them stands (any of them may have been used).
Declared declared(const Book& book, const QString& item);

/// From the items laid together and what is done to them; unknown if any part is. Raw laid with ready-to-eat is raw.
Readiness readiness(const std::vector<Readiness>& parts, Process process);
Readiness readiness(const Book& book, const QString& item);

/// The most demanding cook minimum of the raw parts of `product` (through any depth) and of the class of the whole; nullptr where no part
/// must be cooked.
const CookMinimum* cook_minimum(const Book& book, const Product& product);

/// The weight of each formula line of one making as written, edible, in the order of the formula; or the errors that
/// name the line which cannot be resolved to a weight (a volume or count without a measure, parts without a total).
/// Needed by sheets and ingredient statements, not by labels for inside use.
problem::ExpectedAll<std::vector<measure::Quantity>> line_weights(const Book& book, const Product& product);

/// The weight of one making as it comes out (after cook yield).
problem::ExpectedAll<measure::Quantity> output_weight(const Book& book, const Product& product);

/// Every item that lacks something a dated label of `product` needs, through any depth: errors that name file and line.
problem::Errors label_gaps(const Book& book, const Product& product);

/// The loop of formulas that `product` is in, as ids, first repeated at the end; empty if none.
QStringList formula_loop(const Book& book, const QString& product);

}  // namespace lardiner::book
