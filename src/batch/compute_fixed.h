// A computed making as the facts that a ledger keeps, and such facts as the source of a later making; for compute.cpp.
#pragma once

#include "batch/compute_making.h"
#include "batch/fixed.h"

namespace lardiner::batch {

/// All of its facts but the batch itself. REQUIRES: the making is computed, and its batch not handed out yet.
Fixed without_batch(const Making& making, const book::Book& book);

/// The lots that were recorded before: which there are, and as sources those that an input of the run names.
void add_earlier(Run& run, const std::vector<Fixed>& earlier);

}  // namespace lardiner::batch
