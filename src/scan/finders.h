// Places in a picture that look like the finder of a QR code, whether or not a code was read there.
#pragma once

#include <QPoint>
#include <vector>

#include "symbol/read.h"

namespace lardiner::scan {

struct Finder {
  QPoint middle;
  double module = 0;  ///< a module's side, in pixels
};

/// Where dark and light alternate as 1:1:3:1:1, both across and down (ISO/IEC 18004, 6.3.3.1), from the top; each place
/// once. A sign that a code may be there, no more: some stand in text, and a damaged finder is not found.
std::vector<Finder> finders(const symbol::Grey& grey);

}  // namespace lardiner::scan
