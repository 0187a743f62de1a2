// The form of what happened to a lot: what can be said, and what was typed where it was refused.
#pragma once

#include "station/visit.h"

namespace lardiner::station {

/// What a lot's page asks. `refused`: why what the request says was not recorded: then all of it stands there again,
/// and the errors beside it; nothing where the form is new.
void add_happened_form(const Visit& visit, Part& page, const problem::Errors& refused);

}  // namespace lardiner::station
