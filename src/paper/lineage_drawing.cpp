// The picture of a lot's lineage: columns of lots from inputs to outputs, with lines between them.
#include "paper/lineage_drawing.h"

#include <algorithm>
#include <cmath>

#include "paper/lineage_layers.h"
#include "paper/lineage_lines.h"
#include "paper/work_text.h"

namespace lardiner::paper {

namespace {

constexpr Type kTitle{{20}, Weight::ExtraBold}, kNote{{10}, Weight::Regular};
constexpr Type kName{{10}, Weight::Bold}, kLot{{9}, Weight::Bold}, kDay{{9}, Weight::Regular};
constexpr int kPadding = 2 * kStep;   // clear of the heavy frame
constexpr int kLeastGap = 9 * kStep;  // between columns, for the lines
constexpr int kWidest = 42 * kStep;   // of a column
constexpr int kBetweenSlots = 2 * kStep;
constexpr int kFrame = 3, kHeavyFrame = 12;
constexpr int kLineSlot = kStep;     // the height that a line takes that passes a column
constexpr int kAnyNode = 7 * kStep;  // so that several lines enter it apart

class Setter {
 public:
  Setter(const facts::LineagePicture& picture, PageSize page, const Faces& faces)
      : picture_(picture), page_(page), faces_(faces), width_(page.width.value - 2 * kSideMargin) {}

  problem::ExpectedAll<LineageDrawing> set() {
    set_words();
    if (!errors_.empty()) return tl::unexpected(errors_);
    // From what a page can hold at the most downwards: the first that fits.
    for (std::size_t columns = 7; columns > 2; --columns)
      for (std::size_t lots = 12; lots > 2; --lots)
        if (try_with({columns, lots})) return std::move(out_);
    if (errors_.empty())
      errors_.push_back({problem::Code::NoRoom,
                         QStringLiteral("the lineage has no room on a page"),
                         {},
                         QStringLiteral("shorten the names of its lots")});
    return tl::unexpected(errors_);
  }

 private:
  void set_words() {
    take(append(title_, faces_, picture_.title, kTitle, width_), width_);
    for (const QString& note : picture_.notes) take(append(notes_, faces_, note, kNote, width_), width_);
    top_ = kSideMargin + steps_covering(title_.height()) + 2 * kStep;
    bottom_ = page_.height.value - kSideMargin - steps_covering(notes_.height()) - 2 * kStep;
  }

  void take(const std::optional<TooLong>& word, double width) {
    if (word) errors_.push_back(too_wide(*word, width));
  }

  bool try_with(Most most) {
    errors_.clear();
    layers_ = layers(picture_, most);
    const int columns = static_cast<int>(layers_.columns.size());
    column_width_ = std::min(kWidest, (width_ - (columns - 1) * kLeastGap) / columns);
    gap_ = columns > 1 ? std::min(3 * kLeastGap, (width_ - columns * column_width_) / (columns - 1)) : 0;
    if (column_width_ <= 2 * kPadding) return false;
    nodes_.clear();
    for (const std::vector<Slot>& column : layers_.columns) {
      nodes_.emplace_back();
      int height = 0;
      for (const Slot& slot : column) {
        nodes_.back().push_back(node_of(slot));
        height += nodes_.back().back().height + kBetweenSlots;
      }
      if (!errors_.empty() || height - kBetweenSlots > bottom_ - top_) return false;
    }
    return place_and_draw();
  }

  SetNode node_of(const Slot& slot) {
    SetNode out;
    out.kind = slot.kind;
    if (slot.kind == Slot::Kind::Line) {
      out.height = kLineSlot;
      return out;
    }
    const double width = column_width_ - 2 * kPadding;
    if (slot.kind == Slot::Kind::More) {
      take(append(out.words, faces_, picture_.more(slot.more), kName, width), width);
    } else {
      const auto& node = picture_.nodes[slot.node];
      for (const auto& [text, type] : {std::pair{node.name, kName}, {node.lot, kLot}, {node.day, kDay}})
        if (!text.isEmpty()) take(append(out.words, faces_, text, type, width), width);
      out.asked = slot.node == picture_.asked;
    }
    out.height = std::max(kAnyNode, steps_covering(out.words.height()) + 2 * kPadding);
    return out;
  }

