// The packages that a supplier's lot comes in, at first and again; for lot.cpp and its parts.
#pragma once

#include "history/lot.h"

namespace lardiner::history {

/// The packages of a delivery that was accepted, sharing its quantity evenly; of one that was not, none.
void add_packages(Lot& lot, const Event& event);

}  // namespace lardiner::history
