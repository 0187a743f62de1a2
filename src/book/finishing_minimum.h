// Whether the finishing steps of a product are hot enough for food of a given standing.
#pragma once

#include <vector>

#include "book/standing.h"

namespace lardiner::book {

/// One finishing step that falls short.
struct Shortfall {
  QString what;  ///< names the step, what it says, the minimum and its section
  QString hint;  ///< what the book would have to say
  problem::Place place;
};

/// The steps of `product` that do not reach what food of this standing needs: raw food the cook minimum that is still
/// to be met (in a microwave the rule set's own, and its stand), ready-to-eat food that needs time and temperature
/// control the minimum of its way of reheating. A step without a core temperature is a gap, told by gaps.h.
std::vector<Shortfall> finishing_shortfalls(const RuleSet& rules, const Product& product, const Standing& standing);

}  // namespace lardiner::book
