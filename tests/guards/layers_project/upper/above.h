// A layer of straw that stands above.
#pragma once

namespace straw::upper {
int above();
}  // namespace straw::upper
