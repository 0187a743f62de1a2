// Texts set one under the other in a column, measured from their first baseline.
#pragma once

#include <optional>
#include <vector>

#include "paper/drawing.h"
#include "paper/lines.h"
#include "paper/work_type.h"
#include "problem/error.h"

namespace lardiner::paper {

/// What stands from left to right on a page, in dots, and the faces that measure it.
struct Frame {
  const Faces& faces;
  int left = 0;
  int width = 0;
  int right() const { return left + width; }
};

struct Type {
  Points size;
  Weight weight = Weight::Regular;
};

enum class Side { Left, Right };

/// Lines of one or several texts, each in its own type. All lengths in dots.
struct TextStack {
  struct SetLine {
    Line line;
    Points size;
    double baseline = 0;  ///< below the first one
  };
  std::vector<SetLine> lines;
  double above = 0;  ///< what the first line needs over its baseline
  double below = 0;  ///< what all lines need under the first baseline
  double width = 0;  ///< of the widest line

  bool empty() const { return lines.empty(); }
  double height() const { return above + below; }
};

/// Adds a text beneath what is there, broken into lines of this width. No ink of a line touches the next. Refused: a
/// word that is wider.
[[nodiscard]] std::optional<TooLong> append(TextStack& to, const Faces& faces, const QString& text, Type type,
                                            double width);

/// In a column from x, of this width.
struct ColumnOf {
  double x = 0;
  double width = 0;
  Side side = Side::Left;
};
void draw(Drawing& to, const TextStack& stack, const ColumnOf& column, double baseline);

/// The width of the text in one line.
double whole_width(const Faces& faces, const QString& text, Type type);

/// The widest word of a text: it can be set in no narrower column.
TooLong widest_word(const Faces& faces, const QString& text, Type type);

/// The height of capitals and figures.
double cap_height(const Faces& faces, Points size);

/// NoRoom, naming the word.
problem::Error too_wide(const TooLong& word, double width);

/// "12.3 mm"
QString in_millimetres(double dots);

/// The fewest whole steps, in dots.
int steps_covering(double dots);

/// A rule from x, with its top at y.
inline Box rule(int x, int y, int width, int thickness) { return {{x}, {y}, {width}, {thickness}, Ink::Black}; }

}  // namespace lardiner::paper
