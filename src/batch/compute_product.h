// The steps of computing a making of a product; for compute_product.cpp and its parts.
#pragma once

#include "batch/compute_inputs.h"

namespace lardiner::batch {

/// What the cook of a making came to.
struct Cook {
  const book::CookMinimum* before = nullptr;  ///< of what was laid together; nullptr: no part must be cooked
  std::optional<QDateTime> met_at;            ///< the first reading that meets it (and the product's own cook_to)
};

/// Refuses a cook without a reading, or with none that meets the minimum of the most demanding part.
Cook cook(Making& making, const Run& run, const std::vector<Used>& used);

/// The caps of the batch, and what its date hands on: a cook that met its minimum ends the clocks of raw inputs only.
std::vector<Cap> caps_of(Making& making, const Run& run, const std::vector<Used>& used, const Cook& cook);

/// Declarations of what went in, and how they differ from the formula's.
void declare(Making& making, Run& run, const std::vector<Used>& used);

/// Restricted ingredients as they were weighed: the book has judged the formula, not what a record puts in besides.
void check_restricted(Making& making, const Run& run, const std::vector<Used>& used);

}  // namespace lardiner::batch
