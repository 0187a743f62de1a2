// Greys made easier to read, one pixel at a time or against its neighbourhood.
#include "scan/tones.h"

#include <algorithm>
#include <array>

#include "scan/filters.h"
#include "scan/pixels.h"
#include "scan/shapes.h"

namespace lardiner::scan {

namespace {

using Tones = std::array<quint8, 256>;

symbol::Grey mapped(const symbol::Grey& grey, const Tones& tones) {
  symbol::Grey out = blank(grey.width, grey.height);
  for (int y = 0; y < grey.height; ++y)
    std::transform(row(grey, y), row(grey, y) + grey.width, row(out, y), [&](quint8 tone) { return tones[tone]; });
  return out;
}

// The tone below which this share of the pixels lies.
int tone_at(const std::array<qint64, 256>& counts, qint64 rank) {
  int tone = 0;
  for (qint64 below = counts[0]; below <= rank && tone < 255; below += counts[static_cast<size_t>(tone)]) ++tone;
  return tone;
}

std::array<qint64, 256> histogram(const symbol::Grey& grey) {
  std::array<qint64, 256> counts{};
  for (int y = 0; y < grey.height; ++y)
    for (const quint8* at = row(grey, y); at != row(grey, y) + grey.width; ++at) ++counts[*at];
  return counts;
}

}  // namespace

symbol::Grey inverted(const symbol::Grey& grey) {
  Tones tones{};
  for (size_t tone = 0; tone < tones.size(); ++tone) tones[tone] = static_cast<quint8>(255 - tone);
  return mapped(grey, tones);
}

symbol::Grey stretched(const symbol::Grey& grey) {
  const auto counts = histogram(grey);
  const qint64 pixels = qint64{grey.width} * grey.height;
  const int dark = tone_at(counts, pixels / 50), light = std::max(dark + 1, tone_at(counts, pixels - 1 - pixels / 50));
  Tones tones{};
  for (int tone = 0; tone < 256; ++tone)
    tones[static_cast<size_t>(tone)] = static_cast<quint8>(std::clamp(255 * (tone - dark) / (light - dark), 0, 255));
  return mapped(grey, tones);
}

symbol::Grey stretched_locally(const symbol::Grey& grey, int side) {
  constexpr int kCells = 4;       // of a side: extremes are looked for on a coarser grid
  constexpr int kLeastRange = 8;  // below it there is nothing but noise
  const int cell = std::max(1, side / kCells);
  const int width = (grey.width + cell - 1) / cell, height = (grey.height + cell - 1) / cell;
  symbol::Grey dark = blank(width, height), light = blank(width, height);
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      quint8 least = 255, most = 0;
      for (int v = y * cell; v < std::min(grey.height, (y + 1) * cell); ++v)
        for (int u = x * cell; u < std::min(grey.width, (x + 1) * cell); ++u) {
          least = std::min(least, row(grey, v)[u]);
          most = std::max(most, row(grey, v)[u]);
        }
      row(dark, y)[x] = least;
      row(light, y)[x] = most;
    }
  dark = scaled(averaged(thickened(dark, kCells / 2), 1), grey.width, grey.height);
  light = scaled(averaged(thinned(light, kCells / 2), 1), grey.width, grey.height);
  symbol::Grey out = blank(grey.width, grey.height);
  for (int y = 0; y < grey.height; ++y)
    for (int x = 0; x < grey.width; ++x) {
      const int from = row(dark, y)[x], range = row(light, y)[x] - from;
      row(out, y)[x] =
          range < kLeastRange ? 255 : static_cast<quint8>(std::clamp(255 * (row(grey, y)[x] - from) / range, 0, 255));
    }
  return out;
}

symbol::Grey thresholded(const symbol::Grey& grey, int side, int below) {
  const symbol::Grey mean = averaged(grey, side / 2);
  symbol::Grey out = blank(grey.width, grey.height);
  for (int y = 0; y < grey.height; ++y)
    for (int x = 0; x < grey.width; ++x) row(out, y)[x] = row(grey, y)[x] + below < row(mean, y)[x] ? 0 : 255;
  return out;
}

}  // namespace lardiner::scan
