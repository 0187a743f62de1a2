// The best attempt at a label: how large the code, what is run together, how large the type.
#pragma once

#include "paper/label_stack.h"

namespace lardiner::paper {

/// With the largest code that the template allows and beside which everything fits, down to `least_module` dots a
/// module: a code that is not read is no label, while type above its least is legible. Then the largest type; facts are
/// run together before anything shrinks much below its preferred size. Where nothing fits: what lacks beside the
/// smallest code with all at their least.
Attempt best_attempt(const Ground& ground, Dots least_module);

}  // namespace lardiner::paper
