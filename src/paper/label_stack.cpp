// One attempt at a label: blocks stacked from the top, foot and code at the bottom, at one set of sizes.
#include "paper/label_stack.h"

#include <algorithm>

#include "paper/label_band.h"
#include "paper/label_blanks.h"
#include "paper/one_line.h"
#include "symbol/qr.h"

namespace lardiner::paper {

namespace {

using facts::FactId;

// Typographic proportions of the family, in parts of the size: a line's height, its height where lines are run together
// to save room, and how far the descenders' end lies below the baseline.
constexpr double kLine = 1.17;
constexpr double kTightLine = 1.1;
constexpr double kBelow = 0.25;
// How far a capital's accent rises above the baseline: the first line keeps it out of the margin.
constexpr double kAccent = 0.89;
// Air above a block, in parts of its size; none above the first.
constexpr double kAbove = 0.22;
// White letters on black need weight: no smaller than this (points).
constexpr double kLeastWhite = 8;
// What stands beside a name is set smaller than it.
constexpr double kBeside = 0.72;

class Stack {
 public:
  Stack(const Ground& ground, const Choice& choice)
      : ground_(ground), choice_(choice), resolution_(ground.page.resolution) {
    out_.layout.size = ground.page;
    out_.layout.scale = choice.scale;
    out_.layout.trial = choice.trial;
    sizes_ = sizes_at(ground.bounds, choice.scale);
    line_ = choice.trial > 0 ? kTightLine : kLine;
    left_ = fine_dots(ground.margin.left + ground.inset).value;
    right_ = fine_dots(ground.page.width - ground.margin.right - ground.inset).value;
    y_ = top_ = fine_dots(ground.margin.top + ground.inset).value;
    code_left_ = right_;
    code_top_ = bottom_ = fine_dots(ground.page.height - ground.margin.bottom - ground.inset).value;
  }

  Attempt make() {
    add_frame();
    place_code();
    place_foot();
    for (size_t i = 0; i < ground_.label.blocks.size() && !out_.lack; ++i) place_block(i);
    if (!out_.lack && y_ > bottom_) lack_height(last_, y_ - bottom_);
    auto& sizes = out_.layout.blocks;
    std::rotate(sizes.begin(), sizes.begin() + 1, sizes.end());  // the foot was placed first
    return std::move(out_);
  }

 private:
  // A line's parts above and below the baseline, in parts of the size. Latin fits the family's proportions; a paragraph
  // with ink that rises or falls further (accents on tight lines, stacked accents, ideographs) gets taller lines, all of
  // them alike.
  struct Leading {
    double above, below;
    double height() const { return above + below; }
  };
  Leading leading_of(const Reach& ink) const {
    const double above = line_ - kBelow;
    return {std::max(above, ink.above), std::max(kBelow, ink.below)};
  }

  double em(Points size) const { return fine_dots(size, resolution_).value; }

  void lack_height(FactId fact, double dots) { out_.lack = Lack{fact, {0}, {dots}, {}}; }

  void add_frame() {
    const int thick = ground_.frame.value;
    if (thick == 0) return;
    const Insets& margin = ground_.margin;
    const Dots x = margin.left, y = margin.top, t{thick};
    const Dots w = ground_.page.width - margin.left - margin.right;
    const Dots h = ground_.page.height - margin.top - margin.bottom;
    auto& boxes = out_.layout.shared.boxes;
    boxes.push_back({x, y, w, t, Ink::Black});
    boxes.push_back({x, y + h - t, w, t, Ink::Black});
    boxes.push_back({x, y, t, h, Ink::Black});
    boxes.push_back({x + w - t, y, t, h, Ink::Black});
  }

  // From the label's edge to the code: its quiet zone, inside the frame; never in the medium's margin.
  Dots code_inset(Dots margin) const {
    const Dots quiet = choice_.module * symbol::kQuietZone;
    return ground_.frame.value > 0 ? margin + ground_.frame + quiet : std::max(quiet, margin);
  }

