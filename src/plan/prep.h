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

/// REQUIRES: `scaled` of this book.
Prep prep(const book::Book& book, Scaled scaled);

}  // namespace lardiner::plan
