// Puts blocks on pages one under the other.
#pragma once

#include <vector>

#include "paper/work_block.h"
#include "problem/error.h"

namespace lardiner::paper {

/// The height between what stands at a page's top and its foot line, in dots.
struct Rooms {
  int first = 0;
  int further = 0;
};

/// Blocks where they stand: y from the top of the page's room.
struct PlacedBlock {
  const WorkBlock* block = nullptr;
  int y = 0;
};
using PlacedPage = std::vector<PlacedBlock>;

/// Blocks that are kept together begin a new page rather than to be parted, unless together they are higher than a
/// page. `last`, if any, ends the last page, at its bottom; it takes the blocks before it along rather than to stand
/// on a page alone. At least one page. The blocks outlive it. Errors: NoRoom, naming each block that is higher than a
/// page, with what stands again above it.
problem::ExpectedAll<std::vector<PlacedPage>> flow(const std::vector<WorkBlock>& blocks, const WorkBlock& last,
                                                   Rooms rooms);

}  // namespace lardiner::paper
