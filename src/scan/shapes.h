// Pictures in another size, and parts of them.
#pragma once

#include <QRect>

#include "symbol/read.h"

namespace lardiner::scan {

/// In another size: larger ones are interpolated, in smaller ones each pixel is the mean of what it covers.
/// REQUIRES: width > 0, height > 0.
symbol::Grey scaled(const symbol::Grey& grey, int width, int height);

/// The pixels within `part`. REQUIRES: it is not empty and lies within the picture.
symbol::Grey cut(const symbol::Grey& grey, const QRect& part);

}  // namespace lardiner::scan
