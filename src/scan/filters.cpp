// Greys without noise, sharper, or with thicker or thinner strokes.
#include "scan/filters.h"

#include <algorithm>
#include <array>
#include <vector>

#include "scan/pixels.h"

namespace lardiner::scan {

namespace {

// Rows become columns, in blocks that a cache holds.
symbol::Grey transposed(const symbol::Grey& grey) {
  constexpr int kBlock = 64;
  symbol::Grey out = blank(grey.height, grey.width);
  quint8* const to = row(out, 0);
  for (int top = 0; top < grey.height; top += kBlock)
    for (int left = 0; left < grey.width; left += kBlock)
      for (int y = top; y < std::min(grey.height, top + kBlock); ++y) {
        const quint8* const from = row(grey, y);
        for (int x = left; x < std::min(grey.width, left + kBlock); ++x) to[qsizetype{x} * out.stride + y] = from[x];
      }
  return out;
}

// Each row by `filter`, then each column.
template <class Filter>
symbol::Grey both_ways(const symbol::Grey& grey, const Filter& filter) {
  const auto rows = [&](const symbol::Grey& from) {
    symbol::Grey out = blank(from.width, from.height);
    for (int y = 0; y < from.height; ++y) filter(row(from, y), row(out, y), from.width);
    return out;
  };
  return transposed(rows(transposed(rows(grey))));
}

// The means of one row, from the sums of the columns over `rows` rows: a window is moved along.
void average_row(const std::vector<int>& columns, quint8* to, int reach, int rows) {
  constexpr int kShift = 24;
  const int length = static_cast<int>(columns.size());
  int sum = 0, count = 0;
  qint64 share = 0;  // of one pixel of the window
  const auto counted = [&](int pixels) {
    count += pixels;
    if (count > 0) share = (qint64{1} << kShift) / (qint64{count} * rows);
  };
  for (int at = 0; at < std::min(reach, length); ++at) sum += columns[static_cast<size_t>(at)];
  counted(std::min(reach, length));
  for (int at = 0; at < length; ++at) {
    const bool enters = at + reach<length, leaves = at> reach;
    if (enters) sum += columns[static_cast<size_t>(at + reach)];
    if (leaves) sum -= columns[static_cast<size_t>(at - reach - 1)];
    if (enters != leaves) counted(enters ? 1 : -1);
    to[at] = static_cast<quint8>((sum * share + (1 << (kShift - 1))) >> kShift);
  }
}

void add(std::vector<int>& columns, const quint8* from) {
  for (int& sum : columns) sum += *from++;
}
void take(std::vector<int>& columns, const quint8* from) {
  for (int& sum : columns) sum -= *from++;
}

template <class Choose>
symbol::Grey extreme(const symbol::Grey& grey, int reach, const Choose& choose) {
  return both_ways(grey, [&](const quint8* from, quint8* to, int length) {
    for (int at = 0; at < length; ++at) {
      quint8 chosen = from[at];
      for (int near = std::max(0, at - reach); near <= std::min(length - 1, at + reach); ++near)
        chosen = choose(chosen, from[near]);
      to[at] = chosen;
    }
  });
}

quint8 darker(quint8 a, quint8 b) { return std::min(a, b); }
quint8 lighter(quint8 a, quint8 b) { return std::max(a, b); }

// The middle of nine: of the highest of the lows, the middle of the middles and the lowest of the highs of three
// columns.
quint8 median_of_columns(const std::array<std::array<quint8, 3>, 3>& sorted) {
  const auto middle = [](quint8 a, quint8 b, quint8 c) {
    return std::max(std::min(a, b), std::min(std::max(a, b), c));
  };
  return middle(std::max({sorted[0][0], sorted[1][0], sorted[2][0]}), middle(sorted[0][1], sorted[1][1], sorted[2][1]),
                std::min({sorted[0][2], sorted[1][2], sorted[2][2]}));
}

std::array<quint8, 3> sorted_column(const quint8* above, const quint8* here, const quint8* below, int x) {
  quint8 a = above[x], b = here[x], c = below[x];
  if (a > b) std::swap(a, b);
  if (b > c) std::swap(b, c);
  if (a > b) std::swap(a, b);
  return {a, b, c};
}

}  // namespace

symbol::Grey averaged(const symbol::Grey& grey, int reach) {
  symbol::Grey out = blank(grey.width, grey.height);
  std::vector<int> columns(static_cast<size_t>(grey.width));
  for (int y = 0; y < std::min(reach, grey.height); ++y) add(columns, row(grey, y));
  for (int y = 0; y < grey.height; ++y) {
    if (y + reach < grey.height) add(columns, row(grey, y + reach));
    if (y > reach) take(columns, row(grey, y - reach - 1));
    average_row(columns, row(out, y), reach, std::min(grey.height - 1, y + reach) - std::max(0, y - reach) + 1);
  }
  return out;
}

symbol::Grey blurred(const symbol::Grey& grey, int reach) { return averaged(averaged(grey, reach), reach); }

symbol::Grey median(const symbol::Grey& grey) {
  symbol::Grey out = blank(grey.width, grey.height);
  for (int y = 0; y < grey.height; ++y) {
    const quint8* const above = row(grey, std::max(0, y - 1));
    const quint8* const here = row(grey, y);
    const quint8* const below = row(grey, std::min(grey.height - 1, y + 1));
    std::array<std::array<quint8, 3>, 3> columns{};
    columns[1] = sorted_column(above, here, below, 0);
    columns[0] = columns[1];
    for (int x = 0; x < grey.width; ++x) {
      columns[2] = sorted_column(above, here, below, std::min(grey.width - 1, x + 1));
      row(out, y)[x] = median_of_columns(columns);
      columns[0] = columns[1];
      columns[1] = columns[2];
    }
  }
  return out;
}

symbol::Grey sharpened(const symbol::Grey& grey, int reach, int times) {
  symbol::Grey out = blurred(grey, reach);
  for (int y = 0; y < grey.height; ++y)
    for (int x = 0; x < grey.width; ++x) {
      const int tone = row(grey, y)[x], soft = row(out, y)[x];
      row(out, y)[x] = static_cast<quint8>(std::clamp(tone + times * (tone - soft), 0, 255));
    }
  return out;
}

symbol::Grey thickened(const symbol::Grey& grey, int reach) { return extreme(grey, reach, darker); }
symbol::Grey thinned(const symbol::Grey& grey, int reach) { return extreme(grey, reach, lighter); }

}  // namespace lardiner::scan
