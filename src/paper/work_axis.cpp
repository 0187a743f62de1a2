// The axis of a picture of spans: where a time stands, the marks' texts above, and their lines through each row.
#include "paper/work_axis.h"

#include <algorithm>
#include <cmath>

namespace lardiner::paper {

namespace {

using Mark = facts::Spans::Mark;

constexpr int kStrongLine = 6, kWeakLine = 2;
constexpr int kDash = 3, kDashEach = 12;  // of a weak mark's line
constexpr int kBetween = kStep;           // texts

constexpr int kBehind = 8;         // a strong line its text
constexpr double kRowOfEm = 1.35;  // a row of texts, in parts of the larger size

// Where a line of this thickness begins: its middle at the time, within the axis.
int left_of_line(const Axis& axis, int time, int thick) {
  return std::clamp(axis.at(time) - thick / 2, axis.left, axis.right() - thick);
}

struct Stretch {
  double from = 0, to = 0;
};

// One row of texts, and what keeps them off.
struct TextRow {
  std::vector<Stretch> taken;
  bool is_free(Stretch one) const {
    return std::none_of(taken.begin(), taken.end(),
                        [&](Stretch other) { return one.from < other.to && other.from < one.to; });
  }
};

struct PlacedText {
  const Mark* mark;
  std::size_t row;  // from the axis up
  Stretch own;
};

class AxisSetter {
 public:
  AxisSetter(const std::vector<Mark>& marks, const Axis& axis, const Frame& frame)
      : marks_(marks), axis_(axis), frame_(frame) {}

  WorkBlock set() {
    const std::vector<const Mark*> weak = in_time(false), strong = in_time(true);
    if (!weak.empty()) {
      rows_.emplace_back();  // theirs, next to the axis
      for (const Mark& mark : marks_)
        if (mark.strong) rows_.front().taken.push_back(with_air(line_of(mark)));
      place_evenly(weak);
    }
    // Texts stand to the right of their lines: from the last one on, no line has a text beneath in its way.
    for (auto mark = strong.rbegin(); mark != strong.rend(); ++mark) place_strong(**mark, weak.empty() ? 0 : 1);
    return drawn();
  }

 private:
  static Type type(const Mark& mark) { return mark.strong ? Type{kSmall, Weight::Bold} : Type{kFine, Weight::Regular}; }
  static Stretch with_air(Stretch one) { return {one.from - kBetween / 2.0, one.to + kBetween / 2.0}; }

  std::vector<const Mark*> in_time(bool strong) const {
    std::vector<const Mark*> out;
    for (const Mark& mark : marks_)
      if (mark.strong == strong && !mark.text.isEmpty()) out.push_back(&mark);
    std::stable_sort(out.begin(), out.end(), [](const Mark* one, const Mark* other) { return one->at < other->at; });
    return out;
  }

  Stretch line_of(const Mark& mark) const {
    const double x = axis_.at(mark.at);
    return {x - kStrongLine / 2.0, x + kStrongLine / 2.0};
  }

  // A weak mark's text stands about its line, a strong one's behind it; both within the print.
  Stretch stretch(const Mark& mark) const {
    const double width = whole_width(frame_.faces, mark.text, type(mark));
    const double wish = mark.strong ? line_of(mark).to + kBehind : axis_.at(mark.at) - width / 2;
    const double most = std::max<double>(frame_.left, frame_.right() - width);
    const double from = std::clamp(wish, static_cast<double>(frame_.left), most);
    return {from, from + width};
  }

  // Every text, or each second, or third…, as many as do not touch.
  void place_evenly(const std::vector<const Mark*>& weak) {
    std::vector<const Mark*> best;
    for (std::size_t each = 1; best.empty() && each <= weak.size(); ++each)
      for (std::size_t first = 0; first < each; ++first) {
        std::vector<const Mark*> some;
        TextRow own;
        bool touch = false;
        for (std::size_t i = first; i < weak.size(); i += each) {
          const Stretch one = with_air(stretch(*weak[i]));
          touch = touch || !own.is_free(one);
          own.taken.push_back(one);
          if (rows_.front().is_free(one)) some.push_back(weak[i]);
        }
        if (!touch && some.size() > best.size()) best = some;
      }
    for (const Mark* mark : best) put(*mark, 0);
  }

  void place_strong(const Mark& mark, std::size_t lowest) {
    std::size_t row = lowest;
    while (row < rows_.size() && !rows_[row].is_free(with_air(stretch(mark)))) ++row;
    if (row == rows_.size()) rows_.emplace_back();
    put(mark, row);
  }

  void put(const Mark& mark, std::size_t row) {
    rows_[row].taken.push_back(with_air(stretch(mark)));
    placed_.push_back({&mark, row, stretch(mark)});
  }

  WorkBlock drawn() {
    const int row = steps_covering(fine_dots(kSmall, kPrint).value * kRowOfEm);
    WorkBlock out;
    out.height = static_cast<int>(rows_.size()) * row + kRule;
    std::stable_sort(placed_.begin(), placed_.end(), [](const PlacedText& one, const PlacedText& other) {
      return one.mark < other.mark;  // as listed
    });
    for (const PlacedText& text : placed_) {
      TextStack stack;
      (void)append(stack, frame_.faces, text.mark->text, type(*text.mark), frame_.width);
      const int top = out.height - kRule - (static_cast<int>(text.row) + 1) * row;
      draw(out.drawing, stack, {text.own.from, stack.width}, top + stack.above);
      if (text.mark->strong) draw_pole(out, text, row);
    }
    out.drawing.boxes.push_back(rule(axis_.left, out.height - kRule, axis_.width, kRule));
    return out;
  }

  // From the axis up beside the text, as far as no text is in its way.
  void draw_pole(WorkBlock& to, const PlacedText& text, int row) const {
    const Stretch line = line_of(*text.mark);
    std::size_t free = 0;
    const auto in_the_way = [&](const PlacedText& other) {
      return other.row == free && other.own.from < line.to && line.from < other.own.to;
    };
    while (free <= text.row && std::none_of(placed_.begin(), placed_.end(), in_the_way)) ++free;
    const int height = static_cast<int>(free) * row;
    const int x = left_of_line(axis_, text.mark->at, kStrongLine);
    if (height > 0) to.drawing.boxes.push_back(rule(x, to.height - kRule - height, kStrongLine, height));
  }

  const std::vector<Mark>& marks_;
  const Axis& axis_;
  const Frame& frame_;
  std::vector<TextRow> rows_;
  std::vector<PlacedText> placed_;
};

}  // namespace

int Axis::at(int time) const {
  return left +
         static_cast<int>(std::lround(static_cast<double>(width) * std::clamp(time, 0, length) / std::max(1, length)));
}

WorkBlock set_axis(const std::vector<Mark>& marks, const Axis& axis, const Frame& frame) {
  return AxisSetter(marks, axis, frame).set();
}

void draw_marks(Drawing& to, const std::vector<Mark>& marks, const Axis& axis, int height) {
  for (const Mark& mark : marks) {
    const int thick = mark.strong ? kStrongLine : kWeakLine;
    const int x = left_of_line(axis, mark.at, thick);
    if (mark.strong) to.boxes.push_back(rule(x, 0, thick, height));
    for (int y = 0; !mark.strong && y < height; y += kDashEach)
      to.boxes.push_back(rule(x, y, thick, std::min(kDash, height - y)));
  }
}

}  // namespace lardiner::paper
