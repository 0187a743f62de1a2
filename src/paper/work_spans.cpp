// A picture of spans of time as blocks: an axis with its marks, and a row for each span with its bars.
#include "paper/work_spans.h"

#include <algorithm>
#include <cmath>

#include "paper/work_axis.h"
#include "paper/work_table.h"

namespace lardiner::paper {

namespace {

using facts::Spans;

constexpr double kMostWords = 0.36;  // of the width, for the spans' texts
constexpr int kPadding = 10;
constexpr int kWindow = 4 * kStep, kLine = 3;  // the window's height, and its outline
constexpr int kLeastWork = 8;
constexpr int kWork = 2 * kStep;                  // the dark bar's height
constexpr int kReady = 4, kReadyEnd = 2 * kStep;  // the thin line and its end
constexpr int kOpen = 5 * kStep;                  // of an open window's start, dashed
constexpr int kDash = kStep;
constexpr Type kWords{kBody, Weight::Bold};

void add_box(Drawing& to, int left, int top, int right, int bottom, Ink ink = Ink::Black) {
  if (right > left && bottom > top) to.boxes.push_back({{left}, {top}, {right - left}, {bottom - top}, ink});
}

// An edge that is dashed up to `solid`.
void add_edge(Drawing& to, int left, int solid, int right, int top) {
  for (int x = left; x < solid; x += 2 * kDash) add_box(to, x, top, std::min(x + kDash, solid), top + kLine);
  add_box(to, solid, top, right, top + kLine);
}

void draw_window(Drawing& to, const Spans::Span& span, const Axis& axis, int middle) {
  const int left = std::min(axis.at(span.from), axis.right() - 2 * kLine);
  const int right = std::max(axis.at(span.to), left + 2 * kLine);
  const int top = middle - kWindow / 2, bottom = top + kWindow;
  add_box(to, left, top, right, bottom, Ink::White);  // no mark's line within
  const int solid = span.open ? std::min(left + kOpen, right) : left;
  add_edge(to, left, solid, right, top);
  add_edge(to, left, solid, right, bottom - kLine);
  if (!span.open) add_box(to, left, top, left + kLine, bottom);
  add_box(to, right - kLine, top, right, bottom);
}

void draw_bars(Drawing& to, const Spans::Span& span, const Axis& axis, int middle) {
  draw_window(to, span, axis, middle);
  const int latest = axis.at(span.to), ready = axis.at(span.end);
  add_box(to, latest, middle - kReady / 2, ready, middle + kReady / 2);
  add_box(to, ready - kReady, middle - kReadyEnd / 2, ready, middle + kReadyEnd / 2);
  const int from = std::min(axis.at(span.start), axis.right() - kLeastWork);
  const int until = std::max(axis.at(span.start + span.end - span.to), from + kLeastWork);
  add_box(to, from, middle - kWork / 2, until, middle + kWork / 2);
}

class SpansSetter {
 public:
  SpansSetter(const Spans& spans, const Frame& frame) : spans_(spans), frame_(frame) {}

  problem::Expected<std::vector<WorkBlock>> set() {
    double words = 0;
    for (const Spans::Span& span : spans_.spans) words = std::max(words, whole_width(frame_.faces, span.text, kWords));
    words_ = std::min(words, frame_.width * kMostWords);
    const int left = frame_.left + steps_covering(words_ + kGap);
    axis_ = {left, frame_.right() - left, spans_.length};

    if (const auto error = add_head()) return tl::unexpected(*error);
    for (const Spans::Span& span : spans_.spans)
      if (const auto error = add_row(span)) return tl::unexpected(*error);
    for (const QString& note : spans_.notes)
      if (const auto error = add_note(note)) return tl::unexpected(*error);
    for (WorkBlock& block : out_) block.keep = &block != &out_.back();
    return std::move(out_);
  }

 private:
  std::optional<problem::Error> add_head() {
    WorkBlock head;
    if (!spans_.caption.isEmpty()) {
      const auto caption = set_heading(spans_.caption, frame_);
      if (!caption) return caption.error();
      head = *caption;
    }
    head = joined(std::move(head), set_axis(spans_.marks, axis_, frame_));
    head.air = kAirOfSection;
    out_.push_back(head);
    again_ = std::make_shared<const WorkBlock>(std::move(head));
    return std::nullopt;
  }

  std::optional<problem::Error> add_row(const Spans::Span& span) {
    TextStack stack;
    if (const auto word = append(stack, frame_.faces, span.text, kWords, words_)) return too_wide(*word, words_);
    WorkBlock row;
    row.name = span.text;
    row.again = again_;
    row.height = steps_covering(std::max<double>(stack.height(), kWindow) + 2 * kPadding + kThin);
    const int middle = (row.height - kThin) / 2;
    // The middle of the texts' capitals stands at the bar's.
    const double last = stack.empty() ? 0 : stack.lines.back().baseline;
    const double baseline =
        std::clamp(middle + (cap_height(frame_.faces, kWords.size) - last) / 2, static_cast<double>(stack.above),
                   std::max(stack.above, row.height - kThin - stack.below));
    draw_marks(row.drawing, spans_.marks, axis_, row.height);
    draw_bars(row.drawing, span, axis_, middle);
    row.drawing.boxes.push_back(rule(frame_.left, row.height - kThin, axis_.left - kGap - frame_.left, kThin));
    draw(row.drawing, stack, {static_cast<double>(frame_.left), words_}, baseline);
    out_.push_back(std::move(row));
    return std::nullopt;
  }

  std::optional<problem::Error> add_note(const QString& note) {
    TextStack stack;
    if (const auto word = append(stack, frame_.faces, note, {kSmall, Weight::Regular}, frame_.width))
      return too_wide(*word, frame_.width);
    WorkBlock block;
    block.name = note;
    block.air = out_.back().again ? 2 * kStep : kStep;
    block.height = steps_covering(stack.height());
    draw(block.drawing, stack, {static_cast<double>(frame_.left), static_cast<double>(frame_.width)}, stack.above);
    out_.push_back(std::move(block));
    return std::nullopt;
  }

  const Spans& spans_;
  const Frame& frame_;
  double words_ = 0;
  Axis axis_;
  std::shared_ptr<const WorkBlock> again_;
  std::vector<WorkBlock> out_;
};

}  // namespace

problem::Expected<std::vector<WorkBlock>> set_spans(const Spans& spans, const Frame& frame) {
  return SpansSetter(spans, frame).set();
}

}  // namespace lardiner::paper
