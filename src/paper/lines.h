// Breaks a paragraph of strong and regular runs into lines of at most a width.
#pragma once

#include <QString>
#include <tl/expected.hpp>
#include <vector>

#include "paper/face.h"
#include "paper/units.h"

namespace lardiner::paper {

/// A stretch of a paragraph in one weight. Spaces between words belong to the text of either side.
struct StyledText {
  QString text;
  Weight weight = Weight::Regular;
};
using Paragraph = std::vector<StyledText>;

/// What stands in one line in one weight.
struct LinePiece {
  QString text;
  Weight weight = Weight::Regular;
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

/// As few lines as reading on allows, each filled as far as it goes. Breaks only where Unicode's line breaking permits
/// one (UAX #14; U+00A0 between a number and its unit holds them together; at a soft hyphen a hyphen is added), also
/// where a word changes weight inside. A word that is wider than the line refuses the whole: nothing is clipped or cut.
/// An empty paragraph has no lines.
tl::expected<std::vector<Line>, TooLong> break_lines(const Faces& faces, const Paragraph& paragraph, TextStyle style,
                                                     FineDots width);

}  // namespace lardiner::paper
