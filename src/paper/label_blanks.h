// Lines to write on by hand: a caption and a rule behind it, as many in a row as there is room for.
#pragma once

#include <functional>
#include <vector>

#include "paper/drawing.h"
#include "paper/label_text.h"

namespace lardiner::paper {

struct BlanksShape {
  Points size;      ///< of the captions
  FineDots height;  ///< of a row: the room of the hand
  Resolution resolution;
  FineDots left;
  FineDots top;
  std::function<FineDots(FineDots bottom)> right;  ///< where a row that ends at `bottom` must end
  bool dark = false;                               ///< captions white on black, as a date's band
};

struct Blanks {
  std::vector<Box> boxes;
  std::vector<TextRun> texts;
  FineDots bottom;
  FineDots lacks_width;  ///< above 0: a caption with the least room behind it is wider than its row
  facts::FactId lacking = facts::FactId::BlankMade;
};

/// A run of underscores in a fact's text is a blank; the longer the run, the wider. A fact's paragraphs stand one under
/// the other (readings), or are one row's caption in each language.
Blanks lay_blanks(const Faces& faces, const std::vector<FactText>& facts, const BlanksShape& shape);

}  // namespace lardiner::paper
