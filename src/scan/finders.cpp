// Places in a picture that look like the finder of a QR code, whether or not a code was read there.
#include "scan/finders.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <optional>

#include "scan/pixels.h"

namespace lardiner::scan {

namespace {

constexpr int kStep = 2;               // rows from one that is looked at to the next
constexpr int kReach = 64;             // of the mean that dark is told by, along the row
constexpr int kLeastRun = 17;          // pixels a finder's side has at the least: smaller ones are not read anyway
constexpr size_t kMostFinders = 2000;  // a picture of nothing but finders ends there

// A finder and the rows that cross its middle.
struct Seen {
  Finder finder;
  int rows = 1;

  bool often() const { return rows >= 2 && rows * kStep >= finder.module; }
};

using Runs = std::array<int, 5>;

bool is_finder(const Runs& runs) {
  const int sum = runs[0] + runs[1] + runs[2] + runs[3] + runs[4];
  if (sum < kLeastRun) return false;
  const auto is = [&](int run, int modules) { return std::abs(7 * run - modules * sum) * 2 <= modules * sum + 2 * 7; };
  return is(runs[0], 1) && is(runs[1], 1) && is(runs[2], 3) && is(runs[3], 1) && is(runs[4], 1);
}

int sum_of(const Runs& runs) { return runs[0] + runs[1] + runs[2] + runs[3] + runs[4]; }

// For each pixel of a row the grey below which it is dark.
void find_limits(const quint8* from, std::vector<int>& limits) {
  const int length = static_cast<int>(limits.size());
  int sum = 0, count = 0;
  for (int at = 0; at < std::min(kReach, length); ++at) sum += from[at], ++count;
  for (int at = 0; at < length; ++at) {
    if (at + kReach < length) sum += from[at + kReach], ++count;
    if (at > kReach) sum -= from[at - kReach - 1], --count;
    limits[static_cast<size_t>(at)] = sum / count * 31 / 32;
  }
}

// The five runs down the column around a dark pixel; nothing where they are cut off or as long as no finder's could be.
std::optional<Runs> runs_down(const symbol::Grey& grey, QPoint middle, int limit, int most) {
  Runs runs{};
  const auto count = [&](size_t run, int& y, int step, bool dark) {
    for (; y >= 0 && y < grey.height && (row(grey, y)[middle.x()] < limit) == dark; y += step)
      if (++runs[run] > most) return false;
    return runs[run] > 0;
  };
  int up = middle.y(), down = middle.y() + 1;
  const bool above = count(2, up, -1, true) && count(1, up, -1, false) && count(0, up, -1, true);
  if (!above) return std::nullopt;
  while (down < grey.height && row(grey, down)[middle.x()] < limit && runs[2] <= most) ++runs[2], ++down;
  if (!count(3, down, 1, false) || !count(4, down, 1, true)) return std::nullopt;
  return runs;
}

void keep(std::vector<Seen>& all, const Finder& found) {
  const auto same = [&](const Seen& other) {
    return (other.finder.middle - found.middle).manhattanLength() < 4 * std::max(other.finder.module, found.module);
  };
  const auto known = std::find_if(all.rbegin(), all.rend(), same);
  if (known == all.rend()) {
    all.push_back({found});
  } else {
    ++known->rows;
  }
}

// Looks at the five runs that end before `end`.
void look(const symbol::Grey& grey, const Runs& runs, QPoint end, const std::vector<int>& limits,
          std::vector<Seen>& all) {
  if (!is_finder(runs)) return;
  const int across = sum_of(runs);
  const QPoint middle(end.x() - runs[4] - runs[3] - (runs[2] + 1) / 2, end.y());
  const auto down = runs_down(grey, middle, limits[static_cast<size_t>(middle.x())], across);
  if (!down || !is_finder(*down) || std::abs(sum_of(*down) - across) * 3 > across) return;
  keep(all, {middle, across / 7.0});
}

}  // namespace

std::vector<Finder> finders(const symbol::Grey& grey) {
  std::vector<Seen> all;
  std::vector<int> limits(static_cast<size_t>(grey.width));
  for (int y = kStep / 2; y < grey.height && all.size() < kMostFinders; y += kStep) {
    const quint8* const pixels = row(grey, y);
    find_limits(pixels, limits);
    Runs runs{};
    bool dark = false;
    for (int x = 0; x <= grey.width; ++x) {
      const bool ends = x == grey.width;
      if (!ends && (pixels[x] < limits[static_cast<size_t>(x)]) == dark) {
        ++runs[4];
        continue;
      }
      if (dark) look(grey, runs, {x, y}, limits, all);
      std::copy(runs.begin() + 1, runs.end(), runs.begin());
      runs[4] = 1;
      dark = !dark;
    }
  }
  std::vector<Finder> often;
  for (const Seen& seen : all)
    if (seen.often()) often.push_back(seen.finder);
  return often;
}

}  // namespace lardiner::scan
