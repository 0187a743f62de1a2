// Lengths on paper: each pair of units converts in one way, and whole dots never promise more than there is.
#include "paper/units.h"

#include <random>

#include "show.h"

namespace lardiner::paper {

TEST_CASE("an inch is 25.4 mm, 72 points, and the printer's number of dots", "[paper][units]") {
  const Resolution r{203};
  CHECK(fine_dots(Millimetres{25.4}, r).value == Approx(203));
  CHECK(fine_dots(Points{72}, r).value == Approx(203));
  CHECK(points(Millimetres{25.4}).value == Approx(72));
  CHECK(points(FineDots{203}, r).value == Approx(72));
  CHECK(millimetres(FineDots{203}, r).value == Approx(25.4));
  CHECK(millimetres(Points{72}).value == Approx(25.4));
}

TEST_CASE("203 dots an inch are 203, not 8 a millimetre", "[paper][units]") {
  CHECK(fine_dots(Millimetres{100}, Resolution{203}).value == Approx(799.2126));
}

TEST_CASE("a medium offers only the dots that lie wholly on it, a minimum takes those that cover it",
          "[paper][units]") {
  const Resolution r{203};
  CHECK(whole_dots_within(fine_dots(Millimetres{50}, r)) == Dots{399});
  CHECK(whole_dots_covering(fine_dots(Millimetres{50}, r)) == Dots{400});
  CHECK(nearest_dots(fine_dots(Millimetres{50}, r)) == Dots{400});
  CHECK(whole_dots_within(fine_dots(Millimetres{101.6}, r)) == Dots{812});
  CHECK(whole_dots_covering(fine_dots(Millimetres{101.6}, r)) == Dots{812});
}

TEST_CASE("converting there and back changes no length", "[paper][units]") {
  std::mt19937 random(1);
  std::uniform_real_distribution<double> length(0, 400);
  for (int dpi : {152, 203, 300, 600})
    for (int n = 0; n < 200; ++n) {
      const Resolution r{dpi};
      const Millimetres mm{length(random)};
      CHECK(millimetres(fine_dots(mm, r), r).value == Approx(mm.value));
      CHECK(millimetres(points(mm)).value == Approx(mm.value));
      CHECK(points(fine_dots(points(mm), r), r).value == Approx(points(mm).value));
    }
}

}  // namespace lardiner::paper
