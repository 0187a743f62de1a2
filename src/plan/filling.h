// What of an output is put up, and which containers that fills.
#pragma once

#include <vector>

#include "book/item.h"
#include "measure/quantity.h"

namespace lardiner::plan {

/// So many containers of a kind that hold so much each.
struct Filled {
  const book::ContainerSpec* container = nullptr;
  int count = 0;
  measure::Quantity holds;  ///< what each of them gets: the container's size, or of the last one the rest
};

/// What of a making's output is put up: of pieces the most that were wanted, the make-over being lost on the way, in
/// whole ones; a weight to the step of the kitchen's scale; a volume as it is.
measure::Quantity put_up(const book::Kitchen& kitchen, const book::Product& product, measure::Quantity output);

/// `output` in containers of the product's first kind that is measured as the output is: full ones, and one with the
/// rest. Nothing where the product has no such container, or for more than 100,000.
std::vector<Filled> filling(const book::Product& product, measure::Quantity output);

}  // namespace lardiner::plan
