// Pictures in another size, and parts of them.
#include "scan/shapes.h"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "scan/pixels.h"

namespace lardiner::scan {

namespace {

// What one place of a row is made of: pixels from `first` on, each with its weight in 1/4096.
struct Part {
  int first = 0;
  std::vector<int> weights;
};

// One for each of `to` places over `from` pixels.
std::vector<Part> parts(int from, int to) {
  constexpr double kWhole = 4096;
  const double step = double(from) / to, reach = std::max(1.0, step);  // a tent: linear, or a mean with soft ends
  std::vector<Part> all(static_cast<size_t>(to));
  for (int at = 0; at < to; ++at) {
    const double middle = (at + 0.5) * step - 0.5;
    const int first = std::max(0, int(std::ceil(middle - reach))),
              last = std::min(from - 1, int(std::floor(middle + reach)));
    std::vector<double> shares;
    double sum = 0;
    for (int pixel = first; pixel <= last; ++pixel)
      sum += shares.emplace_back(std::max(1e-6, 1 - std::abs(pixel - middle) / reach));
    Part& part = all[static_cast<size_t>(at)];
    part.first = first;
    for (const double share : shares) part.weights.push_back(int(std::lround(share / sum * kWhole)));
  }
  return all;
}

}  // namespace

symbol::Grey scaled(const symbol::Grey& grey, int width, int height) {
  constexpr int kShift = 12;
  const std::vector<Part> across = parts(grey.width, width), down = parts(grey.height, height);
  symbol::Grey narrow = blank(width, grey.height), out = blank(width, height);
  for (int y = 0; y < grey.height; ++y)
    for (int x = 0; x < width; ++x) {
      const Part& part = across[static_cast<size_t>(x)];
      const quint8* from = row(std::as_const(grey), y) + part.first;
      int sum = 1 << (kShift - 1);
      for (const int weight : part.weights) sum += weight * *from++;
      row(narrow, y)[x] = static_cast<quint8>(std::min(255, sum >> kShift));
    }
  std::vector<int> sums(static_cast<size_t>(width));
  for (int y = 0; y < height; ++y) {
    const Part& part = down[static_cast<size_t>(y)];
    std::fill(sums.begin(), sums.end(), 1 << (kShift - 1));
    for (size_t of = 0; of < part.weights.size(); ++of) {
      const quint8* from = row(std::as_const(narrow), part.first + int(of));
      for (size_t x = 0; x < sums.size(); ++x) sums[x] += part.weights[of] * from[x];
    }
    for (size_t x = 0; x < sums.size(); ++x) row(out, y)[x] = static_cast<quint8>(std::min(255, sums[x] >> kShift));
  }
  return out;
}

symbol::Grey cut(const symbol::Grey& grey, const QRect& part) {
  symbol::Grey out = blank(part.width(), part.height());
  for (int y = 0; y < part.height(); ++y) std::copy_n(row(grey, part.y() + y) + part.x(), part.width(), row(out, y));
  return out;
}

}  // namespace lardiner::scan
