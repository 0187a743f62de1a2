// Codes found in a grey bitmap: QR first of all, and the codes that suppliers print.
#include "symbol/read.h"

#include <ZXing/ReadBarcode.h>

#include <algorithm>
#include <tuple>

namespace lardiner::symbol {

namespace {

// Others are not used in the food trade and only add wrong findings among lines of text.
ZXing::BarcodeFormats formats(Kinds kinds) {
  using enum ZXing::BarcodeFormat;
  const ZXing::BarcodeFormats square = QRCode | DataMatrix;
  return kinds == Kinds::Square ? square
                                : square | EAN13 | EAN8 | UPCA | UPCE | Code128 | ITF | DataBar | DataBarExpanded;
}

ZXing::Binarizer binarizer(Threshold threshold) {
  switch (threshold) {
    case Threshold::Neighbourhood:
      return ZXing::Binarizer::LocalAverage;
    case Threshold::Picture:
      return ZXing::Binarizer::GlobalHistogram;
    case Threshold::Middle:
      break;
  }
  return ZXing::Binarizer::FixedThreshold;
}

ZXing::DecodeHints hints(const Reading& reading) {
  return ZXing::DecodeHints()
      .setFormats(formats(reading.kinds))
      .setBinarizer(binarizer(reading.threshold))
      .setValidateITFCheckSum(true);
}

QPoint point(const ZXing::PointI& corner) { return {corner.x, corner.y}; }

Found found(const ZXing::Result& result) {
  const ZXing::ByteArray& bytes = result.bytes();
  const ZXing::Position& at = result.position();
  return {QString::fromStdString(result.text()),
          QByteArray(reinterpret_cast<const char*>(bytes.data()), bytes.size()),
          QString::fromStdString(ZXing::ToString(result.format())),
          {point(at.topLeft()), point(at.topRight()), point(at.bottomRight()), point(at.bottomLeft())}};
}

}  // namespace

std::vector<Found> read_codes(const Grey& bitmap) { return read_codes(bitmap, Reading{}); }

std::vector<Found> read_codes(const Grey& bitmap, const Reading& reading) {
  const ZXing::ImageView view(reinterpret_cast<const quint8*>(bitmap.bytes.constData()), bitmap.width, bitmap.height,
                              ZXing::ImageFormat::Lum, bitmap.stride);
  std::vector<Found> all;
  for (const ZXing::Result& result : ZXing::ReadBarcodes(view, hints(reading))) all.push_back(found(result));
  const auto place = [](const Found& code) { return std::tuple(code.corners[0].y(), code.corners[0].x()); };
  std::stable_sort(all.begin(), all.end(), [&](const Found& a, const Found& b) { return place(a) < place(b); });
  return all;
}

}  // namespace lardiner::symbol
