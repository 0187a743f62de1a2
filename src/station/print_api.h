// Printers and prints for programs, as JSON.
#pragma once

#include <optional>

#include "station/visit.h"

namespace lardiner::station {

/// /api/printers, /api/prints and what is beneath it; nothing where the path is another. REQUIRES: of a POST that
/// somebody is signed in.
std::optional<Reply> print_api(const Visit& visit);

}  // namespace lardiner::station
