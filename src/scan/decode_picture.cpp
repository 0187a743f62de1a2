// A picture file as a grey bitmap.
#include "scan/decode_picture.h"

#include <QBuffer>
#include <QImage>
#include <QImageReader>
#include <algorithm>

#include "scan/file_kind.h"
#include "scan/pixels.h"
#include "scan/refusals.h"

namespace lardiner::scan {

namespace {

constexpr int kMostMegabytes = 512;          // of one decoded picture, whatever its depth
constexpr qint64 kMostWork = 2'000'000'000;  // pixels times scans of a JPEG

const char* format_name(FileKind kind) {
  return kind == FileKind::Png ? "png" : kind == FileKind::Jpeg ? "jpeg" : "webp";
}

int bytes_a_pixel(QImage::Format format) {
  constexpr int kBits = 8;
  return (QImage::toPixelFormat(format).bitsPerPixel() + kBits - 1) / kBits;
}

quint8 over_white(QRgb colour) {
  const int alpha = qAlpha(colour);
  return static_cast<quint8>((qGray(colour) * alpha + 255 * (255 - alpha) + 127) / 255);
}

// A few rows at a time, so that a picture never stands in memory twice in full depth.
symbol::Grey greys(const QImage& image) {
  constexpr int kRows = 64;
  symbol::Grey out = blank(image.width(), image.height());
  for (int top = 0; top < image.height(); top += kRows) {
    const int rows = std::min(kRows, image.height() - top);
    const QImage part = image.copy(0, top, image.width(), rows).convertToFormat(QImage::Format_ARGB32);
    for (int y = 0; y < rows; ++y) {
      const QRgb* from = reinterpret_cast<const QRgb*>(part.constScanLine(y));
      std::transform(from, from + image.width(), row(out, top + y), over_white);
    }
  }
  return out;
}

// What speaks against decoding this picture.
problem::Expected<void> checked(const QImageReader& reader, const QByteArray& bytes, const QString& name,
                                const Bounds& bounds) {
  const QSize size = reader.size();
  if (size.isEmpty()) return refused_as_damaged(name);
  const qint64 pixels = qint64{size.width()} * size.height();
  if (pixels > bounds.most_pixels) return refused_as_large(name, size, bounds.most_pixels);
  const int scans = kind_of(bytes) == FileKind::Jpeg ? jpeg_scans(bytes) : 1;
  if (pixels * scans > kMostWork) return refused_as_slow(name, scans);
  constexpr qint64 kBytesAMegabyte = 1 << 20;
  const qint64 most = kMostMegabytes * kBytesAMegabyte, needed = pixels * bytes_a_pixel(reader.imageFormat());
  if (needed > most) return refused_as_deep(name, needed, most);
  return {};
}

}  // namespace

problem::Expected<symbol::Grey> decode_picture(const QByteArray& bytes, const QString& name, const Bounds& bounds) {
  static const bool kLimited = (QImageReader::setAllocationLimit(kMostMegabytes), true);
  Q_UNUSED(kLimited);
  QBuffer buffer;
  buffer.setData(bytes);
  buffer.open(QIODevice::ReadOnly);
  QImageReader reader(&buffer, format_name(kind_of(bytes)));
  reader.setAutoTransform(true);
  if (const auto fine = checked(reader, bytes, name, bounds); !fine) return tl::unexpected(fine.error());
  const QImage image = reader.read();
  if (image.isNull()) return refused_as_damaged(name);
  return greys(image);
}

}  // namespace lardiner::scan
