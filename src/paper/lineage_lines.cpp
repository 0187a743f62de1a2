// The lines between the lots of a lineage picture: level, upright, level; each with places of its own.
#include "paper/lineage_lines.h"

#include <algorithm>
#include <numeric>

namespace lardiner::paper {

namespace {

constexpr int kLine = 4;
constexpr int kDash = 14, kDashGap = 10;
constexpr int kHalo = 5;                // white beside a line that crosses another
constexpr int kLeastApart = kLine + 6;  // of lines side by side

struct Path {
  int x0 = 0, y0 = 0, x1 = 0, y1 = 0;
  int turn = 0;  // where it goes up or down
  bool assumed = false;
};

void add_dashed(Drawing& to, int x, int y, int length, bool level, bool dashed) {
  const int step = dashed ? kDash + kDashGap : std::max(length, 1);
  for (int at = 0; at < length; at += step) {
    const int part = std::min(dashed ? kDash : length, length - at);
    to.boxes.push_back(level ? rule(x + at, y, part, kLine) : rule(x, y + at, kLine, part));
  }
}

void draw_upright(Drawing& to, const Path& path) {
  const int from = std::min(path.y0, path.y1), until = std::max(path.y0, path.y1) + kLine;
  if (until - from > kLine) add_dashed(to, path.turn, from, until - from, false, path.assumed);
}

// White above and beneath, so that a line that it crosses does not seem to join it.
void draw_level(Drawing& to, const Path& path, int from, int until, int y) {
  if (until <= from) return;
  const int inner = from + kLine + 1, end = until - kLine - 1;
  if (end > inner) to.boxes.push_back({{inner}, {y - kHalo}, {end - inner}, {kLine + 2 * kHalo}, Ink::White});
  add_dashed(to, from, y, until - from, true, path.assumed);
}

class Links {
 public:
  Links(const Layers& layers, const std::vector<std::vector<SetNode>>& nodes, int gap)
      : layers_(layers), nodes_(nodes), gap_(gap) {}

  bool draw(Drawing& to) {
    for (std::size_t c = 0; c + 1 < nodes_.size(); ++c) {
      links_.clear();
      for (const Link& link : layers_.links)
        if (link.column == c) links_.push_back(link);
      if (!set_paths(c)) return false;
      for (const Path& path : paths_) draw_upright(to, path);
      for (const Path& path : paths_) {
        draw_level(to, path, path.x0, path.turn + kLine, path.y0);
        draw_level(to, path, path.turn, path.x1, path.y1);
      }
    }
    pass(to);
    return true;
  }

 private:
  bool set_paths(std::size_t c) {
    paths_.assign(links_.size(), {});
    if (!set_ends(c, true) || !set_ends(c + 1, false)) return false;
    // Upright lines in the order that lets those going up turn first from the top, those going down from the bottom.
    std::vector<std::size_t> order(links_.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      const bool a_up = paths_[a].y1 < paths_[a].y0, b_up = paths_[b].y1 < paths_[b].y0;
      if (a_up != b_up) return a_up;
      return a_up ? paths_[a].y0 < paths_[b].y0 : paths_[a].y0 > paths_[b].y0;
    });
    const int apart = links_.empty() ? 0 : (gap_ - 2 * kStep) / static_cast<int>(links_.size() + 1);
    if (!links_.empty() && apart < kLeastApart) return false;
    for (std::size_t i = 0; i < order.size(); ++i) {
      Path& path = paths_[order[i]];
      path.turn = path.x0 + kStep + apart * static_cast<int>(i + 1);
      path.assumed = links_[order[i]].assumed;
    }
    return true;
  }

  // Where lines leave, or enter, the slots of a column: spread over the side, in the order of their other ends.
  bool set_ends(std::size_t column, bool leaving) {
    for (std::size_t slot = 0; slot < nodes_[column].size(); ++slot) {
      const SetNode& node = nodes_[column][slot];
      std::vector<std::size_t> here;
      for (std::size_t i = 0; i < links_.size(); ++i)
        if ((leaving ? links_[i].from : links_[i].to) == slot) here.push_back(i);
      if (here.empty()) continue;
      std::stable_sort(here.begin(), here.end(), [&](std::size_t a, std::size_t b) {
        return leaving ? links_[a].to < links_[b].to : links_[a].from < links_[b].from;
      });
      const int apart = node.height / static_cast<int>(here.size() + 1);
      if (here.size() > 1 && apart < kLeastApart) return false;
      for (std::size_t i = 0; i < here.size(); ++i) {
        const int y = node.y + apart * static_cast<int>(i + 1) - kLine / 2;
        Path& path = paths_[here[i]];
        (leaving ? path.x0 : path.x1) = leaving ? node.x + node.width : node.x;
        (leaving ? path.y0 : path.y1) = y;
      }
    }
    return true;
  }

  // Lines that pass a column.
  void pass(Drawing& to) const {
    for (const Link& link : layers_.links) {
      const SetNode& node = nodes_[link.column + 1][link.to];
      if (node.kind != Slot::Kind::Line) continue;
      add_dashed(to, node.x, node.y + node.height / 2 - kLine / 2, node.width, true, link.assumed);
    }
  }

  const Layers& layers_;
  const std::vector<std::vector<SetNode>>& nodes_;
  int gap_;
  std::vector<Link> links_;
  std::vector<Path> paths_;
};

}  // namespace

bool draw_links(Drawing& to, const Layers& layers, const std::vector<std::vector<SetNode>>& nodes, int gap) {
  return Links(layers, nodes, gap).draw(to);
}

}  // namespace lardiner::paper
