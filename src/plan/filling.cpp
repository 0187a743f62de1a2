// What of an output is put up, and which containers that fills.
#include "plan/filling.h"

#include <algorithm>

#include "measure/text.h"
#include "plan/rounding.h"

namespace lardiner::plan {

using measure::Dimension;
using measure::Quantity;
using measure::Ratio;

namespace {

constexpr std::int64_t kMostContainers = 100'000;

const book::ContainerSpec* first_that_holds(const book::Product& product, Dimension dimension) {
  const auto found = std::find_if(
      product.containers.begin(), product.containers.end(),
      [dimension](const book::ContainerSpec& container) { return container.holds.dimension == dimension; });
  return found == product.containers.end() ? nullptr : &*found;
}

}  // namespace

Quantity put_up(const book::Kitchen& kitchen, const book::Product& product, Quantity output) {
  if (output.dimension == Dimension::Mass) return measure::rounded_to_step(output, kitchen.scale_step);
  if (output.dimension == Dimension::Volume) return output;
  const Ratio wanted = measure::in_unit(output, measure::Unit::Piece) / (Ratio(1, 1) + product.make_over);
  return measure::quantity({whole_down(wanted), 1}, measure::Unit::Piece);
}

std::vector<Filled> filling(const book::Product& product, Quantity output) {
  const book::ContainerSpec* container = first_that_holds(product, output.dimension);
  if (!container || output.amount <= 0) return {};
  const Ratio containers = measure::ratio(output, container->holds);
  const std::int64_t full = whole_down(containers);
  const bool rest = whole_up(containers) > full;
  if (full + (rest ? 1 : 0) > kMostContainers) return {};
  std::vector<Filled> out;
  if (full > 0) out.push_back({container, static_cast<int>(full), container->holds});
  if (rest) out.push_back({container, 1, output - measure::scaled(container->holds, {full, 1})});
  return out;
}

}  // namespace lardiner::plan
