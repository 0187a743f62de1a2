// Breaks a paragraph of strong and regular runs into lines of at most a width.
#pragma once

#include <QString>
#include <cstddef>
#include <functional>
#include <tl/expected.hpp>
#include <vector>

#include "paper/face.h"
#include "paper/one_line.h"
#include "paper/units.h"

namespace lardiner::paper {

/// A stretch of a paragraph in one weight. Spaces between words belong to the text of either side.
struct StyledText {
  QString text;
  Weight weight = Weight::Regular;
};
using Paragraph = std::vector<StyledText>;

/// What stands in one line in one face.
struct LinePiece {
  QString text;
  FaceId face = FaceId::AtkinsonRegular;
  FineDots x;  ///< from the start of the line
};
struct Line {
  std::vector<LinePiece> pieces;
  FineDots width;  ///< without the space at its end
};

/// The first word that is wider than a whole line.
struct TooLong {
  QString word;
  FineDots width;
};

struct TextStyle {
  Points size;
  Resolution resolution;
};

/// A paragraph measured once, to be broken at any size and width.
class MeasuredText {
 public:
  MeasuredText(const Faces& faces, const Paragraph& paragraph);

  /// As few lines as reading on allows, each filled as far as it goes; `room(n)` is the width of line n, from 0. Breaks
  /// only where Unicode's line breaking permits one (UAX #14; U+00A0 between a number and its unit holds them together;
  /// at a soft hyphen a hyphen is added), also where a word changes weight inside. A word that is wider than its line
  /// refuses the whole: nothing is clipped or cut. An empty paragraph has no lines.
  tl::expected<std::vector<Line>, TooLong> lines(TextStyle style,
                                                 const std::function<FineDots(std::size_t)>& room) const;

  /// The width of the whole in one line.
  FineDots width(TextStyle style) const;

  /// How far its highest and lowest characters reach.
  const Reach& reach() const { return reach_; }

 private:
  friend class Breaker;
  QString text_;
  Reach reach_;
  std::vector<FaceId> faces_;             // of each UTF-16 unit of the text
  std::vector<double> before_;            // width of all before each of them, and of the whole, in ems
  std::vector<double> hyphens_;           // width of a hyphen in the face of each of them, in ems
  std::vector<qsizetype> opportunities_;  // where a line may end
};

/// `MeasuredText::lines` where all lines have the same room.
tl::expected<std::vector<Line>, TooLong> break_lines(const Faces& faces, const Paragraph& paragraph, TextStyle style,
                                                     FineDots width);

}  // namespace lardiner::paper
