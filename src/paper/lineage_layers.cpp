// Which column each lot of a lineage stands in, in which order, and which lots are summed up for want of room.
#include "paper/lineage_layers.h"

#include <algorithm>
#include <array>
#include <deque>
#include <limits>
#include <map>
#include <numeric>

namespace lardiner::paper {

namespace {

using facts::LineagePicture;

constexpr int kSweeps = 8;

// A slot while it is placed.
struct Place {
  std::size_t column = 0, slot = 0;
};

class Layering {
 public:
  Layering(const LineagePicture& picture, Most most) : picture_(picture), most_(most) {}

  Layers make() {
    columns_of_nodes();
    hops_from_asked();
    take_in();
    fill();
    link();
    for (int sweep = 0; sweep < kSweeps; ++sweep) {
      for (std::size_t c = 1; c < out_.columns.size(); ++c) order(c, true);
      for (std::size_t c = out_.columns.size() - 1; c-- > 0;) order(c, false);
    }
    return std::move(out_);
  }

 private:
  std::size_t size() const { return picture_.nodes.size(); }

  // The longest way from an input; a lot that nothing went into stands beside the first that it went into.
  void columns_of_nodes() {
    column_.assign(size(), 0);
    std::vector<std::vector<std::size_t>> out(size());
    std::vector<int> before(size(), 0);
    for (const auto& edge : picture_.edges) {
      out[edge.from].push_back(edge.to);
      ++before[edge.to];
    }
    std::deque<std::size_t> ready;
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < size(); ++i)
      if (before[i] == 0) ready.push_back(i);
    for (; !ready.empty(); ready.pop_front()) {
      order.push_back(ready.front());
      for (const std::size_t to : out[ready.front()]) {
        column_[to] = std::max(column_[to], column_[ready.front()] + 1);
        if (--before[to] == 0) ready.push_back(to);
      }
    }
    std::vector<bool> has_input(size(), false);
    for (const auto& edge : picture_.edges) has_input[edge.to] = true;
    for (auto i = order.rbegin(); i != order.rend(); ++i) {
      if (has_input[*i] || out[*i].empty()) continue;
      int next = std::numeric_limits<int>::max();
      for (const std::size_t to : out[*i]) next = std::min(next, column_[to]);
      column_[*i] = std::max(column_[*i], next - 1);
    }
  }

  void hops_from_asked() {
    hops_.assign(size(), std::numeric_limits<int>::max());
    std::vector<std::vector<std::size_t>> beside(size());
    for (const auto& edge : picture_.edges) {
      beside[edge.from].push_back(edge.to);
      beside[edge.to].push_back(edge.from);
    }
    hops_[picture_.asked] = 0;
    for (std::deque<std::size_t> next{picture_.asked}; !next.empty(); next.pop_front())
      for (const std::size_t other : beside[next.front()])
        if (hops_[other] == std::numeric_limits<int>::max()) {
          hops_[other] = hops_[next.front()] + 1;
          next.push_back(other);
        }
  }

  // The columns that a page holds: the one asked for in the middle, as far as there are others at both sides.
  void take_in() {
    const int last = size() == 0 ? 0 : *std::max_element(column_.begin(), column_.end());
    const int room = static_cast<int>(std::max<std::size_t>(most_.columns, 1)) - 1;
    int first = std::max(0, std::min(column_[picture_.asked] - room / 2, last - room));
    const int end = std::min(last, first + room);
    for (int& column : column_) column = std::clamp(column, first, end) - first;
    out_.columns.resize(static_cast<std::size_t>(end - first) + 1);
  }

  // Lots that stand in a column beyond the page are no lots of the last one: they are summed up with it.
  void fill() {
    std::vector<std::vector<std::size_t>> in(out_.columns.size());
    for (std::size_t i = 0; i < size(); ++i) in[static_cast<std::size_t>(column_[i])].push_back(i);
    place_.resize(size());
    for (std::size_t c = 0; c < in.size(); ++c) {
      std::stable_sort(in[c].begin(), in[c].end(), [&](auto a, auto b) { return hops_[a] < hops_[b]; });
      const bool all = in[c].size() <= most_.lots;
      const std::size_t shown = all ? in[c].size() : most_.lots - 1;
      for (std::size_t i = 0; i < in[c].size(); ++i) {
        place_[in[c][i]] = {c, std::min(i, shown)};
        if (i < shown) out_.columns[c].push_back({Slot::Kind::Lot, in[c][i], 0});
      }
      if (!all) out_.columns[c].push_back({Slot::Kind::More, 0, static_cast<int>(in[c].size() - shown)});
    }
  }

  // Lines over several columns pass through a slot of their own in each; those of a sum are drawn once.
  void link() {
    std::map<std::array<std::size_t, 4>, bool> pairs;
    for (const auto& edge : picture_.edges) {
      const Place from = place_[edge.from], to = place_[edge.to];
      if (from.column >= to.column) continue;
      const auto [found, fresh] = pairs.try_emplace({from.column, from.slot, to.column, to.slot}, edge.assumed);
      if (!fresh) found->second = found->second && edge.assumed;
    }
    for (const auto& [pair, assumed] : pairs) {
      std::size_t slot = pair[1];
      for (std::size_t c = pair[0]; c < pair[2]; ++c) {
        std::size_t next = pair[3];
        if (c + 1 < pair[2]) {
          next = out_.columns[c + 1].size();
          out_.columns[c + 1].push_back({Slot::Kind::Line, 0, 0});
        }
        out_.links.push_back({c, slot, next, assumed});
        slot = next;
      }
    }
  }

  // Slots by the mean place of what they are linked with in the column before, or behind.
  void order(std::size_t c, bool by_before) {
    std::vector<Slot>& column = out_.columns[c];
    std::vector<double> mean(column.size());
    std::vector<int> count(column.size(), 0);
    for (const Link& link : out_.links) {
      if (by_before ? link.column + 1 != c : link.column != c) continue;
      const std::size_t own = by_before ? link.to : link.from, other = by_before ? link.from : link.to;
      mean[own] += static_cast<double>(other) /
                   static_cast<double>(std::max<std::size_t>(1, out_.columns[by_before ? c - 1 : c + 1].size()));
      ++count[own];
    }
    for (std::size_t i = 0; i < column.size(); ++i)
      mean[i] = count[i] > 0 ? mean[i] / count[i] : static_cast<double>(i) / static_cast<double>(column.size());
    std::vector<std::size_t> order(column.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) { return mean[a] < mean[b]; });
    std::vector<std::size_t> now(column.size());
    std::vector<Slot> sorted;
    for (const std::size_t i : order) {
      now[i] = sorted.size();
      sorted.push_back(column[i]);
    }
    column = std::move(sorted);
    for (Link& link : out_.links) {
      if (link.column == c) link.from = now[link.from];
      if (link.column + 1 == c) link.to = now[link.to];
    }
  }

  const LineagePicture& picture_;
  Most most_;
  std::vector<int> column_, hops_;
  std::vector<Place> place_;
  Layers out_;
};

}  // namespace

Layers layers(const facts::LineagePicture& picture, Most most) { return Layering(picture, most).make(); }

}  // namespace lardiner::paper
