// One row of a table as a block: texts on one baseline, boxes to tick and lines to write on.
#include "paper/work_row.h"

#include <algorithm>
#include <cmath>

namespace lardiner::paper {

namespace {

using facts::Cell;
using facts::Column;

constexpr int kPadding = kStep * 3 / 2;
constexpr int kAboveWide = 4, kAboveWideLarge = kStep;
constexpr Type kHeading{kFine, Weight::Bold};
// A band's text stands whole over the table, larger than an item of any but the largest rows.
constexpr Points kBand{20};

int whole(double dots) { return static_cast<int>(std::lround(dots)); }

// Words are measured to fit before anything is set.
void append_fitting(TextStack& to, const Frame& frame, const QString& text, Type type, double width) {
  if (text.isEmpty()) return;
  (void)append(to, frame.faces, text, type, std::max(width, widest_word(frame.faces, text, type).width.value));
}

void draw_tick(Drawing& to, int x, double baseline, double caps) {
  const int y = whole(baseline - caps / 2 - kTickSide / 2.0);
  to.boxes.push_back(rule(x, y, kTickSide, kTickLine));
  to.boxes.push_back(rule(x, y + kTickSide - kTickLine, kTickSide, kTickLine));
  to.boxes.push_back(rule(x, y, kTickLine, kTickSide));
  to.boxes.push_back(rule(x + kTickSide - kTickLine, y, kTickLine, kTickSide));
}

Side side_of(Column::Kind kind) { return kind == Column::Kind::Amount ? Side::Right : Side::Left; }

// The texts of a cell, one under the other; of a blank those before its line.
TextStack stack_of(const Cell& cell, Type type, double width, const Frame& frame) {
  TextStack out;
  append_fitting(out, frame, cell.text, type, width);
  for (const facts::SmallLine& line : cell.small) append_fitting(out, frame, line.text, type_of(line), width);
  return out;
}

// Small lines stand beneath their text, in its column. Spread, those of one text, from the first that is longer than
// its column on, run over the columns to the right of it, beneath all that stands in these.
class RowSetter {
 public:
  RowSetter(const facts::Row& row, const facts::Table& table, const Columns& columns, const Frame& frame, bool spread)
      : table_(table), columns_(columns), frame_(frame), caps_(cap_height(frame.faces, columns.sizes.item)) {
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      const bool text = table.columns[i].kind == Column::Kind::Text && row.cells[i].kind == Cell::Kind::Text;
      add(row.cells[i], spread && text);
      spread = spread && cells_.back().wide.empty();
    }
  }

  int height() const {
    const int height = steps_covering(kPadding + above_ + below_ + wide_height_ + kPadding);
    return by_hand_ ? std::max(height, kWritingRow) : height;
  }

  WorkBlock block() const {
    WorkBlock out;
    out.height = height();
    const double baseline = std::round(out.height - kPadding - wide_height_ - below_);
    for (std::size_t i = 0; i < cells_.size(); ++i) {
      if (out.name.isEmpty()) out.name = cells_[i].cell->text;
      draw_cell(out.drawing, i, baseline);
    }
    out.drawing.boxes.push_back(rule(frame_.left, out.height - kThin, frame_.width, kThin));
    return out;
  }

 private:
  struct SetCell {
    const Cell* cell;
    Type type;
    TextStack stack;
    TextStack wide;  // small lines over the columns to the right
  };

  void add(const Cell& cell, bool spread) {
    const std::size_t i = cells_.size();
    const double width = columns_.places[i].width - beside_words(cell.kind);
    SetCell set{&cell, type_of(cell, table_.columns[i].kind, columns_.sizes), {}, {}};
    append_fitting(set.stack, frame_, cell.text, set.type, width);
    for (const facts::SmallLine& line : cell.small) {
      const Type small = type_of(line, columns_.sizes);
      const bool wide = spread && (!set.wide.empty() || whole_width(frame_.faces, line.text, small) > width);
      if (wide && set.wide.empty()) wide_above_ = line.large ? kAboveWideLarge : kAboveWide;
      append_fitting(wide ? set.wide : set.stack, frame_, line.text, small,
                     wide ? frame_.right() - columns_.places[i].x : width);
    }
    above_ = std::max(above_, set.stack.above);
    below_ = std::max(below_, set.stack.below);
    if (!set.wide.empty()) wide_height_ = wide_above_ + set.wide.height();
    by_hand_ = by_hand_ || cell.kind != Cell::Kind::Text;
    if (cell.kind == Cell::Kind::Blank) below_ = std::max<double>(below_, kWritingBelow + kWritingLine);
    if (cell.kind == Cell::Kind::Tick) {
      above_ = std::max(above_, (kTickSide + caps_) / 2);
      below_ = std::max(below_, (kTickSide - caps_) / 2);
    }
    cells_.push_back(std::move(set));
  }

