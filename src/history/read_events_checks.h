// What a row's values must say together.
#pragma once

#include "batch/read_records_values.h"
#include "history/event.h"

namespace lardiner::history {

/// Refuses what the values lack or contradict together, and fills in what follows from the book: whether a received lot
/// needs temperature control, the state in which it came, the ingredient of a supplier item, and the limits that a
/// place is held to.
void check(reader::Fields& fields, Event& event, const batch::Reading& reading);

}  // namespace lardiner::history
