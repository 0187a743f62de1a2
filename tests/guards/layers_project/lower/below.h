// A layer of straw that stands below.
#pragma once

namespace straw::lower {
int below();
}  // namespace straw::lower
