// Breaks a paragraph of strong and regular runs into lines of at most a width.
#include "paper/lines.h"

#include <QTextBoundaryFinder>
#include <algorithm>

namespace lardiner::paper {

namespace {

constexpr char16_t kSoftHyphen = 0x00AD;
// Widths are sums of doubles: a line that fits exactly must not be refused for the last bit.
constexpr double kRounding = 1e-6;

class Breaker {
 public:
  Breaker(const Faces& faces, const Paragraph& paragraph, TextStyle style, FineDots width)
      : faces_(faces), style_(style), width_(width.value + kRounding) {
    before_.push_back(0);
    for (const StyledText& run : paragraph) add(run);
  }

  tl::expected<std::vector<Line>, TooLong> lines() {
    qsizetype start = 0;
    qsizetype fits = 0;  // the last place where the line may end; `start` when there is none yet
    for (qsizetype end : opportunities()) {
      if (line_width(start, end) > width_ && fits > start && !at_soft_hyphen(end)) {
        lines_.push_back(line(start, fits));
        start = fits;
        fits = last_fitting(start, end);
      }
      if (line_width(start, end) <= width_)
        fits = end;
      else if (!at_soft_hyphen(end) && fits == start)
        return tl::unexpected(TooLong{shown(start, end), FineDots{line_width(start, end)}});
    }
    if (start < text_.size()) lines_.push_back(line(start, text_.size()));
    return std::move(lines_);
  }

 private:
  void add(const StyledText& run) {
    for (QChar c : run.text) {
      before_.push_back(before_.back() +
                        faces_.width(QStringView(&c, 1), run.weight, style_.size, style_.resolution).value);
      weights_.push_back(run.weight);
    }
    text_ += run.text;
  }

  std::vector<qsizetype> opportunities() {
    QTextBoundaryFinder finder(QTextBoundaryFinder::Line, text_);
    for (qsizetype at = finder.toNextBoundary(); at > 0; at = finder.toNextBoundary()) opportunities_.push_back(at);
    return opportunities_;
  }

  bool at_soft_hyphen(qsizetype end) const { return end > 0 && text_[end - 1] == kSoftHyphen && end < text_.size(); }

  // Spaces at a line's end take no room.
  qsizetype without_spaces(qsizetype start, qsizetype end) const {
    while (end > start && (text_[end - 1] == u' ' || is_invisible(text_[end - 1].unicode()))) --end;
    return end;
  }

  double hyphen_width(qsizetype end) const {
    return faces_.width(u"-", weights_[static_cast<std::size_t>(end) - 1], style_.size, style_.resolution).value;
  }

  double line_width(qsizetype start, qsizetype end) const {
    const double hyphen = at_soft_hyphen(end) ? hyphen_width(end) : 0;
    return before_[static_cast<std::size_t>(without_spaces(start, end))] - before_[static_cast<std::size_t>(start)] +
           hyphen;
  }

  // Where a line from `start` may end before `limit`, at the latest; `start` when nowhere.
  qsizetype last_fitting(qsizetype start, qsizetype limit) const {
    qsizetype fits = start;
    for (qsizetype end : opportunities_)
      if (end > start && end < limit && line_width(start, end) <= width_) fits = end;
    return fits;
  }

  QString shown(qsizetype start, qsizetype end) const {
    QString word = text_.mid(start, without_spaces(start, end) - start);
    word.removeIf([](QChar c) { return is_invisible(c.unicode()); });
    return word;
  }

  Line line(qsizetype start, qsizetype end) const {
    Line line;
    line.width = FineDots{line_width(start, end)};
    for (qsizetype at = start; at < without_spaces(start, end); ++at) {
      if (is_invisible(text_[at].unicode())) continue;
      const Weight weight = weights_[static_cast<std::size_t>(at)];
      if (line.pieces.empty() || line.pieces.back().weight != weight)
        line.pieces.push_back(
            {{}, weight, FineDots{before_[static_cast<std::size_t>(at)] - before_[static_cast<std::size_t>(start)]}});
      line.pieces.back().text += text_[at];
    }
    if (at_soft_hyphen(end) && !line.pieces.empty()) line.pieces.back().text += u'-';
    return line;
  }

  const Faces& faces_;
  TextStyle style_;
  double width_;
  QString text_;
  std::vector<Weight> weights_;  // of each UTF-16 unit of the text
  std::vector<double> before_;   // width of all before each of them, and of the whole
  std::vector<qsizetype> opportunities_;
  std::vector<Line> lines_;
};

}  // namespace

tl::expected<std::vector<Line>, TooLong> break_lines(const Faces& faces, const Paragraph& paragraph, TextStyle style,
                                                     FineDots width) {
  return Breaker(faces, paragraph, style, width).lines();
}

}  // namespace lardiner::paper
