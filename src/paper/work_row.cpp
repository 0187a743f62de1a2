// One row of a table as a block: texts on one baseline, boxes to tick and lines to write on.
#include "paper/work_row.h"

#include <algorithm>
#include <cmath>

namespace lardiner::paper {

namespace {

using facts::Cell;
using facts::Column;

constexpr int kPadding = kStep * 3 / 2;
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

}  // namespace

TextStack words_of(const Blank& blank, const Frame& frame) {
  return stack_of(blank.cell, blank.type, blank.width - beside_words(blank.cell.kind), frame);
}

void draw_blank(Drawing& to, const Blank& blank, const Frame& frame, double baseline) {
  const TextStack words = words_of(blank, frame);
  draw(to, words, {blank.x, blank.width}, baseline);
  const int from = static_cast<int>(std::ceil(blank.x + (words.empty() ? 0 : words.width + kStep)));
  const int end = static_cast<int>(std::floor(blank.x + blank.width));
  if (end > from) to.boxes.push_back(rule(from, whole(baseline) + kWritingBelow, end - from, kWritingLine));
}

WorkBlock set_row(const facts::Row& row, const facts::Table& table, const Columns& columns, const Frame& frame) {
  struct SetCell {
    const Cell& cell;
    TextStack stack;
  };
  std::vector<SetCell> cells;
  const double caps = cap_height(frame.faces, columns.sizes.item);
  double above = 0, below = 0;
  bool by_hand = false;
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    const Cell& cell = row.cells[i];
    const Type type = type_of(cell, table.columns[i].kind, columns.sizes);
    const double width = columns.places[i].width;
    cells.push_back({cell, stack_of(cell, type, width - beside_words(cell.kind), frame)});
    above = std::max(above, cells.back().stack.above);
    below = std::max(below, cells.back().stack.below);
    by_hand = by_hand || cell.kind != Cell::Kind::Text;
    if (cell.kind == Cell::Kind::Blank) below = std::max<double>(below, kWritingBelow + kWritingLine);
    if (cell.kind == Cell::Kind::Tick) {
      above = std::max(above, (kTickSide + caps) / 2);
      below = std::max(below, (kTickSide - caps) / 2);
    }
  }

  WorkBlock out;
  out.height = steps_covering(kPadding + above + below + kPadding);
  if (by_hand) out.height = std::max(out.height, kWritingRow);
  const double baseline = std::round(out.height - kPadding - below);
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const auto& [cell, stack] = cells[i];
    const ColumnPlace& place = columns.places[i];
    const Type type = type_of(cell, table.columns[i].kind, columns.sizes);
    if (out.name.isEmpty()) out.name = cell.text;
    if (cell.kind == Cell::Kind::Blank) {
      draw_blank(out.drawing, {cell, type, static_cast<double>(place.x), static_cast<double>(place.width)}, frame,
                 baseline);
      continue;
    }
    if (cell.kind == Cell::Kind::Tick) draw_tick(out.drawing, place.x, baseline, caps);
    const int beside = beside_words(cell.kind);
    const ColumnOf words{static_cast<double>(place.x + beside), static_cast<double>(place.width - beside),
                         side_of(table.columns[i].kind)};
    draw(out.drawing, stack, words, baseline);
  }
  out.drawing.boxes.push_back(rule(frame.left, out.height - kThin, frame.width, kThin));
  return out;
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
