// An assembly sheet's figures: what goes into one unit, onto one tray, and into all of them.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "plan/count_grade.h"
#include "plan/scaling.h"

namespace lardiner::plan {

struct AssemblyLine {
  const book::FormulaLine* line = nullptr;
  std::optional<measure::Ratio> pieces;          ///< in one unit, where it is counted
  measure::Quantity each;                        ///< weight in one unit, exact
  measure::Quantity each_weighed;                ///< in steps of the fine scale where it is small, else of the scale
  measure::Quantity total;                       ///< edible, for all units with make-over, exact
  measure::Quantity to_pull;                     ///< as purchased, at least sure_weight, rounded up to the scale's step
  std::optional<measure::Quantity> on_tray;      ///< of what is brushed or drizzled: for one whole tray
  std::optional<measure::Quantity> disher;       ///< the volume of a level disher (a US quart shared by its number)
  std::optional<measure::Quantity> sure_weight;  ///< graded pieces: the weight that is enough at worst
  std::vector<QString> allergens;                ///< as plan::PrepLine's
  bool allergens_known = false;                  ///< likewise
};

/// How the wanted units lie: whole trays, and one with the rest. Make-over is for what is lost on the way.
struct Trays {
  const book::ContainerSpec* container = nullptr;
  std::int64_t whole = 0;
  std::int64_t odd = 0;  ///< pieces on the last tray; 0: none
};

/// How much is taken out of the cold at a time.
struct OutOfCold {
  int seconds = 0;         ///< the most that it may be out
  std::int64_t units = 0;  ///< assembled in that time by one pair of hands; 0: not even one
  std::int64_t times = 0;  ///< that so many are taken out; 0 likewise
};

struct Assembly {
  const book::Product* product = nullptr;
  std::int64_t wanted = 0;                                 ///< units
  std::int64_t make = 0;                                   ///< with make-over
  measure::Quantity unit_weight;                           ///< stated, else the sum of a unit's lines
  std::optional<measure::Quantity> unit_least, unit_most;  ///< of the finished unit
  std::vector<AssemblyLine> lines;                         ///< in build order
  std::optional<Trays> trays;
  std::optional<OutOfCold> out_of_cold;
  std::vector<std::int64_t> check_weigh;  ///< which units: 1 to 5, then 20, 40, …
};

/// For `wanted` units. Trays are of the first container of that kind which holds pieces. Errors: not made in units
/// (state makes in pieces or unit_weight); no unit wanted; those of book::line_weights.
problem::ExpectedAll<Assembly> assembly(const book::Book& book, book::Weighing& weighing, const book::Product& product,
                                        std::int64_t wanted);

/// What is there of one item of an assembly, and how many units it gives.
struct Suffices {
  QString item;
  PieceRange units;  ///< worst, likely and best are equal where no count grade makes them differ
};
/// Each of `there`, the one that limits in front: by the fewest at worst, an unknown worst first. What the formula
/// counts is counted, by the range of its grade where it is weighed; the rest goes by weight. Make-over is not taken
/// off. Errors: not made in units; an item that is not in the formula; a measure that the book does not know; those of
/// book::line_weights.
struct There {
  QString item;
  measure::Quantity amount;  ///< as purchased
};
problem::ExpectedAll<std::vector<Suffices>> units_from(const book::Book& book, book::Weighing& weighing,
                                                       const book::Product& product, const std::vector<There>& there);

}  // namespace lardiner::plan
