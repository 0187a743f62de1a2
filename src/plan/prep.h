// A prep sheet's lines: a pull of a formula with what the scale reads as each line goes in.
#pragma once

#include <vector>

#include "plan/scaling.h"

namespace lardiner::plan {

/// One weighing on a prep sheet.
struct PrepLine {
  ScaledLine amount;
  std::optional<measure::Quantity> reading;  ///< what the scale shows after it, its bowl tared; not of a fine weighing
  std::vector<QString> allergens;  ///< ids of the destination's entries that this line brings, in the list's order
  bool allergens_known = false;    ///< false: a declaration lacks, and what `allergens` does not name is not absent
};

/// Lines that go into the same bowl one after the other.
struct Bowl {
  book::LocalText name;  ///< empty: the vessel, or the only bowl
  std::vector<PrepLine> lines;
};

struct Prep {
  Scaled scaled;
  std::vector<Bowl> bowls;
};

/// The reading is the sum of what has gone into the bowl, to the step of the kitchen's scale. What was weighed on the
/// fine scale counts as well once it is in: 500 g, 3.6 g from the fine scale, then 200 g reads 704 g.
/// REQUIRES: `scaled` of this book.
Prep prep(const book::Book& book, Scaled scaled);

}  // namespace lardiner::plan
