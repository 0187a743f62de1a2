// Bitmaps that the tests draw codes on.
#pragma once

#include <QByteArray>

#include "symbol/qr.h"
#include "symbol/read.h"

namespace lardiner::symbol {

/// A white page.
inline Grey white(int width, int height) { return {width, height, width, QByteArray(width * height, '\xff')}; }

inline void blacken(Grey& page, int left, int top, int width, int height) {
  for (int y = top; y < top + height; ++y)
    for (int x = left; x < left + width; ++x) page.bytes[y * page.stride + x] = '\0';
}

/// Draws the modules with `dots` a side from this corner on; the quiet zone is the caller's.
inline void draw(Grey& page, const Matrix& code, int left, int top, int dots) {
  for (int y = 0; y < code.size; ++y)
    for (int x = 0; x < code.size; ++x)
      if (code.dark(x, y)) blacken(page, left + x * dots, top + y * dots, dots, dots);
}

/// The code alone with its quiet zone.
inline Grey drawn(const Matrix& code, int dots) {
  Grey page = white((code.size + 2 * kQuietZone) * dots, (code.size + 2 * kQuietZone) * dots);
  draw(page, code, kQuietZone * dots, kQuietZone * dots, dots);
  return page;
}

}  // namespace lardiner::symbol
