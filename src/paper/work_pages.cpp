// A work sheet on pages: head, parts, cautions, and on each page its running line and number.
#include "paper/work_pages.h"

#include <algorithm>

#include "paper/work_flow.h"
#include "paper/work_head.h"
#include "paper/work_printable.h"
#include "paper/work_spans.h"
#include "paper/work_table.h"
#include "paper/work_text.h"

namespace lardiner::paper {

namespace {

constexpr int kAboveFoot = 3 * kStep;
constexpr int kMostPages = 99;  // for the width of the page's number

QString page_number(QString page_of, std::size_t page, std::size_t pages) {
  return page_of.replace(QStringLiteral("{0}"), QString::number(page))
      .replace(QStringLiteral("{1}"), QString::number(pages));
}

class SheetSetter {
 public:
  SheetSetter(const facts::WorkSheet& sheet, PageSize page, const Faces& faces)
      : sheet_(sheet), page_(page), frame_{faces, kSideMargin, page.width.value - 2 * kSideMargin} {}

  problem::ExpectedAll<std::vector<Drawing>> set() {
    const WorkBlock head = taken(set_head(sheet_, frame_));
    running_ = set_running();
    foot_ = set_foot();
    for (const facts::Part& part : sheet_.parts) std::visit([&](const auto& one) { add(one); }, part);
    const WorkBlock cautions = set_cautions();
    if (!errors_.empty()) {
      problem::sort(errors_);  // of tables alike each tells the same
      return tl::unexpected(errors_);
    }

    const int all = page_.height.value - kTopMargin - kBottomMargin - foot_.height;
    const auto pages = flow(blocks_, cautions, {all - head.height, all - running_.height});
    if (!pages) return tl::unexpected(pages.error());
    if (head.height > all)
      return tl::unexpected(problem::Errors{
          {problem::Code::NoRoom,
           QStringLiteral("what stands above the rows of \"%1\" is higher than a page").arg(sheet_.title),
           {},
           QStringLiteral("shorten its title and the lines beneath")}});
    std::vector<Drawing> out;
    for (std::size_t i = 0; i < pages->size(); ++i) {
      const WorkBlock& top = i == 0 ? head : running_;
      out.emplace_back();
      draw(out.back(), top, kTopMargin);
      for (const PlacedBlock& placed : (*pages)[i]) draw(out.back(), *placed.block, kTopMargin + top.height + placed.y);
      draw(out.back(), numbered(i + 1, pages->size()), page_.height.value - kBottomMargin - foot_.height);
    }
    return out;
  }

 private:
  WorkBlock taken(problem::Expected<WorkBlock> block) {
    if (block) return std::move(*block);
    errors_.push_back(block.error());
    return {};
  }

  // Lines in one type over the whole width, or what `less` leaves of it.
  TextStack stack_of(const QStringList& texts, Type type, double less = 0) {
    TextStack out;
    for (const QString& text : texts)
      if (const auto word = append(out, frame_.faces, text, type, frame_.width - less))
        errors_.push_back(too_wide(*word, frame_.width - less));
    return out;
  }

  ColumnOf column() const { return {static_cast<double>(frame_.left), static_cast<double>(frame_.width)}; }

  WorkBlock set_running() {
    const TextStack stack = stack_of({sheet_.running}, {kSmall, Weight::Bold});
    WorkBlock out;
    if (stack.empty()) return out;
    draw(out.drawing, stack, column(), stack.above);
    const int line = steps_covering(stack.height() + kStep / 2.0);
    out.drawing.boxes.push_back(rule(frame_.left, line, frame_.width, kThin));
    out.height = line + kAirOfSection;
    return out;
  }

  // As high as with the longest number; the number itself is drawn later.
  WorkBlock set_foot() {
    const auto most = static_cast<std::size_t>(kMostPages);
    const double number = whole_width(frame_.faces, page_number(sheet_.page_of, most, most), {kFine, Weight::Bold});
    foot_words_ = stack_of({sheet_.running}, {kFine, Weight::Regular}, number + kGap);
    WorkBlock out;
    out.height = kAboveFoot + steps_covering(std::max(foot_words_.height(), fine_dots(kFine, kPrint).value * 1.4));
    return out;
  }

  WorkBlock numbered(std::size_t page, std::size_t pages) const {
    WorkBlock out = foot_;
    TextStack number;
    (void)append(number, frame_.faces, page_number(sheet_.page_of, page, pages), {kFine, Weight::Bold}, frame_.width);
    const double baseline = kAboveFoot + std::max(number.above, foot_words_.above);
    draw(out.drawing, foot_words_, column(), baseline);
    draw(out.drawing, number, {column().x, column().width, Side::Right}, baseline);
    return out;
  }

