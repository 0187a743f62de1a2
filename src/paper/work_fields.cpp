// Fields in a line over the whole width: texts, and captions with lines to write on.
#include "paper/work_fields.h"

#include <algorithm>
#include <cmath>

#include "paper/work_row.h"

namespace lardiner::paper {

namespace {

using facts::Cell;

constexpr int kBetween = 6 * kStep;

struct Field {
  const Cell* cell;
  Type type;
  TextStack words;
  double width = 0;  // the least
};

Type type_of_field(const Cell& cell) { return {kBody, cell.strong ? Weight::Bold : Weight::Regular}; }

problem::Expected<Field> field_of(const Cell& cell, const Frame& frame) {
  Field out{&cell, type_of_field(cell), {}, 0};
  const int beside = beside_words(cell.kind);
  const double room = frame.width - beside;
  if (const auto word = append(out.words, frame.faces, cell.text, out.type, room))
    return tl::unexpected(too_wide(*word, room));
  for (const facts::SmallLine& line : cell.small)
    if (const auto word = append(out.words, frame.faces, line.text, type_of(line), room))
      return tl::unexpected(too_wide(*word, room));
  out.width = out.words.width + beside;
  return out;
}

// The fields of one line, with their places.
WorkBlock set_line(const std::vector<Field>& fields, const Frame& frame) {
  double above = 0, below = kWritingBelow + kWritingLine, least = kBetween * (static_cast<double>(fields.size()) - 1);
  int blanks = 0;
  for (const Field& field : fields) {
    above = std::max(above, field.words.above);
    below = std::max(below, field.words.below);
    least += field.width;
    blanks += field.cell->kind == Cell::Kind::Blank ? 1 : 0;
  }
  const double spare = blanks > 0 ? (frame.width - least) / blanks : 0;
  WorkBlock out;
  out.height = std::max(kWritingRow, steps_covering(above + below + kStep));
  const double baseline = std::round(out.height - below);
  double x = frame.left;
  for (const Field& field : fields) {
    const bool blank = field.cell->kind == Cell::Kind::Blank;
    const double width = field.width + (blank ? spare : 0);
    if (blank)
      draw_blank(out.drawing, {*field.cell, field.type, x, width}, frame, baseline);
    else
      draw(out.drawing, field.words, {x, width}, baseline);
    x += width + kBetween;
  }
  return out;
}

// Each line filled as far as it goes.
std::vector<std::vector<Field>> lines_within(const std::vector<Field>& fields, double room) {
  std::vector<std::vector<Field>> lines;
  double width = 0;
  for (const Field& field : fields) {
    if (lines.empty() || width + kBetween + field.width > room) {
      lines.emplace_back();
      width = -kBetween;
    }
    width += kBetween + field.width;
    lines.back().push_back(field);
  }
  return lines;
}

}  // namespace

problem::Expected<WorkBlock> set_fields(const std::vector<Cell>& fields, const Frame& frame) {
  std::vector<Field> all;
  for (const Cell& cell : fields) {
    auto field = field_of(cell, frame);
    if (!field) return tl::unexpected(field.error());
    all.push_back(std::move(*field));
  }
  // No more lines than needed, and these as narrow as they can be: no field stands alone beneath many.
  std::vector<std::vector<Field>> lines = lines_within(all, frame.width);
  for (int room = frame.width - kStep; room > 0; room -= kStep) {
    auto narrower = lines_within(all, room);
    if (narrower.size() > lines.size()) break;
    lines = std::move(narrower);
  }
  WorkBlock out;
  for (const std::vector<Field>& line : lines) {
    const WorkBlock set = set_line(line, frame);
    draw(out.drawing, set, out.height);
    out.height += set.height;
  }
  return out;
}

}  // namespace lardiner::paper
