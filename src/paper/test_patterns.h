// Patterns of the test page, dot by dot: rulers, lines and checkerboards.
#pragma once

#include <utility>

#include "paper/drawing.h"
#include "paper/face.h"
#include "paper/sheet.h"

namespace lardiner::paper {

/// A frame just inside `margin`, and rulers from it inwards: millimetres along the top and the left side, inches along
/// the bottom and the right side, each from its top or left end. How far they reach in, in dots.
int draw_rulers(Drawing& page, PageSize size, Insets margin, const Faces& faces);

/// From `sides.first` to `sides.second`: a line one dot thick, a staircase of strokes one dot wide that fires each dot
/// by itself, and pairs of lines one to three dots apart.
void draw_lines(Drawing& page, std::pair<Dots, Dots> sides, Dots top);
/// The height that `draw_lines` takes, in dots.
int lines_height();

/// A side of a checkerboard in dots: whole squares of 1, 2 and 3.
inline constexpr int kBoardDots = 60;

/// A board of so many squares a side, the top left one dark; a square is a module of it.
CodeImage checkerboard(int squares);

}  // namespace lardiner::paper
