// A formula scaled to what is wanted: exact amounts, and what the scale shall read.
#pragma once

#include <optional>
#include <variant>
#include <vector>

#include "book/book.h"
#include "book/weighing.h"
#include "measure/quantity.h"
#include "problem/error.h"

namespace lardiner::plan {

// What is asked of a product.

/// So much shall come out: a weight, a volume, or pieces. To pieces the product's make-over is added, in whole pieces.
struct Give {
  measure::Quantity output;
};
/// All of an item that is there, as purchased where it is an ingredient.
struct UseUp {
  QString item;
  measure::Quantity there;
};
/// As much as fits the product's vessel, once.
struct FillVessel {};
/// The formula as written, so many times.
struct Makings {
  measure::Ratio times;
};
using Target = std::variant<Give, UseUp, FillVessel, Makings>;

/// How many makings of the formula as written a target is. An output by weight is a share of what the book says that a
/// making gives (book::output_weight). Errors (no place unless the book is at fault): nothing, or less than one piece
/// of what is made in pieces; an item that is not in the formula; a vessel that the book does not state; a dimension
/// that the book cannot convert; the first of book::line_weights.
problem::Expected<measure::Ratio> makings(const book::Book& book, book::Weighing& weighing,
                                          const book::Product& product, const Target& target);

/// A household measure of a weight, up to about a cup, in quarters of its unit.
struct HandMeasure {
  measure::Unit unit = measure::Unit::Teaspoon;  ///< Teaspoon, Tablespoon, Cup
  measure::Ratio count;
  QString source;  ///< of the measure's weight
};

struct ScaledLine {
  const book::FormulaLine* line = nullptr;
  measure::Quantity net;      ///< edible weight, exact to the nanogram
  measure::Quantity pull;     ///< as purchased, exact: net through the trim yield; of a product the same as net
  measure::Quantity weighed;  ///< net as the scale shall read, in steps of `step`
  /// Pull, or what holds its graded pieces for sure, rounded up to `step`; of what is not trimmed just `weighed`. Never
  /// less than that.
  measure::Quantity to_pull;
  measure::Quantity step;
  bool fine = false;        ///< under some twenty steps of the kitchen's scale: a weighing of its own on the fine scale
  bool restricted = false;  ///< has a maximum by law: rounded down
  std::optional<measure::Ratio> pieces;  ///< where the formula counts it
  std::optional<HandMeasure> measure;    ///< where the book knows one; never of a restricted line
};

/// One pull: what goes into the vessel at a time.
struct Scaled {
  const book::Product* product = nullptr;
  measure::Ratio makings;               ///< of the formula as written, in this pull
  int pulls = 1;                        ///< equal ones, where the vessel does not take the whole at once
  std::vector<ScaledLine> lines;        ///< in the order of addition
  measure::Quantity input;              ///< the sum of `weighed`: what the printed lines add up to
  measure::Quantity output;             ///< weight that comes out of a pull, exact: see book::output_weight
  std::optional<measure::Ratio> units;  ///< of a pull, where units are made
};

/// The lines of `makings` of the formula, in equal pulls of what the vessel takes at most, printed figures included.
/// Each line is its exact share to the scale's step; the residue of the total is on the largest line, never on a fine
/// or restricted one (weighing_out.h). Scaling up and back gives the same figures: nothing is rounded before it is
/// weighed. Errors: those of book::line_weights; nothing made; a line of less than a milligram; over 10,000 pulls.
problem::ExpectedAll<Scaled> scaled(const book::Book& book, book::Weighing& weighing, const book::Product& product,
                                    measure::Ratio makings);

}  // namespace lardiner::plan
