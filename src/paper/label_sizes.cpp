// The sizes of a label's blocks along one scale: what gives way first shrinks first, and the order of importance stays.
#include "paper/label_sizes.h"

#include <algorithm>
#include <array>

namespace lardiner::paper {

namespace {

constexpr std::array kInOrder = {GivesWay::First, GivesWay::WithTheRest, GivesWay::Last};

using Groups = std::array<double, kInOrder.size()>;

std::size_t index(GivesWay group) { return static_cast<std::size_t>(group); }

// Of each group, the part of their preferred sizes at which the last of its blocks is at its least; 1: the label has
// none.
Groups least_factors(const std::vector<BlockBounds>& blocks) {
  Groups least{1, 1, 1};
  for (const BlockBounds& block : blocks)
    if (block.says_something)
      least[index(block.gives_way)] =
          std::min(least[index(block.gives_way)], block.sizes.least.value / block.sizes.preferred.value);
  return least;
}

// The part of their preferred sizes that each group takes at a scale below 1. The groups that can shrink share the
// scale equally, those that give way first at its upper end.
Groups factors(const std::vector<BlockBounds>& blocks, double scale) {
  const Groups least = least_factors(blocks);
  const auto groups = static_cast<double>(std::count_if(least.begin(), least.end(), [](double f) { return f < 1; }));
  Groups out{1, 1, 1};
  double shrunk_before = 0;
  for (const GivesWay group : kInOrder) {
    const std::size_t n = index(group);
    if (least[n] >= 1) continue;
    const double part = std::clamp(scale * groups - (groups - 1 - shrunk_before), 0.0, 1.0);
    out[n] = least[n] + (1 - least[n]) * part;
    ++shrunk_before;
  }
  return out;
}

}  // namespace

std::vector<Points> sizes_at(const std::vector<BlockBounds>& blocks, double scale) {
  const Groups below = scale < 1 ? factors(blocks, scale) : Groups{};
  std::vector<Points> own;
  own.reserve(blocks.size());
  for (const BlockBounds& block : blocks) {
    const double factor = scale < 1 ? below[index(block.gives_way)] : scale;
    const Sizes& sizes = block.sizes;
    own.push_back({std::max(sizes.least.value, std::min(sizes.most.value, sizes.preferred.value * factor))});
  }
  std::vector<Points> out = own;
  for (std::size_t small = 0; small < blocks.size(); ++small) {
    if (!blocks[small].ordered) continue;
    for (std::size_t large = 0; large < blocks.size(); ++large)
      if (blocks[large].says_something && blocks[large].ordered &&
          blocks[large].sizes.preferred > blocks[small].sizes.preferred)
        out[small] = std::min(out[small], own[large]);
    out[small] = std::max(out[small], blocks[small].sizes.least);
  }
  return out;
}

double least_part(const std::vector<BlockBounds>& blocks, double scale) {
  const std::vector<Points> sizes = sizes_at(blocks, scale);
  double least = 1;
  for (std::size_t n = 0; n < blocks.size(); ++n)
    if (blocks[n].says_something) least = std::min(least, sizes[n].value / blocks[n].sizes.preferred.value);
  return least;
}

double largest_scale(const std::vector<BlockBounds>& blocks) {
  double largest = 1;
  for (const BlockBounds& block : blocks)
    if (block.says_something) largest = std::max(largest, block.sizes.most.value / block.sizes.preferred.value);
  return largest;
}

}  // namespace lardiner::paper
