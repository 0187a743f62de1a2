// A table as blocks: caption and headings with the first row, and again above the rows of each further page.
#include "paper/work_table.h"

#include "paper/work_row.h"

namespace lardiner::paper {

namespace {

constexpr int kUnderHeading = kStep / 2;

}  // namespace

problem::Expected<WorkBlock> set_heading(const QString& text, const Frame& frame) {
  TextStack stack;
  if (const auto word = append(stack, frame.faces, text, {kSection, Weight::ExtraBold}, frame.width))
    return tl::unexpected(too_wide(*word, frame.width));
  WorkBlock out;
  out.name = text;
  out.air = kAirOfSection;
  out.keep = true;
  out.height = steps_covering(stack.height() + kUnderHeading);
  draw(out.drawing, stack, {static_cast<double>(frame.left), static_cast<double>(frame.width)}, stack.above);
  return out;
}

WorkBlock joined(WorkBlock upper, const WorkBlock& lower) {
  draw(upper.drawing, lower, upper.height);
  upper.height += lower.height;
  return upper;
}

problem::Expected<std::vector<WorkBlock>> set_table(const facts::Table& table, const Columns& columns,
                                                    const Frame& frame) {
  WorkBlock head;
  if (!table.caption.isEmpty()) {
    const auto caption = set_heading(table.caption, frame);
    if (!caption) return tl::unexpected(caption.error());
    head = *caption;
  }
  head = joined(std::move(head), set_headings(table, columns, frame));
  head.air = kAirOfSection;
  head.keep = true;

  std::vector<WorkBlock> out = {head};
  const auto again = std::make_shared<const WorkBlock>(std::move(head));
  for (const facts::Row& row : table.rows) {
    auto block = row.band ? set_band(row, frame) : set_row(row, table, columns, frame);
    if (!block) return tl::unexpected(block.error());
    block->keep = row.band;
    block->again = again;
    out.push_back(std::move(*block));
  }
  out.back().keep = false;
  return out;
}

}  // namespace lardiner::paper
