// Greys without noise, sharper, or with thicker or thinner strokes.
#pragma once

#include "symbol/read.h"

namespace lardiner::scan {

/// The mean over a square of 2 * reach + 1 pixels; less at the edges. REQUIRES: reach >= 0.
symbol::Grey averaged(const symbol::Grey& grey, int reach);

/// Nearly a Gaussian blur: averaged twice. REQUIRES: reach >= 0.
symbol::Grey blurred(const symbol::Grey& grey, int reach);

/// The median over 3 by 3 pixels: single stray pixels go, edges stay.
symbol::Grey median(const symbol::Grey& grey);

/// What a blur of this reach takes away, put on again `times` over.
symbol::Grey sharpened(const symbol::Grey& grey, int reach, int times);

/// The darkest, or the lightest, of 2 * reach + 1 pixels across and down.
symbol::Grey thickened(const symbol::Grey& grey, int reach);
symbol::Grey thinned(const symbol::Grey& grey, int reach);

}  // namespace lardiner::scan
