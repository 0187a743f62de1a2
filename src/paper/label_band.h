// The use-by band: caption, date and year in white on black, on one line or stacked where the label is narrow.
#pragma once

#include <vector>

#include "paper/drawing.h"
#include "paper/label_text.h"

namespace lardiner::paper {

struct BandShape {
  Points size;   ///< of the date
  Points least;  ///< of its block: a date this small does not grow to fill its line
  Resolution resolution;
  Dots page_width;
  Dots margin;
  Dots top;
};

struct Band {
  Box box;  ///< from edge to edge of the label
  std::vector<TextRun> texts;
  FineDots lacks_width;  ///< above 0: the date does not fit at this size
};

/// `facts`: caption, date, year and perhaps a time, each with a paragraph for each language.
Band lay_band(const Faces& faces, const std::vector<FactText>& facts, const BandShape& shape);

}  // namespace lardiner::paper
