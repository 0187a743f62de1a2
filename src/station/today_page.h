// What the page of today says: deadlines that run, what to discard, what ends today, what to use first.
#pragma once

#include "station/desk.h"
#include "station/pages.h"

namespace lardiner::station {

constexpr int kDaysAhead = 3;   ///< of what is to be used first
constexpr int kMostRows = 200;  ///< of one kind; the rest is counted

problem::Expected<Part> today_page(Desk& desk, const words::Language& language);

}  // namespace lardiner::station
