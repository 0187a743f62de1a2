// Which lots hold a lot, or are in it, through any depth.
#pragma once

#include <vector>

#include "ledger/lots.h"

namespace lardiner::ledger {

enum class Direction {
  Forward,  ///< what was made of it
  Backward  ///< what it was made of
};

/// The beginning of a statement over `found(id)`: one lot, which is bound first, and all that it leads to.
QByteArray with_found(Direction direction);

/// The ids of the lots that `from` leads to, `from` among them; by id. Assumed inputs count.
std::vector<qint64> reach(Store& store, const std::vector<qint64>& from, Direction direction);

/// Of a bought lot: the batches that name no lot of its item and were going on when it came, or were begun later; and
/// what was made of them. They may hold it.
std::vector<qint64> perhaps_in(Store& store, Lots& lots, qint64 lot);

}  // namespace lardiner::ledger
