// The sizes of a label's blocks along one scale: what gives way first shrinks first, and the order of importance stays.
#pragma once

#include <vector>

#include "paper/template.h"

namespace lardiner::paper {

/// What one block may come to on this label and printer. `sizes.preferred` is never below `sizes.least`, and that is
/// legible.
struct BlockBounds {
  Sizes sizes;
  GivesWay gives_way = GivesWay::WithTheRest;
  bool says_something = true;  ///< else it counts for nothing
  bool ordered = true;         ///< false: may be smaller than less important blocks, as a frozen container's date
};

/// The sizes at a scale: at 0 all are at their least, at 1 at their preferred size, above that so many times it up to
/// their most. Between 0 and 1 those that give way first shrink by one factor until all of them are at their least,
/// then the rest, then the last. No size falls as the scale rises. A block with a larger preferred size than another is
/// nowhere smaller than it, as long as its least is not.
std::vector<Points> sizes_at(const std::vector<BlockBounds>& blocks, double scale);

/// The smallest part of its preferred size that a block takes at a scale; at most 1.
double least_part(const std::vector<BlockBounds>& blocks, double scale);

/// Beyond this scale nothing grows any more; at least 1.
double largest_scale(const std::vector<BlockBounds>& blocks);

}  // namespace lardiner::paper
