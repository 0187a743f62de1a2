// The use-by band: caption, date and year in white on black, on one line or stacked where the label is narrow.
#include "paper/label_band.h"

#include <algorithm>
#include <cmath>

#include "paper/one_line.h"

namespace lardiner::paper {

namespace {

using facts::FactId;

// In parts of the date's size.
constexpr double kSmall = 0.52;  // caption and year
constexpr double kAir = 0.24;    // above and below the capitals
constexpr double kBetweenLines = 0.26;
constexpr double kHair = 0.04;  // of a small text: the least between ink and ink

QStringList texts_of(const std::vector<FactText>& facts, FactId id) {
  QStringList out;
  for (const FactText& fact : facts)
    if (fact.id == id)
      for (const Paragraph& paragraph : fact.paragraphs) out << paragraph.front().text;
  return out;
}

class BandMaker {
 public:
  BandMaker(const Faces& faces, const std::vector<FactText>& facts, const BandShape& shape)
      : faces_(faces), shape_(shape), small_{std::max(shape.least_small.value, shape.size.value * kSmall)} {
    caption_ = texts_of(facts, FactId::DateCaption).join(QStringLiteral(" · "));
    const QStringList dates = texts_of(facts, FactId::Date);
    const QStringList years = texts_of(facts, FactId::Year);
    year_ = years.value(0);
    const QString time = texts_of(facts, FactId::Time).value(0);
    date_ = dates.value(0) + (time.isEmpty() ? QString() : u' ' + time);
    for (qsizetype i = 1; i < dates.size(); ++i) {
      if (!other_.isEmpty()) other_ += QStringLiteral(" · ");
      other_ += dates[i] + u' ' + years.value(std::min(i, years.size() - 1));
    }
  }

  Band make() {
    left_ = fine_dots(shape_.left + shape_.inset).value;
    right_ = fine_dots(shape_.right - shape_.inset).value;
    const double gap = width(QStringLiteral("0"), small_);
    const double one_line = width(caption_, small_) + gap + width(date_, shape_.size) + gap + width(year_, small_);
    if (other_.isEmpty() && one_line <= right_ - left_)
      on_one_line();
    else
      stacked();
    const int height = static_cast<int>(std::lround(y_ - shape_.top.value));
    band_.box = {shape_.left, shape_.top, shape_.right - shape_.left, {height}, Ink::Black};
    return std::move(band_);
  }

 private:
  double em(Points size) const { return fine_dots(size, shape_.resolution).value; }
  double caps(Points size) const { return em(size) * faces_[FaceId::AtkinsonExtraBold].cap_height; }
  // Ink above the capitals and below the baseline: accents, ideographs.
  double over(const QString& text, Points size) const {
    return std::max(0.0, em(size) * paper::reach(faces_, text, Weight::ExtraBold).above - caps(size));
  }
  double under(const QString& text, Points size) const {
    return em(size) * paper::reach(faces_, text, Weight::ExtraBold).below;
  }
  // Air between baseline and capitals that keeps the ink of two texts, or of a text and the edge, apart.
  double air(double part, double ink) const { return std::max(em(shape_.size) * part, ink + em(small_) * kHair); }
  double width(const QString& text, Points size) const {
    return paper::width(faces_, text, Weight::ExtraBold, size, shape_.resolution).value;
  }

  void draw(const QString& text, Points size, double x, double baseline) {
    add_runs(band_.texts, faces_, {text, Weight::ExtraBold, size, {x}, {baseline}, Ink::White}, shape_.resolution);
  }

  // USE BY   TUE 01 DEC   2026
  void on_one_line() {
    band_.date = shape_.size;
    const double above =
        std::max({over(date_, shape_.size), over(caption_, small_) - caps(shape_.size) + caps(small_)});
    const double baseline = shape_.top.value + air(kAir, above) + caps(shape_.size);
    const double after_caption = left_ + width(caption_, small_);
    const double before_year = right_ - width(year_, small_);
    draw(caption_, small_, left_, baseline);
    draw(date_, shape_.size, (after_caption + before_year - width(date_, shape_.size)) / 2, baseline);
    draw(year_, small_, before_year, baseline);
    y_ = baseline + air(kAir, std::max(under(date_, shape_.size), under(caption_, small_)));
  }

  // USE BY            2026
  // TUE 01 DEC
  // (the other language's date)
  void stacked() {
    const double gap = width(QStringLiteral("0"), small_);
    const double growth = std::clamp((right_ - left_) / width(date_, shape_.size), 1.0, shape_.growth);
    const Points large{shape_.size.value * growth};
    y_ = shape_.top.value + air(kAir, over(caption_, small_));
    line({caption_, small_}, {year_, small_}, gap);
    y_ += air(kBetweenLines, under(caption_, small_) + over(date_, large));
    band_.date = large;
    line({date_, large}, {}, gap);
    double below = under(date_, large);
    if (!other_.isEmpty()) {
      y_ += air(kBetweenLines, below + over(other_, small_));
      line({other_, small_}, {}, gap);
      below = under(other_, small_);
    }
    y_ += air(kAir, below);
  }

  struct Piece {
    QString text;
    Points size;
  };

  void line(const Piece& at_left, const Piece& at_right, double gap) {
    y_ += caps(at_left.size);
    const double lacks = width(at_left.text, at_left.size) +
                         (at_right.text.isEmpty() ? 0 : gap + width(at_right.text, at_right.size)) - (right_ - left_);
    band_.lacks_width.value = std::max(band_.lacks_width.value, lacks);
    draw(at_left.text, at_left.size, left_, y_);
    if (!at_right.text.isEmpty()) draw(at_right.text, at_right.size, right_ - width(at_right.text, at_right.size), y_);
  }

  const Faces& faces_;
  BandShape shape_;
  Points small_;
  QString caption_, date_, year_, other_;
  Band band_;
  double left_ = 0, right_ = 0, y_ = 0;
};

}  // namespace

Band lay_band(const Faces& faces, const std::vector<FactText>& facts, const BandShape& shape) {
  return BandMaker(faces, facts, shape).make();
}

}  // namespace lardiner::paper