  void place_code() {
    if (ground_.code_modules == 0) return;
    const int module = choice_.module.value;
    const int quiet = symbol::kQuietZone * module;
    const int side = ground_.code_modules * module;
    const CodePlace place{ground_.page.width - code_inset(ground_.margin.right),
                          ground_.page.height - code_inset(ground_.margin.bottom), choice_.module};
    out_.layout.code = place;
    code_left_ = place.right.value - side - quiet;
    code_top_ = place.bottom.value - side - quiet;
  }

  // A text of the foot; `varies` from label to label.
  struct FootPiece {
    FactId id;
    QString text;

    bool varies() const { return id != FactId::Lot; }
    Weight weight() const { return id == FactId::Serial ? Weight::Regular : Weight::Bold; }
  };

  // Lot and initials, the container and its serial; the initials on their own where they do not fit beside the lot.
  std::vector<FootPiece> foot_pieces(Points size) const {
    std::vector<FootPiece> pieces;
    for (const FactText& fact : ground_.text.foot) {
      const FootPiece whole{fact.id, fact.paragraphs.front().front().text};
      const qsizetype end =
          whole.varies() || foot_width(whole, size) <= foot_room() ? -1 : whole.text.lastIndexOf(u' ');
      pieces.push_back({fact.id, whole.text.left(end)});
      if (end >= 0) pieces.push_back({fact.id, whole.text.mid(end + 1)});
    }
    return pieces;
  }

  double foot_room() const { return code_left_ - left_; }

  // On as few lines as there is room for.
  void place_foot() {
    const Points size = sizes_.back();
    note(FactId::Lot, ground_.bounds.size() - 1, size, false);
    const Leading leading = leading_of(foot_reach());
    const double line = em(size) * leading.height();
    std::vector<std::vector<FootPiece>> lines;
    double used = 0;
    for (const FootPiece& piece : foot_pieces(size)) {
      const double width = foot_width(piece, size);
      const bool joins = !lines.empty() && used + em(size) + width <= foot_room();
      used = joins ? used + em(size) + width : width;
      if (!joins) lines.emplace_back();
      lines.back().push_back(piece);
      if (width > foot_room() && !out_.lack) out_.lack = Lack{piece.id, {width - foot_room()}, {0}, piece.text};
    }
    double top = bottom_ - static_cast<double>(lines.size()) * line;
    foot_top_ = top;
    for (const auto& pieces : lines) {
      draw_foot_line(pieces, size, top + em(size) * leading.above);
      top += line;
    }
    bottom_ = foot_top_ - em(size) * kAbove;
  }

  // Of what varies: no digit is wider than 0.
  double foot_width(const FootPiece& piece, Points size) const {
    QString text = piece.text;
    if (piece.varies())
      std::replace_if(
          text.begin(), text.end(), [](QChar c) { return c.isDigit(); }, u'0');
    return width(ground_.faces, text, piece.weight(), size, resolution_).value;
  }
  Reach foot_reach() const {
    Reach most;
    for (const FactText& fact : ground_.text.foot) {
      const FootPiece piece{fact.id, fact.paragraphs.front().front().text};
      most = farther(most, reach(ground_.faces, piece.text, piece.weight()));
    }
    return most;
  }

  void draw_foot_line(const std::vector<FootPiece>& pieces, Points size, double baseline) {
    double x = left_;
    for (const FootPiece& piece : pieces) {
      const OneLine line{piece.text, piece.weight(), size, {x}, {baseline}, Ink::Black};
      if (piece.varies())
        out_.layout.varying.push_back({piece.id, line});
      else
        add_runs(out_.layout.shared.texts, ground_.faces, line, resolution_);
      x += foot_width(piece, size) + em(size);
    }
  }

