// The use-by band: caption, date and year in white on black, on one line or stacked where the label is narrow.
#pragma once

#include <vector>

#include "paper/drawing.h"
#include "paper/label_text.h"

namespace lardiner::paper {

struct BandShape {
  Points size;         ///< of the date
  double growth = 1;   ///< the most by which a date with a line of its own grows to fill it
  Points least_small;  ///< of caption and year
  Resolution resolution;
  Dots left, right;  ///< its edges
  Dots inset;        ///< of its text
  Dots top;
};

struct Band {
  Box box;
  std::vector<TextRun> texts;
  Points date;           ///< its size: larger than asked for where it has a line of its own to fill
  FineDots lacks_width;  ///< above 0: the date does not fit at this size
};

/// `facts`: caption, date, year and perhaps a time, each with a paragraph for each language.
Band lay_band(const Faces& faces, const std::vector<FactText>& facts, const BandShape& shape);

}  // namespace lardiner::paper
