// A date that lives on in whatever is made of the food.
#pragma once

#include "batch/use_by.h"

namespace lardiner::batch {

/// `ready`: of a ready-to-eat part or a rework, so that no later cook ends it.
struct Carried {
  Cap cap;
  bool ready = false;
};

}  // namespace lardiner::batch
