// Which column each lot of a lineage stands in, in which order, and which lots are summed up for want of room.
#pragma once

#include <cstddef>
#include <vector>

#include "facts/lineage_picture.h"

namespace lardiner::paper {

/// What stands in a column: a lot, several summed up, or only a line that passes.
struct Slot {
  enum class Kind { Lot, More, Line };
  Kind kind = Kind::Lot;
  std::size_t node = 0;  ///< Lot: of the picture
  int more = 0;          ///< More: how many lots
};

/// From a slot to one of the next column.
struct Link {
  std::size_t column = 0;  ///< of `from`
  std::size_t from = 0, to = 0;
  bool assumed = false;
};

struct Layers {
  std::vector<std::vector<Slot>> columns;  ///< inputs first; the slots in their order from the top
  std::vector<Link> links;
};

/// How much a page takes.
struct Most {
  std::size_t columns = 7;
  std::size_t lots = 9;  ///< in a column
};

/// Every lot stands left of what it went into. Of more columns than `most` those farthest from the lot asked for are
/// joined; of more lots in a column the nearest to it stay, and the rest is one slot. The order within a column is by
/// the mean place of the neighbours (barycentres, Sugiyama, Tagawa and Toda 1981, from memory), so that few lines
/// cross. The lot asked for is always there. A lineage that goes in a circle, which no ledger should hold, is drawn
/// all the same: the link that closes it is left out of the order.
Layers layers(const facts::LineagePicture& picture, Most most);

}  // namespace lardiner::paper
