// Where the labels of a medium stand on its pages, in whole dots: one on each page of a roll, by rows on a sheet.
#pragma once

#include <vector>

#include "book/kitchen.h"
#include "paper/drawing.h"

namespace lardiner::paper {

/// A label's place on its page: the top left corner of the area that it covers there.
struct Placement {
  Dots x, y;
  bool turned = false;  ///< a quarter turn anti-clockwise: the label's top is at the left of that area
  friend constexpr bool operator==(Placement, Placement) = default;
};

/// The dots at a label's edges that stay free, as it is read.
struct Insets {
  Dots top, right, bottom, left;
  friend constexpr bool operator==(Insets, Insets) = default;
};

/// The page of a medium, and what is laid out for it.
struct Sheet {
  PageSize page;                  ///< as it is fed
  PageSize label;                 ///< as it is read: before it is turned
  Insets margin;                  ///< of the label as it is read; whole dots that cover the medium's margin
  std::vector<Placement> places;  ///< by rows from the top left; one on a roll
};

/// Lengths are the most whole dots that the medium offers. Each place is the exact length from the paper's edge,
/// rounded once to the nearest dot that keeps the label on the page: no rounding adds up from row to row.
Sheet sheet_of(const book::Media& medium);

}  // namespace lardiner::paper
