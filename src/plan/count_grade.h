// What a count grade promises: a range, of which a buyer is only sure of the worst end.
#pragma once

#include <cstdint>
#include <optional>

#include "book/item.h"
#include "measure/quantity.h"

namespace lardiner::plan {

/// Weight that holds `pieces` for sure; nothing where the grade has no lower bound.
std::optional<measure::Quantity> sure_weight(const book::CountGrade& grade, std::int64_t pieces);

/// How many whole pieces a weight gives.
struct PieceRange {
  std::optional<std::int64_t> worst;   ///< absent: the grade has no lower bound
  std::optional<std::int64_t> likely;  ///< by the middle of the grade; absent likewise
  std::int64_t best = 0;
};
PieceRange pieces_in(const book::CountGrade& grade, measure::Quantity weight);

/// What one piece weighs, at the least and at the most; no most where the grade has no lower bound.
struct PieceWeight {
  measure::Quantity least;
  std::optional<measure::Quantity> most;
};
PieceWeight piece_weight(const book::CountGrade& grade);

}  // namespace lardiner::plan
