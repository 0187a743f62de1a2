// Rows of a grey bitmap.
#pragma once

#include "symbol/read.h"

namespace lardiner::scan {

/// A bitmap without spare bytes, black.
inline symbol::Grey blank(int width, int height) {
  return {width, height, width, QByteArray(qsizetype{width} * height, '\0')};
}

inline const quint8* row(const symbol::Grey& grey, int y) {
  return reinterpret_cast<const quint8*>(grey.bytes.constData()) + qsizetype{y} * grey.stride;
}
/// REQUIRES: `grey` shares its bytes with none.
inline quint8* row(symbol::Grey& grey, int y) {
  return reinterpret_cast<quint8*>(grey.bytes.data()) + qsizetype{y} * grey.stride;
}

}  // namespace lardiner::scan
