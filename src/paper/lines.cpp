// Breaks a paragraph of strong and regular runs into lines of at most a width.
#include "paper/lines.h"

#include <QTextBoundaryFinder>

#include "paper/spans.h"

namespace lardiner::paper {

namespace {

constexpr char16_t kSoftHyphen = 0x00AD;
// Widths are sums of doubles: a line that fits exactly must not be refused for the last bit.
constexpr double kRounding = 1e-6;
// At 72 points and one dot to the inch an em is one dot wide: widths come in ems.
constexpr Points kEm{kPointsPerInch};
constexpr Resolution kEmResolution{1};

double ems(const Faces& faces, QStringView text, FaceId face) {
  return faces.width(text, face, kEm, kEmResolution).value;
}

}  // namespace

// The families are chosen over the whole, so that a word that changes its weight inside stays in one of them.
MeasuredText::MeasuredText(const Faces& faces, const Paragraph& paragraph) {
  std::vector<Weight> weights;
  for (const StyledText& run : paragraph) {
    text_ += run.text;
    weights.insert(weights.end(), static_cast<std::size_t>(run.text.size()), run.weight);
  }
  before_.push_back(0);
  for (const Span& span : spans(faces, text_))
    for (qsizetype at = span.start; at < span.start + span.size; ++at) {
      const FaceId face = face_of(span.family, weights[static_cast<std::size_t>(at)]);
      before_.push_back(before_.back() + ems(faces, QStringView(text_).mid(at, 1), face));
      hyphens_.push_back(!faces_.empty() && faces_.back() == face ? hyphens_.back() : ems(faces, u"-", face));
      faces_.push_back(face);
      reach_ = farther(reach_, paper::reach(faces[face], text_[at]));
    }
  QTextBoundaryFinder finder(QTextBoundaryFinder::Line, text_);
  for (qsizetype at = finder.toNextBoundary(); at > 0; at = finder.toNextBoundary()) opportunities_.push_back(at);
}

FineDots MeasuredText::width(TextStyle style) const {
  return FineDots{before_.back() * fine_dots(style.size, style.resolution).value};
}

/// One breaking of a measured text; all widths inside are ems.
class Breaker {
 public:
  Breaker(const MeasuredText& measured, double em, const std::function<FineDots(std::size_t)>& room)
      : measured_(measured), text_(measured.text_), em_(em), room_(room) {}

  tl::expected<std::vector<Line>, TooLong> lines() {
    qsizetype start = 0;
    qsizetype fits = 0;  // the last place where the line may end; `start` when there is none yet
    for (qsizetype end : measured_.opportunities_) {
      if (line_width(start, end) > width() && fits > start && !at_soft_hyphen(end)) {
        lines_.push_back(line(start, fits));
        start = fits;
        fits = last_fitting(start, end);
      }
      if (line_width(start, end) <= width())
        fits = end;
      else if (!at_soft_hyphen(end) && fits == start)
        return tl::unexpected(TooLong{shown(start, end), FineDots{line_width(start, end) * em_}});
    }
    if (start < text_.size()) lines_.push_back(line(start, text_.size()));
    return std::move(lines_);
  }

 private:
  double width() const { return room_(lines_.size()).value / em_ + kRounding; }

  bool at_soft_hyphen(qsizetype end) const { return end > 0 && text_[end - 1] == kSoftHyphen && end < text_.size(); }

  // Spaces at a line's end take no room.
  qsizetype without_spaces(qsizetype start, qsizetype end) const {
    while (end > start && (text_[end - 1] == u' ' || is_invisible(text_[end - 1].unicode()))) --end;
    return end;
  }

  double before(qsizetype at) const { return measured_.before_[static_cast<std::size_t>(at)]; }

  double line_width(qsizetype start, qsizetype end) const {
    const double hyphen = at_soft_hyphen(end) ? measured_.hyphens_[static_cast<std::size_t>(end) - 1] : 0;
    return before(without_spaces(start, end)) - before(start) + hyphen;
  }

  // Where a line from `start` may end before `limit`, at the latest; `start` when nowhere.
  qsizetype last_fitting(qsizetype start, qsizetype limit) const {
    qsizetype fits = start;
    for (qsizetype end : measured_.opportunities_)
      if (end > start && end < limit && line_width(start, end) <= width()) fits = end;
    return fits;
  }

  QString shown(qsizetype start, qsizetype end) const {
    QString word = text_.mid(start, without_spaces(start, end) - start);
    word.removeIf([](QChar c) { return is_invisible(c.unicode()); });
    return word;
  }

  Line line(qsizetype start, qsizetype end) const {
    Line line;
    line.width = FineDots{line_width(start, end) * em_};
    for (qsizetype at = start; at < without_spaces(start, end); ++at) {
      if (is_invisible(text_[at].unicode())) continue;
      const FaceId face = measured_.faces_[static_cast<std::size_t>(at)];
      if (line.pieces.empty() || line.pieces.back().face != face)
        line.pieces.push_back({{}, face, FineDots{(before(at) - before(start)) * em_}});
      line.pieces.back().text += text_[at];
    }
    if (at_soft_hyphen(end) && !line.pieces.empty()) line.pieces.back().text += u'-';
    return line;
  }

  const MeasuredText& measured_;
  const QString& text_;
  double em_;  // in dots
  const std::function<FineDots(std::size_t)>& room_;
  std::vector<Line> lines_;
};

tl::expected<std::vector<Line>, TooLong> MeasuredText::lines(TextStyle style,
                                                             const std::function<FineDots(std::size_t)>& room) const {
  return Breaker(*this, fine_dots(style.size, style.resolution).value, room).lines();
}

tl::expected<std::vector<Line>, TooLong> break_lines(const Faces& faces, const Paragraph& paragraph, TextStyle style,
                                                     FineDots width) {
  return MeasuredText(faces, paragraph).lines(style, [&](std::size_t) { return width; });
}

}  // namespace lardiner::paper
