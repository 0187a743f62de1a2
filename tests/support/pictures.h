// Pictures of codes that the tests make, whole and damaged.
#pragma once

#include <QBuffer>
#include <QImage>
#include <algorithm>
#include <random>

#include "scan/filters.h"
#include "scan/pixels.h"
#include "symbol/qr.h"

namespace lardiner::scan {

inline const QByteArray kAddress =
    QByteArrayLiteral("https://id.example/01/00400000000077/10/CLB261125A01M/21/A0100001?7003=2612011040");

inline symbol::Grey white(int width, int height) { return {width, height, width, QByteArray(width * height, '\xff')}; }

/// Draws the code of a content with so many pixels a module, its corner there.
inline void draw(symbol::Grey& page, const QByteArray& content, int left, int top, int pixels) {
  const symbol::Matrix code = symbol::encode_qr(content, symbol::ErrorCorrection::M).value();
  for (int y = 0; y < code.size * pixels; ++y)
    for (int x = 0; x < code.size * pixels; ++x)
      if (code.dark(x / pixels, y / pixels)) row(page, top + y)[left + x] = 0;
}

/// The code alone in a white picture, with twice its quiet zone.
inline symbol::Grey drawn(const QByteArray& content, int pixels) {
  const int edge = 2 * symbol::kQuietZone * pixels;
  const int side = symbol::encode_qr(content, symbol::ErrorCorrection::M)->size * pixels + 2 * edge;
  symbol::Grey page = white(side, side);
  draw(page, content, edge, edge, pixels);
  return page;
}

/// What happens to a picture, in this order.
struct Damage {
  int pixels = 5;             ///< a module's side, where a picture of kAddress is made for it
  int lost = 0;               ///< one column of pixels in so many is white, as under a burnt head
  int grown = 0;              ///< pixels that light gains on dark; less than 0: dark on light
  int smear = 0;              ///< pixels over which a thumb has drawn ink out to the right
  int blur = 0;               ///< reach
  int dark = 0, light = 255;  ///< greys of ink and paper
  int shade = 0;              ///< so much darker at the right edge
  int noise = 0;              ///< most that a pixel is off
  int specks = 0;             ///< of a thousand pixels so many are black or white
};

/// Half of each pixel is the mean of those before it.
inline symbol::Grey smeared(const symbol::Grey& page, int pixels) {
  symbol::Grey out = page;
  for (int y = 0; y < page.height; ++y)
    for (int x = 0; x < page.width; ++x) {
      const int first = std::max(0, x - pixels);
      int sum = 0;
      for (int from = first; from <= x; ++from) sum += row(page, y)[from];
      row(out, y)[x] = static_cast<quint8>((row(page, y)[x] + sum / (x - first + 1)) / 2);
    }
  return out;
}

inline symbol::Grey damaged(symbol::Grey page, const Damage& damage, unsigned seed) {
  std::mt19937 random(seed);
  const auto below = [&](int most) { return static_cast<int>(random() % static_cast<unsigned>(most)); };
  if (damage.lost > 0)
    for (int x = 0; x < page.width; ++x)
      if (below(damage.lost) == 0)
        for (int y = 0; y < page.height; ++y) row(page, y)[x] = 255;
  if (damage.grown > 0) page = thinned(page, damage.grown);
  if (damage.grown < 0) page = thickened(page, -damage.grown);
  if (damage.smear > 0) page = smeared(page, damage.smear);
  if (damage.blur > 0) page = blurred(page, damage.blur);
  for (int y = 0; y < page.height; ++y)
    for (int x = 0; x < page.width; ++x) {
      int tone = damage.dark + (damage.light - damage.dark) * row(page, y)[x] / 255 - damage.shade * x / page.width;
      if (damage.noise > 0) tone += below(2 * damage.noise + 1) - damage.noise;
      if (below(1000) < damage.specks) tone = below(2) * 255;
      row(page, y)[x] = static_cast<quint8>(std::clamp(tone, 0, 255));
    }
  return page;
}

inline symbol::Grey damaged(const Damage& damage, unsigned seed = 1) {
  return damaged(drawn(kAddress, damage.pixels), damage, seed);
}

inline symbol::Grey grey_of(const QImage& image) {
  const QImage grey = image.convertToFormat(QImage::Format_Grayscale8);
  symbol::Grey page = white(grey.width(), grey.height());
  for (int y = 0; y < page.height; ++y) std::copy_n(grey.constScanLine(y), page.width, row(page, y));
  return page;
}

inline QImage image_of(const symbol::Grey& grey) {
  return QImage(row(grey, 0), grey.width, grey.height, grey.stride, QImage::Format_Grayscale8).copy();
}

inline QByteArray file_of(const QImage& image, const char* format, int quality = 90) {
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  image.save(&buffer, format, quality);
  return buffer.data();
}

inline QByteArray png(const symbol::Grey& grey) { return file_of(image_of(grey), "png"); }

}  // namespace lardiner::scan
