// What stands above the parts of a work sheet on its first page: kind, title and amount, lines beneath, fields.
#include "paper/work_head.h"

#include <algorithm>
#include <array>

#include "paper/work_fields.h"
#include "paper/work_table.h"

namespace lardiner::paper {

namespace {

constexpr Type kKind{kSmall, Weight::Bold};
// The sizes of title and amount: the first in which both have one line, of the larger ones, else two.
constexpr std::array kTitles = {Points{35}, Points{29}, Points{24}};
constexpr Points kLeastOfOneLine{29};
constexpr int kBeforeAmount = 8 * kStep;

problem::Expected<TextStack> title_lines(const QString& text, const Frame& frame, Points size) {
  TextStack out;
  if (const auto word = append(out, frame.faces, text, {size, Weight::ExtraBold}, frame.width))
    return tl::unexpected(too_wide(*word, frame.width));
  return out;
}

bool stand_beside(const TextStack& title, const TextStack& amount, const Frame& frame) {
  return !title.empty() && amount.lines.size() == 1 &&
         title.lines.back().line.width.value + kBeforeAmount + amount.width <= frame.width;
}

Points title_size(const facts::WorkSheet& sheet, const Frame& frame) {
  for (const std::size_t most : {1u, 2u})
    for (const Points size : kTitles) {
      const auto title = title_lines(sheet.title, frame, size), amount = title_lines(sheet.amount, frame, size);
      if (!title || !amount || (most == 1 && size < kLeastOfOneLine)) continue;
      const std::size_t beneath = stand_beside(*title, *amount, frame) ? 0 : amount->lines.size();
      if (title->lines.size() + beneath <= most) return size;
    }
  return kTitles.back();
}

// The title, and the amount at the right of its last line, else beneath it.
problem::Expected<WorkBlock> set_title(const facts::WorkSheet& sheet, const Frame& frame) {
  const Points size = title_size(sheet, frame);
  const auto title_set = title_lines(sheet.title, frame, size), amount_set = title_lines(sheet.amount, frame, size);
  if (!title_set) return tl::unexpected(title_set.error());
  if (!amount_set) return tl::unexpected(amount_set.error());
  const TextStack &title = *title_set, &amount = *amount_set;
  WorkBlock out;
  const ColumnOf column{static_cast<double>(frame.left), static_cast<double>(frame.width)};
  draw(out.drawing, title, column, title.above);
  out.height = steps_covering(title.height());
  if (amount.empty()) return out;
  const bool beside = stand_beside(title, amount, frame);
  const double last = title.empty() ? 0 : title.lines.back().baseline;
  const double baseline = beside ? title.above + last : out.height + amount.above;
  draw(out.drawing, amount, {column.x, column.width, beside ? Side::Right : Side::Left}, baseline);
  out.height = steps_covering(std::max(title.height(), baseline + amount.below));
  return out;
}

problem::Expected<WorkBlock> set_lines(const facts::WorkSheet& sheet, const Frame& frame) {
  TextStack stack;
  for (const facts::SmallLine& line : sheet.head)
    if (const auto word =
            append(stack, frame.faces, line.text, {kBody, line.strong ? Weight::Bold : Weight::Regular}, frame.width))
      return tl::unexpected(too_wide(*word, frame.width));
  WorkBlock out;
  if (stack.empty()) return out;
  out.height = steps_covering(kStep + stack.height());
  draw(out.drawing, stack, {static_cast<double>(frame.left), static_cast<double>(frame.width)}, kStep + stack.above);
  return out;
}

}  // namespace

problem::Expected<WorkBlock> set_head(const facts::WorkSheet& sheet, const Frame& frame) {
  WorkBlock out;
  TextStack kind;
  if (const auto word = append(kind, frame.faces, sheet.kind, kKind, frame.width))
    return tl::unexpected(too_wide(*word, frame.width));
  draw(out.drawing, kind, {static_cast<double>(frame.left), static_cast<double>(frame.width)}, kind.above);
  out.height = kind.empty() ? 0 : steps_covering(kind.height() + kStep);
  for (const auto& part : {set_title(sheet, frame), set_lines(sheet, frame), set_fields(sheet.fields, frame)}) {
    if (!part) return tl::unexpected(part.error());
    out = joined(std::move(out), *part);
  }
  out.height += kAirOfSection;
  out.name = sheet.title;
  return out;
}

}  // namespace lardiner::paper
