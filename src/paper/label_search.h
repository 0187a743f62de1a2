// The best attempt at a label: how large the code, what is run together, how large the type.
#pragma once

#include "paper/label_stack.h"

namespace lardiner::paper {

/// From the largest code that the template allows down to `least_module` dots a module: the first that leaves all facts
/// apart and near their preferred sizes, else the one with the largest type; a larger code is worth a little type.
/// Facts are run together before anything shrinks much below its preferred size. A code below the good size is taken
/// only where nothing else fits. Where nothing fits: what lacks with the smallest code and all at their least.
Attempt best_attempt(const Ground& ground, Dots least_module);

}  // namespace lardiner::paper
