// A text in one weight on one line: how wide and high it is, and the runs that draw it, across families.
#pragma once

#include <algorithm>
#include <vector>

#include "paper/drawing.h"

namespace lardiner::paper {

/// A text to be set on one line, from the page's top left to the start of its baseline.
struct OneLine {
  QString text;
  Weight weight = Weight::Regular;
  Points size;
  FineDots x;
  FineDots baseline;
  Ink ink = Ink::Black;
};

/// How far ink reaches from the baseline, in ems; both positive, 0 where there is none.
struct Reach {
  double above = 0;
  double below = 0;
};

FineDots width(const Faces& faces, QStringView text, Weight weight, Points size, Resolution resolution);

Reach reach(const Face& face, QChar character);
Reach reach(const Faces& faces, QStringView text, Weight weight);
inline Reach farther(Reach one, Reach other) {
  return {std::max(one.above, other.above), std::max(one.below, other.below)};
}

/// Adds what draws the line: a run for each stretch of one face (`spans`), one behind the other.
void add_runs(std::vector<TextRun>& to, const Faces& faces, const OneLine& line, Resolution resolution);

}  // namespace lardiner::paper
