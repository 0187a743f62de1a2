// What an entry says that cannot be, beside what is recorded already.
#pragma once

#include <vector>

#include "ledger/project_lot.h"

namespace lardiner::ledger {

/// Asked as an entry is appended, before it befalls the `lots` that it reaches, and never again: what an earlier
/// program took stays evidence. Errors (Range, Conflict, Duplicate): an arrival before its dispatch, a return before
/// either, from another site or by another note; a note that goes to two sites; the end of a hold or of a recall before
/// its beginning; the same delivery again. None is an empty list.
problem::Errors contradictions(const Work& work, const history::Event& event, const std::vector<qint64>& lots);

}  // namespace lardiner::ledger