  WorkBlock set_cautions() {
    const TextStack stack = stack_of(sheet_.foot, {kSmall, Weight::Regular});
    WorkBlock out;
    if (stack.empty()) return out;
    out.name = sheet_.foot.front();
    out.air = 2 * kStep;
    out.drawing.boxes.push_back(rule(frame_.left, 0, frame_.width, kRule));
    draw(out.drawing, stack, column(), kStep + stack.above);
    out.height = steps_covering(kStep + stack.height());
    return out;
  }

  // A paragraph's lines are kept together where a page holds them, and with the row before: it says what the rows mean.
  void add(const facts::Note& note) {
    if (note.strong) {
      blocks_.push_back(taken(set_heading(note.text, frame_)));
      return;
    }
    const TextStack stack = stack_of({note.text}, {kBody, Weight::Regular});
    if (!blocks_.empty() && blocks_.back().again) blocks_.back().keep = true;
    for (std::size_t i = 0; i < stack.lines.size(); ++i) {
      TextStack line;
      line.lines = {stack.lines[i]};
      line.lines.front().baseline = 0;
      const double below = i + 1 < stack.lines.size()
                               ? stack.lines[i + 1].baseline - stack.lines[i].baseline - stack.above
                               : stack.below - stack.lines[i].baseline;
      WorkBlock block;
      block.name = note.text;
      block.air = i == 0 ? 2 * kStep : 0;
      block.keep = i + 1 < stack.lines.size();
      draw(block.drawing, line, column(), stack.above);
      block.height = block.keep ? static_cast<int>(stack.above + below) : steps_covering(stack.above + below);
      blocks_.push_back(std::move(block));
    }
  }

  // Tables of the same columns, as of the bowls of a prep sheet, have them in the same places.
  void add(const facts::Table& table) {
    facts::Table alike{{}, table.columns, {}, table.carried};
    for (const facts::Part& part : sheet_.parts) {
      const auto* other = std::get_if<facts::Table>(&part);
      if (other && have_same_columns(table, *other))
        alike.rows.insert(alike.rows.end(), other->rows.begin(), other->rows.end());
    }
    const auto columns = columns_of(alike, frame_);
    if (!columns)
      errors_.push_back(columns.error());
    else
      add_all(set_table(table, *columns, frame_));
  }

  static bool have_same_columns(const facts::Table& one, const facts::Table& other) {
    return one.carried == other.carried &&
           std::equal(one.columns.begin(), one.columns.end(), other.columns.begin(), other.columns.end(),
                      [](const facts::Column& a, const facts::Column& b) {
                        return a.kind == b.kind && a.heading == b.heading && a.share == b.share;
                      });
  }

  void add(const facts::Spans& spans) { add_all(set_spans(spans, frame_)); }
  void add_all(problem::Expected<std::vector<WorkBlock>> blocks) {
    if (!blocks) {
      errors_.push_back(blocks.error());
      return;
    }
    for (WorkBlock& block : *blocks) blocks_.push_back(std::move(block));
  }

  const facts::WorkSheet& sheet_;
  PageSize page_;
  Frame frame_;
  problem::Errors errors_;
  WorkBlock running_, foot_;
  TextStack foot_words_;
  std::vector<WorkBlock> blocks_;
};

}  // namespace

PageSize page_size(Paper paper) {
  const auto dots = [](double mm) { return nearest_dots(fine_dots(Millimetres{mm}, kPrint)); };
  switch (paper) {
    case Paper::A4:
      return {dots(210), dots(297), kPrint};
    case Paper::Letter:
      break;
  }
  return {dots(8.5 * kMillimetresPerInch), dots(11 * kMillimetresPerInch), kPrint};
}

problem::ExpectedAll<std::vector<Drawing>> lay_out(const facts::WorkSheet& sheet, Paper paper, const Faces& faces) {
  const auto texts = printable(sheet, faces);
  if (!texts) return tl::unexpected(texts.error());
  return SheetSetter(*texts, page_size(paper), faces).set();
}

problem::ExpectedAll<SpansPicture> spans_picture(const facts::Spans& spans, const Faces& faces) {
  const auto texts = printable(spans, faces);
  if (!texts) return tl::unexpected(texts.error());
  const Frame frame{faces, 0, page_size(Paper::A4).width.value - 2 * kSideMargin};
  const auto blocks = set_spans(*texts, frame);
  if (!blocks) return tl::unexpected(problem::Errors{blocks.error()});
  SpansPicture out;
  int y = 0;
  for (const WorkBlock& block : *blocks) {
    if (y > 0) y += block.air;
    draw(out.drawing, block, y);
    y += block.height;
  }
  out.size = {Dots{frame.width}, Dots{y}, kPrint};
  return out;
}

}  // namespace lardiner::paper
