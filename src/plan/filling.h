// Which containers an output fills.
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

/// `output` in containers of the product's first kind that is measured as the output is: full ones, and one with the
/// rest. Nothing where the product has no such container, or for more than 100,000.
std::vector<Filled> filling(const book::Product& product, measure::Quantity output);

}  // namespace lardiner::plan