  void place_block(size_t index) {
    const Block& block = ground_.label.blocks[index];
    const BlockText& text = ground_.text.blocks[index];
    if (text.empty()) return;
    const Points size = sizes_[index];
    if (block.write) {
      note(text.facts.front().id, index, size, false);
      place_blanks(block, text.facts, size);
      return;
    }
    if (block.band) {
      if (ground_.run.frozen)
        place_frozen_date(text, index, size);
      else
        place_band(text.facts, index, size);
      return;
    }
    const bool together = block.run_together > 0 && block.run_together <= choice_.trial;
    note(text.facts.empty() ? text.beside->id : text.facts.front().id, index, size, together);
    y_ += above(size);
    const auto& run = block.run_together < choice_.trial ? text.filled : text.flowed;
    for (const Piece& piece : together ? run : text.apart) place_piece(piece, size);
    if (text.beside) place_beside(text, size);
  }

  // Air above a block; the first keeps an accent out of the margin.
  double above(Points size) const {
    return em(size) * (y_ > top_ ? kAbove : std::max(0.0, kAccent - (line_ - kBelow)));
  }

  void note(FactId fact, size_t bounds, Points size, bool together) {
    const Sizes& sizes = ground_.bounds[bounds].sizes;
    out_.layout.blocks.push_back({fact, size, sizes.preferred, sizes.least, together});
  }

  void place_frozen_date(const BlockText& text, size_t index, Points size) {
    y_ += above(size);
    const Points one_line = on_one_line(text.together->text, size, ground_.bounds[index].sizes.least);
    note(FactId::Date, index, one_line, false);
    place_piece(*text.together, one_line);
  }

  // As large as one line allows, but not below the least: then it takes two.
  Points on_one_line(const MeasuredText& text, Points size, Points least) const {
    const double fits = size.value * (right_ - left_) / text.width({size, resolution_}).value;
    return {std::max(least.value, std::min(size.value, fits))};
  }

  // A date shrinks by what it has grown to fill its line before its block is at its least.
  static double band_growth(Points size, Points least) {
    constexpr double kMost = 1.45;
    return std::clamp(size.value / least.value, 1.0, kMost);
  }

  void place_band(const std::vector<FactText>& facts, size_t index, Points size) {
    const double gap = em(size) * kAbove;
    const Dots top = y_ > top_ ? nearest_dots(FineDots{y_ + gap}) : ground_.margin.top;
    const Points least_small{std::max(kLeastWhite, least_of(Weight::ExtraBold).value)};
    const Band band =
        lay_band(ground_.faces, facts,
                 BandShape{size, band_growth(size, ground_.bounds[index].sizes.least), least_small, resolution_,
                           ground_.margin.left, ground_.page.width - ground_.margin.right, ground_.inset, top});
    note(FactId::Date, index, band.date, false);
    last_ = FactId::Date;
    if (band.lacks_width.value > 0 && !out_.lack) {
      out_.lack = Lack{FactId::Date, band.lacks_width, {0}, {}};
      return;
    }
    auto& shared = out_.layout.shared;
    shared.boxes.push_back(band.box);
    shared.texts.insert(shared.texts.end(), band.texts.begin(), band.texts.end());
    const int end = band.box.y.value + band.box.height.value;
    if (end > code_top_ && !out_.lack) lack_height(FactId::Date, end - code_top_);  // it runs across the label
    y_ = end + gap / 2;
    check_height(FactId::Date);
  }

  // At its least where all sizes are, at its preferred height where they are at theirs.
  static Millimetres writing_height(const WritingLine& line, double scale) {
    if (scale >= 1) return std::min(line.most, line.preferred * scale);
    return line.least + (line.preferred - line.least) * std::max(0.0, scale);
  }