  bool place_and_draw() {
    const int used = static_cast<int>(nodes_.size()) * (column_width_ + gap_) - gap_;
    int x = kSideMargin + (width_ - used) / 2;
    for (auto& column : nodes_) {
      int height = -kBetweenSlots;
      for (const SetNode& node : column) height += node.height + kBetweenSlots;
      const int spare = bottom_ - top_ - height;
      const int between = std::min(4 * kStep, spare / static_cast<int>(column.size() + 1));
      int y = top_ + (spare - between * static_cast<int>(column.size() - 1)) / 2;
      for (SetNode& node : column) {
        node.x = x;
        node.y = y;
        node.width = column_width_;
        y += node.height + kBetweenSlots + between;
      }
      x += column_width_ + gap_;
    }
    Drawing drawing;
    if (!draw_links(drawing, layers_, nodes_, gap_)) return false;
    for (const auto& column : nodes_)
      for (const SetNode& node : column) draw_node(drawing, node);
    const ColumnOf whole{static_cast<double>(kSideMargin), static_cast<double>(width_)};
    draw(drawing, title_, whole, kSideMargin + title_.above);
    draw(drawing, notes_, whole, page_.height.value - kSideMargin - notes_.below);
    out_ = {std::move(drawing), page_};
    return true;
  }

  static void draw_node(Drawing& to, const SetNode& node) {
    if (node.kind == Slot::Kind::Line) return;
    const int frame = node.asked ? kHeavyFrame : kFrame;
    to.boxes.push_back({{node.x}, {node.y}, {node.width}, {node.height}, Ink::White});
    if (node.kind == Slot::Kind::Lot) {
      to.boxes.push_back(rule(node.x, node.y, node.width, frame));
      to.boxes.push_back(rule(node.x, node.y + node.height - frame, node.width, frame));
      to.boxes.push_back(rule(node.x, node.y, frame, node.height));
      to.boxes.push_back(rule(node.x + node.width - frame, node.y, frame, node.height));
    }
    const double baseline = node.y + (node.height - node.words.height()) / 2 + node.words.above;
    draw(to, node.words, {static_cast<double>(node.x + kPadding), static_cast<double>(node.width - 2 * kPadding)},
         baseline);
  }

  const facts::LineagePicture& picture_;
  PageSize page_;
  const Faces& faces_;
  int width_;
  TextStack title_, notes_;
  int top_ = 0, bottom_ = 0;
  Layers layers_;
  std::vector<std::vector<SetNode>> nodes_;
  int column_width_ = 0, gap_ = 0;
  problem::Errors errors_;
  LineageDrawing out_;
};

problem::ExpectedAll<facts::LineagePicture> printable(facts::LineagePicture picture, const Faces& faces) {
  problem::Errors errors;
  const auto compose = [&](QString& text) {
    const auto found = faces.printable(text);
    if (found) {
      text = *found;
      return;
    }
    problem::Error error = found.error();
    error.what = QStringLiteral("\"%1\" cannot be printed: %2").arg(text, error.what);
    errors.push_back(error);
  };
  compose(picture.title);
  for (QString& note : picture.notes) compose(note);
  for (auto& node : picture.nodes)
    for (QString* text : {&node.name, &node.lot, &node.day}) compose(*text);
  problem::sort(errors);
  if (!errors.empty()) return tl::unexpected(errors);
  return picture;
}

}  // namespace

problem::ExpectedAll<LineageDrawing> lineage_drawing(const facts::LineagePicture& picture, Paper paper,
                                                     const Faces& faces) {
  const auto texts = printable(picture, faces);
  if (!texts) return tl::unexpected(texts.error());
  const PageSize upright = page_size(paper);
  return Setter(*texts, {upright.height, upright.width, upright.resolution}, faces).set();
}

}  // namespace lardiner::paper