  void draw_cell(Drawing& to, std::size_t i, double baseline) const {
    const auto& [cell, type, stack, wide] = cells_[i];
    const double x = columns_.places[i].x, width = columns_.places[i].width;
    if (cell->kind == Cell::Kind::Blank) {
      draw_blank(to, {*cell, type, x, width}, frame_, baseline);
      return;
    }
    if (cell->kind == Cell::Kind::Tick) draw_tick(to, columns_.places[i].x, baseline, caps_);
    const int beside = beside_words(cell->kind);
    draw(to, stack, {x + beside, width - beside, side_of(table_.columns[i].kind)}, baseline);
    draw(to, wide, {x, width}, baseline + below_ + wide_above_ + wide.above);
  }

  const facts::Table& table_;
  const Columns& columns_;
  const Frame& frame_;
  double caps_;
  std::vector<SetCell> cells_;
  double above_ = 0, below_ = 0;  // the cells' common baseline
  int wide_above_ = 0;            // the air between them and
  double wide_height_ = 0;        // of what stands beneath all cells
  bool by_hand_ = false;
};

}  // namespace

void draw_blank(Drawing& to, const Blank& blank, const Frame& frame, double baseline) {
  const TextStack words = stack_of(blank.cell, blank.type, blank.width - beside_words(blank.cell.kind), frame);
  draw(to, words, {blank.x, blank.width}, baseline);
  const int from = static_cast<int>(std::ceil(blank.x + (words.empty() ? 0 : words.width + kStep)));
  const int end = static_cast<int>(std::floor(blank.x + blank.width));
  if (end > from) to.boxes.push_back(rule(from, whole(baseline) + kWritingBelow, end - from, kWritingLine));
}

WorkBlock set_row(const facts::Row& row, const facts::Table& table, const Columns& columns, const Frame& frame) {
  const RowSetter narrow(row, table, columns, frame, false), spread(row, table, columns, frame, true);
  return spread.height() < narrow.height() ? spread.block() : narrow.block();
}

problem::Expected<WorkBlock> set_band(const facts::Row& row, const Frame& frame) {
  WorkBlock out;
  if (row.cells.empty()) return out;
  const Cell& cell = row.cells.front();
  const Cell* blank = row.cells.size() > 1 ? &row.cells[1] : nullptr;
  double room = frame.width, blank_width = 0;
  if (blank) {
    const double words =
        std::min(stack_of(*blank, {kSmall, Weight::Bold}, frame.width / 4.0, frame).width, frame.width / 4.0);
    blank_width = words + kStep + kLeastWriting;
    room -= blank_width + kGap;
  }
  TextStack stack;
  if (const auto word =
          append(stack, frame.faces, cell.text, {kBand, cell.strong ? Weight::ExtraBold : Weight::Bold}, room))
    return tl::unexpected(too_wide(*word, room));
  for (const facts::SmallLine& line : cell.small)
    if (const auto word = append(stack, frame.faces, line.text, type_of(line), room))
      return tl::unexpected(too_wide(*word, room));

  const int top = cell.strong ? kHeavy : kRule, bottom = cell.strong ? kHeavy / 4 : kThin;
  out.name = cell.text;
  out.height = std::max(steps_covering(top + kPadding + stack.height() + kPadding), kWritingRow);
  const double baseline = std::round(top + kPadding + stack.above);
  out.drawing.boxes.push_back(rule(frame.left, 0, frame.width, top));
  draw(out.drawing, stack, {static_cast<double>(frame.left), room}, baseline);
  if (blank)
    draw_blank(out.drawing, {*blank, {kSmall, Weight::Bold}, frame.right() - blank_width, blank_width}, frame,
               baseline);
  out.drawing.boxes.push_back(rule(frame.left, out.height - bottom, frame.width, bottom));
  return out;
}

WorkBlock set_headings(const facts::Table& table, const Columns& columns, const Frame& frame) {
  std::vector<TextStack> stacks;
  double above = 0, below = 0;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    stacks.emplace_back();
    append_fitting(stacks.back(), frame, table.columns[i].heading, kHeading, columns.places[i].width);
    above = std::max(above, stacks.back().above);
    below = std::max(below, stacks.back().below);
  }
  WorkBlock out;
  const bool words = above > 0;
  out.height = steps_covering(above + below + (words ? kStep / 2.0 : 0) + kRule);
  // Headings end on one line, next to the rule.
  const double last = out.height - kRule - kStep / 2.0;
  for (std::size_t i = 0; i < stacks.size(); ++i) {
    const ColumnPlace& place = columns.places[i];
    draw(out.drawing, stacks[i],
         {static_cast<double>(place.x), static_cast<double>(place.width), side_of(table.columns[i].kind)},
         last - stacks[i].below);
  }
  out.drawing.boxes.push_back(rule(frame.left, out.height - kRule, frame.width, kRule));
  return out;
}

}  // namespace lardiner::paper
