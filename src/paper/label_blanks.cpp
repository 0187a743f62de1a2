// Lines to write on by hand: a caption and a rule behind it, as many in a row as there is room for.
#include "paper/label_blanks.h"

#include <QRegularExpression>
#include <algorithm>
#include <cmath>

#include "paper/one_line.h"

namespace lardiner::paper {

namespace {

using facts::FactId;

// What a marker in a cold hand needs for each underscore: a blank of seven holds 14:30, one of sixteen THU 26 NOV.
constexpr Millimetres kLeastStroke{1.7};
constexpr Millimetres kRule{0.25};  // thickness
constexpr int kLeastRule = 2;       // dots: one alone fades where a dot of the head is weak
// In parts of the captions' size.
constexpr double kGap = 0.3;     // between a caption and its rule, and around a dark one
constexpr double kBelow = 0.25;  // from the baseline down to the row's end

// One caption with the blank behind it.
struct Cell {
  QString caption;
  Weight weight = Weight::Bold;
  int strokes = 0;  // 0: words after the last blank
};

using Cells = std::vector<Cell>;

QString plain_text(const Paragraph& paragraph) {
  QString text;
  for (const StyledText& part : paragraph) text += part.text;
  return text;
}

// "Made ____ at ____" -> {Made, 4}, {at, 4}
Cells cells_of(const Paragraph& paragraph) {
  static const QRegularExpression blank(QStringLiteral("_+"));
  const QString text = plain_text(paragraph);
  const Weight weight = paragraph.front().weight;
  Cells out;
  qsizetype from = 0;
  for (auto found = blank.globalMatch(text); found.hasNext();) {
    const QRegularExpressionMatch match = found.next();
    out.push_back(
        {text.sliced(from, match.capturedStart() - from).trimmed(), weight, static_cast<int>(match.capturedLength())});
    from = match.capturedEnd();
  }
  const QString rest = text.sliced(from).trimmed();
  if (!rest.isEmpty()) out.push_back({rest, weight, 0});
  return out;
}

// One group a row at the least: readings each on their own, else all languages' captions before one blank.
std::vector<Cells> groups_of(const FactText& fact) {
  std::vector<Cells> groups;
  for (const Paragraph& paragraph : fact.paragraphs) groups.push_back(cells_of(paragraph));
  if (fact.id == FactId::Readings || groups.size() == 1) return groups;
  Cells joined = groups.front();
  for (size_t language = 1; language < groups.size(); ++language)
    for (size_t i = 0; i < std::min(joined.size(), groups[language].size()); ++i)
      joined[i].caption += QStringLiteral(" · ") + groups[language][i].caption;
  return {joined};
}

class BlanksMaker {
 public:
  BlanksMaker(const Faces& faces, const BlanksShape& shape)
      : faces_(faces), shape_(shape), em_(fine_dots(shape.size, shape.resolution).value) {
    stroke_ = fine_dots(kLeastStroke, shape.resolution).value;
    rule_ = std::max(kLeastRule, nearest_dots(fine_dots(kRule, shape.resolution)).value);
    out_.bottom = shape.top;
  }

  Blanks make(const std::vector<FactText>& facts) {
    for (const FactText& fact : facts)
      for (const Cells& group : groups_of(fact)) add_group(group, fact.id);
    end_row();
    return std::move(out_);
  }

 private:
  double caption_width(const Cell& cell) const {
    if (cell.caption.isEmpty()) return 0;
    const double words = width(faces_, cell.caption, cell.weight, shape_.size, shape_.resolution).value;
    return words + em_ * kGap * (shape_.dark ? 3 : 1);
  }
  double least(const Cell& cell) const { return caption_width(cell) + cell.strokes * stroke_; }
  double least(const Cells& cells) const {
    double width = 0;
    for (const Cell& cell : cells) width += least(cell) + em_ * kGap;
    return width;
  }
  double room() const { return shape_.right(out_.bottom + shape_.height).value - shape_.left.value; }

  void add_group(const Cells& group, FactId id) {
    if (!row_.empty() && least(row_) + least(group) > room()) end_row();
    bool broken = false;
    for (const Cell& cell : group) {
      if (!row_.empty() && least(row_) + least(cell) > room()) {
        end_row();
        broken = true;
      }
      row_.push_back(cell);
      const double lacks = least(cell) - room();
      if (lacks > out_.lacks_width.value) {
        out_.lacks_width.value = lacks;
        out_.lacking = id;
      }
    }
    // Behind the rest of a reading the next caption would seem to belong to it.
    if (broken && id == FactId::Readings) end_row();
  }

  // What is left over goes to the blanks, to each in proportion.
  void end_row() {
    if (row_.empty()) return;
    int strokes = 0;
    for (const Cell& cell : row_) strokes += cell.strokes;
    const double spare = std::max(0.0, room() - least(row_) + em_ * kGap);
    const double each = stroke_ + (strokes > 0 ? spare / strokes : 0);
    const double bottom = std::floor(out_.bottom.value + shape_.height.value);
    double x = shape_.left.value;
    for (const Cell& cell : row_) {
      draw_caption(cell, x, bottom);
      x += caption_width(cell);
      draw_rule(x, x + cell.strokes * each, bottom);
      x += cell.strokes * each + em_ * kGap;
    }
    out_.bottom.value = bottom;
    row_.clear();
  }

  void draw_caption(const Cell& cell, double x, double bottom) {
    if (cell.caption.isEmpty()) return;
    double baseline = bottom - em_ * kBelow;
    if (shape_.dark) {
      const int from = static_cast<int>(std::lround(x)), top = static_cast<int>(std::lround(out_.bottom.value));
      const int to = static_cast<int>(std::lround(x + caption_width(cell) - em_ * kGap));
      out_.boxes.push_back({{from}, {top}, {to - from}, {static_cast<int>(bottom) - top}, Ink::Black});
      const double caps = em_ * faces_[face_of(Family::Atkinson, cell.weight)].cap_height;
      baseline = (out_.bottom.value + bottom + caps) / 2;
      x += em_ * kGap;
    }
    const Ink ink = shape_.dark ? Ink::White : Ink::Black;
    add_runs(out_.texts, faces_, {cell.caption, cell.weight, shape_.size, {x}, {baseline}, ink}, shape_.resolution);
  }

  void draw_rule(double from, double to, double bottom) {
    const int left = static_cast<int>(std::lround(from)), right = static_cast<int>(std::floor(to));
    if (right > left)
      out_.boxes.push_back({{left}, {static_cast<int>(bottom) - rule_}, {right - left}, {rule_}, Ink::Black});
  }

  const Faces& faces_;
  const BlanksShape& shape_;
  double em_ = 0, stroke_ = 0;
  int rule_ = kLeastRule;
  Blanks out_;
  Cells row_;
};

}  // namespace

Blanks lay_blanks(const Faces& faces, const std::vector<FactText>& facts, const BlanksShape& shape) {
  return BlanksMaker(faces, shape).make(facts);
}

}  // namespace lardiner::paper