  void place_blanks(const Block& block, const std::vector<FactText>& facts, Points size) {
    const Millimetres height = writing_height(*block.write, choice_.scale);
    BlanksShape shape{size,      fine_dots(height, resolution_), resolution_, {left_}, {y_ + em(size) * kAbove}, {},
                      block.dark};
    shape.height.value = std::max(shape.height.value, em(size) * line_);
    shape.right = [&](FineDots bottom) { return FineDots{bottom.value <= code_top_ ? right_ : code_left_}; };
    const Blanks blanks = lay_blanks(ground_.faces, facts, shape);
    last_ = facts.back().id;
    if (blanks.lacks_width.value > 0) out_.lack = Lack{blanks.lacking, blanks.lacks_width, {0}, {}};
    auto& shared = out_.layout.shared;
    shared.boxes.insert(shared.boxes.end(), blanks.boxes.begin(), blanks.boxes.end());
    shared.texts.insert(shared.texts.end(), blanks.texts.begin(), blanks.texts.end());
    y_ = blanks.bottom.value;
    check_height(last_);
  }

  // The count at the right end of the name's last line, where both fit; else below it.
  void place_beside(const BlockText& text, Points size) {
    if (out_.lack) return;
    const Points least = least_of(text.beside->paragraphs.front().front().weight);
    const Points small = std::max(least, size * kBeside);
    const double width = text.beside_words->text.width({small, resolution_}).value;
    const double right = y_ > code_top_ ? code_left_ : right_;
    if (text.facts.empty() || line_end_ + em(size) / 2 + width > right) {
      place_piece(*text.beside_words, small);
      return;
    }
    const double baseline = y_ - em(size) * below_;
    const auto line = text.beside_words->text.lines({small, resolution_}, [&](std::size_t) { return FineDots{width}; });
    draw_line(line->front(), small, right - width, baseline);
  }

  // Lines are as long as the label is wide, until they come down to the code.
  void place_piece(const Piece& piece, Points size) {
    if (out_.lack) return;
    last_ = piece.fact;
    const Leading leading = leading_of(piece.text.reach());
    const double line = em(size) * leading.height(), top = y_;
    std::size_t asked = 0;
    const auto room = [&](std::size_t n) {
      asked = std::max(asked, n);
      const bool above_code = top + line * static_cast<double>(n + 1) <= code_top_;
      return FineDots{(above_code ? right_ : code_left_) - left_};
    };
    const auto lines = piece.text.lines({size, resolution_}, room);
    if (!lines) {
      out_.lack = Lack{piece.fact, lines.error().width - room(asked), {0}, lines.error().word};
      return;
    }
    for (const Line& one : *lines) {
      draw_line(one, size, left_, y_ + em(size) * leading.above);
      line_end_ = left_ + one.width.value;
      y_ += line;
    }
    below_ = leading.below;
    check_height(piece.fact);
  }

  void draw_line(const Line& line, Points size, double x, double baseline) {
    for (const LinePiece& part : line.pieces)
      out_.layout.shared.texts.push_back({part.face, size, {x + part.x.value}, {baseline}, part.text, Ink::Black});
  }

  void check_height(FactId fact) {
    if (y_ > bottom_ && !out_.lack) lack_height(fact, y_ - bottom_);
  }

  Points least_of(Weight weight) const { return legible(ground_.label, ground_.faces, weight, resolution_); }

  const Ground& ground_;
  Choice choice_;
  Resolution resolution_;
  std::vector<Points> sizes_;  // of the template's blocks, and of the foot
  Attempt out_;
  FactId last_ = FactId::Name;
  double left_ = 0, right_ = 0, top_ = 0, y_ = 0, bottom_ = 0;
  double code_left_ = 0, code_top_ = 0, foot_top_ = 0;
  double line_end_ = 0;
  double line_ = kLine;
  double below_ = kBelow;  // of the last line
};

}  // namespace

Points legible(const LabelTemplate& label, const Faces& faces, Weight weight, Resolution resolution) {
  const Dots x = whole_dots_covering(fine_dots(label.least_x_height, resolution));
  return {points(fine_dots(x), resolution).value / faces.least_x_height(weight)};
}

Attempt stack(const Ground& ground, const Choice& choice) { return Stack(ground, choice).make(); }

}  // namespace lardiner::paper
