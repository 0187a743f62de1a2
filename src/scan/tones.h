// Greys made easier to read, one pixel at a time or against its neighbourhood.
#pragma once

#include "symbol/read.h"

namespace lardiner::scan {

/// Dark is light and light dark.
symbol::Grey inverted(const symbol::Grey& grey);

/// The greys between the darkest and the lightest two in a hundred spread from black to white.
symbol::Grey stretched(const symbol::Grey& grey);

/// Each pixel between the darkest and the lightest of its neighbourhood, a square of about `side` pixels; where these
/// are nearly alike, white. REQUIRES: side > 0.
symbol::Grey stretched_locally(const symbol::Grey& grey, int side);

/// Black where darker than its neighbourhood's mean, a square of `side` pixels, by more than `below`; else white.
/// REQUIRES: side > 0.
symbol::Grey thresholded(const symbol::Grey& grey, int side, int below);

}  // namespace lardiner::scan
