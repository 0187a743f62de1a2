// Where the labels of a medium stand on its pages, in whole dots: one on each page of a roll, by rows on a sheet.
#include "paper/sheet.h"

#include <algorithm>

namespace lardiner::paper {

namespace {

FineDots fine(int hundredths, Resolution resolution) { return fine_dots(Millimetres{hundredths / 100.0}, resolution); }

PageSize size_of(int width, int height, Resolution resolution) {
  return {whole_dots_within(fine(width, resolution)), whole_dots_within(fine(height, resolution)), resolution};
}

// Anti-clockwise: the label's top lies at the left, its left at the bottom.
Insets margin_as_read(const book::Media& medium) {
  const Resolution resolution{medium.dots_per_inch};
  const auto dots = [&](int hundredths) { return whole_dots_covering(fine(hundredths, resolution)); };
  const Dots top = dots(medium.margin.top), right = dots(medium.margin.right);
  const Dots bottom = dots(medium.margin.bottom), left = dots(medium.margin.left);
  return medium.turned ? Insets{left, top, right, bottom} : Insets{top, right, bottom, left};
}

// The page's dots are whole, and may be less than the paper: the last label of a row must not stand beyond them.
Dots nearest_within(int hundredths, Dots length, Dots page, Resolution resolution) {
  return std::min(nearest_dots(fine(hundredths, resolution)), page - length);
}

}  // namespace

Sheet sheet_of(const book::Media& medium) {
  const Resolution resolution{medium.dots_per_inch};
  const PageSize lying = size_of(medium.width, medium.height, resolution);
  Sheet out{lying, lying, margin_as_read(medium), {}};
  if (medium.turned) std::swap(out.label.width, out.label.height);
  if (!medium.sheet) {
    out.places = {{Dots{0}, Dots{0}, medium.turned}};
    return out;
  }
  const book::Sheet& sheet = *medium.sheet;
  out.page = size_of(sheet.paper_width, sheet.paper_height, resolution);
  for (int row = 0; row < sheet.rows; ++row)
    for (int column = 0; column < sheet.columns; ++column) {
      const int x = sheet.left + column * (medium.width + sheet.gap_across);
      const int y = sheet.top + row * (medium.height + sheet.gap_down);
      out.places.push_back({nearest_within(x, lying.width, out.page.width, resolution),
                            nearest_within(y, lying.height, out.page.height, resolution), medium.turned});
    }
  return out;
}

}  // namespace lardiner::paper
