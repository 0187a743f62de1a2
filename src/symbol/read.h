// Codes found in a grey bitmap: QR first of all, and the codes that suppliers print.
#pragma once

#include <QByteArray>
#include <QPoint>
#include <QString>
#include <array>
#include <vector>

namespace lardiner::symbol {

/// A bitmap of 8-bit greys, 0 is black; rows from the top, each `stride` bytes after the one before.
struct Grey {
  int width = 0;
  int height = 0;
  int stride = 0;
  QByteArray bytes;
};

struct Found {
  QString text;                     ///< the content as text
  QByteArray bytes;                 ///< the content as it stands in the code
  QString format;                   ///< "QRCode", "DataMatrix", "EAN-13", …
  std::array<QPoint, 4> corners{};  ///< in pixels: top left, top right, bottom right, bottom left of the code itself
};

/// What counts as dark.
enum class Threshold {
  Neighbourhood,  ///< darker than what lies around: uneven light
  Picture,        ///< darker than the valley between the two commonest greys of all: fine noise, soft edges
  Middle          ///< darker than 128: a bitmap that is black and white already
};

/// Which codes are looked for.
enum class Kinds {
  All,    ///< all that `read_codes` names
  Square  ///< QR and Data Matrix alone: error correction guards them, a digit at most the short line codes
};

/// How a bitmap is read.
struct Reading {
  Threshold threshold = Threshold::Neighbourhood;
  Kinds kinds = Kinds::All;
};

/// Every code in the bitmap, in the order of its top left corner (from the top, then from the left): QR, Data Matrix,
/// EAN and UPC, Code 128, ITF with check digit, GS1 DataBar; turned any way, dark on light. Nothing found is an empty
/// list. REQUIRES: 0 < width <= stride, 0 < height, and bytes for height rows. Any number of threads may read at once.
std::vector<Found> read_codes(const Grey& bitmap);
std::vector<Found> read_codes(const Grey& bitmap, const Reading& reading);

}  // namespace lardiner::symbol
