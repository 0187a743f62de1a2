// The page that a medium is printed as.
#pragma once

#include "book/kitchen.h"
#include "printer/media_match.h"

namespace lardiner::command {

/// Of a roll one label, of a sheet all of it.
printer::Size page_of(const book::Media& medium);

}  // namespace lardiner::command
