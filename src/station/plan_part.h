// The plan of the orders as Today tells it: what can start when, what is next, what cannot be met.
#pragma once

#include "station/desk.h"
#include "station/pages.h"

namespace lardiner::station {

/// A row "PLAN" of the page, where the station has orders; with the first `most` starts, the rest is counted.
void add_plan(Part& page, Desk& desk, const words::Language& language, size_t most);

}  // namespace lardiner::station
