// Amounts are exact in every unit, and multiplied in 128 bits.
#include "measure/quantity.h"

#include <random>

#include "make.h"

using namespace lardiner::measure;

TEST_CASE("every unit is a whole number of the smallest unit, as Handbook 44 defines it",
          "[measure][unit][src:nist-hb44/appendix-c]") {
  CHECK(one(Unit::Pound).amount == 453'592'370'000);         // 453.59237 g
  CHECK(one(Unit::Ounce).amount == 28'349'523'125);          // 28.349523125 g
  CHECK(one(Unit::Gallon).amount == 378'541'178'400'000);    // 3785.411784 mL
  CHECK(one(Unit::Cup).amount == 23'658'823'650'000);        // 236.5882365 mL
  CHECK(one(Unit::FluidOunce).amount == 2'957'352'956'250);  // 29.5735295625 mL
  CHECK(one(Unit::Tablespoon).amount == 1'478'676'478'125);  // 14.78676478125 mL
  CHECK(one(Unit::Teaspoon).amount == 492'892'159'375);      // 4.92892159375 mL
}

TEST_CASE("each unit is so many of the next smaller", "[measure][unit][src:nist-hb44/appendix-c]") {
  CHECK(in_unit(one(Unit::Pound), Unit::Ounce) == Ratio(16, 1));
  CHECK(in_unit(one(Unit::Gallon), Unit::Quart) == Ratio(4, 1));
  CHECK(in_unit(one(Unit::Quart), Unit::Pint) == Ratio(2, 1));
  CHECK(in_unit(one(Unit::Pint), Unit::Cup) == Ratio(2, 1));
  CHECK(in_unit(one(Unit::Cup), Unit::FluidOunce) == Ratio(8, 1));
  CHECK(in_unit(one(Unit::FluidOunce), Unit::Tablespoon) == Ratio(2, 1));
  CHECK(in_unit(one(Unit::Tablespoon), Unit::Teaspoon) == Ratio(3, 1));
  CHECK(in_unit(one(Unit::Kilogram), Unit::Milligram) == Ratio(1'000'000, 1));
  CHECK(in_unit(one(Unit::Litre), Unit::Millilitre) == Ratio(1000, 1));
}

TEST_CASE("label measures are for nutrition labelling only and are not the units of a recipe",
          "[measure][unit][src:21-cfr-101/101.9(b)(5)(viii)]") {
  CHECK_FALSE(one(Unit::Cup) == millilitres(240));
  CHECK_FALSE(one(Unit::Tablespoon) == millilitres(15));
  CHECK_FALSE(one(Unit::Teaspoon) == millilitres(5));
  CHECK_FALSE(one(Unit::FluidOunce) == millilitres(30));
  CHECK_FALSE(one(Unit::Ounce) == grams(28));
}

TEST_CASE("amounts of different kinds are never equal", "[measure][quantity]") {
  CHECK_FALSE(Quantity{Dimension::Mass, 5} == Quantity{Dimension::Volume, 5});
  CHECK(Quantity{Dimension::Mass, 5} == Quantity{Dimension::Mass, 5});
}

TEST_CASE("four sticks of butter, a quarter pound each, are a pound", "[measure][quantity][src:practice]") {
  CHECK(scaled(quantity(Ratio(1, 4), Unit::Pound), Ratio(4, 1)) == pounds(1));
  CHECK(less(scaled(grams(113), Ratio(4, 1)), pounds(1)));  // the rounded 113 g of a table is a little less
}

TEST_CASE("scaling up and back is exact", "[measure][scaling]") {
  std::mt19937_64 random(20261201);
  std::uniform_int_distribution<std::int64_t> amount(1, 4'000'000'000'000'000);
  std::uniform_int_distribution<std::int64_t> term(1, 1000);
  for (int i = 0; i < 20'000; ++i) {
    const std::int64_t a = term(random);
    const std::int64_t b = term(random);
    const Ratio up(std::max(a, b), std::min(a, b));
    const Quantity q{Dimension::Mass, amount(random)};
    REQUIRE(scaled(scaled(q, up), Ratio(1, 1) / up) == q);
  }
}

TEST_CASE("scaling down and back is exact when the parts are whole, and else within the rounding of one part",
          "[measure][scaling]") {
  CHECK(scaled(scaled(pounds(9), Ratio(1, 9)), Ratio(9, 1)) == pounds(9));
  CHECK(scaled(grams(1), Ratio(1, 3)).amount == 333'333'333);
  CHECK(scaled(scaled(grams(1), Ratio(1, 3)), Ratio(3, 1)).amount == 999'999'999);
  std::mt19937_64 random(7);
  std::uniform_int_distribution<std::int64_t> amount(1, 4'000'000'000'000'000);
  std::uniform_int_distribution<std::int64_t> parts(1, 1000);
  for (int i = 0; i < 20'000; ++i) {
    const std::int64_t n = parts(random);
    const Quantity q{Dimension::Mass, amount(random)};
    REQUIRE(std::abs(scaled(scaled(q, Ratio(1, n)), Ratio(n, 1)).amount - q.amount) <= n / 2);
  }
}

TEST_CASE("counting in a unit and back is exact for every unit and quarter", "[measure][scaling]") {
  for (int unit = 0; unit <= static_cast<int>(Unit::Piece); ++unit) {
    for (int quarters = 1; quarters <= 400; ++quarters) {
      const auto u = static_cast<Unit>(unit);
      const Ratio count(quarters * 4, 1);
      REQUIRE(in_unit(quantity(count, u), u) == count);
    }
  }
}

TEST_CASE("an amount is rounded once, half away from zero", "[measure][scaling]") {
  CHECK(scaled({Dimension::Mass, 5}, Ratio(1, 2)).amount == 3);
  CHECK(scaled({Dimension::Mass, -5}, Ratio(1, 2)).amount == -3);
  CHECK(scaled({Dimension::Mass, 4}, Ratio(1, 3)).amount == 1);
  CHECK(scaled({Dimension::Mass, 5}, Ratio(1, 3)).amount == 2);
}

TEST_CASE("an amount too great for 64 bits stops at the greatest, it never turns over", "[measure][scaling]") {
  const Quantity greatest{Dimension::Mass, 9'223'372'036'854'775'807};
  CHECK(scaled({Dimension::Mass, kMostNanograms}, Ratio(1'000'000, 1)) == greatest);
  CHECK(greatest + grams(1) == greatest);
  CHECK((Quantity{Dimension::Mass, 0} - greatest - greatest).amount == -greatest.amount);
}

TEST_CASE("a fraction is in lowest terms with a positive denominator", "[measure][ratio]") {
  CHECK(Ratio(6, -4).num() == -3);
  CHECK(Ratio(6, -4).den() == 2);
  CHECK(Ratio(0, -7) == Ratio());
  CHECK(Ratio(54, 54) == Ratio(1, 1));
}

TEST_CASE("fractions add, subtract, multiply, divide and compare exactly", "[measure][ratio]") {
  CHECK(Ratio(1, 3) + Ratio(1, 6) == Ratio(1, 2));
  CHECK(Ratio(1, 3) - Ratio(1, 2) == Ratio(-1, 6));
  CHECK(Ratio(2, 3) * Ratio(3, 4) == Ratio(1, 2));
  CHECK(Ratio(2, 3) / Ratio(-4, 3) == Ratio(-1, 2));
  CHECK(Ratio(1, 3) < Ratio(333'333'334, 1'000'000'000));
  CHECK(Ratio(1, 3) > Ratio(333'333'333, 1'000'000'000));
  constexpr std::int64_t kGreat = 9'223'372'036'854'775'807;
  CHECK(Ratio(kGreat, kGreat - 1) < Ratio(kGreat - 1, kGreat - 2));  // needs 128 bits
}

TEST_CASE("a fraction whose terms do not fit is rounded to billionths, and a great one to wholes", "[measure][ratio]") {
  const Ratio third(1'000'000'000'000'000'000, 2'999'999'999'999'999'999);
  CHECK(third * third == Ratio(111'111'111, 1'000'000'000));
  CHECK(Ratio(0, 1) - third * third == Ratio(-111'111'111, 1'000'000'000));
  const Ratio two_thirds = third + third;
  CHECK(two_thirds * third == Ratio(222'222'222, 1'000'000'000));
  CHECK(two_thirds * two_thirds == Ratio(444'444'444, 1'000'000'000));
  const Ratio great(9'000'000'000'000'000'000, 7);
  CHECK(great * Ratio(1, 1'000'003) == Ratio(9'000'000'000'000'000'000, 7'000'021));
  CHECK(great * great == Ratio(9'223'372'036'854'775'807, 1));
  CHECK(great * Ratio(-9, 1) == Ratio(-9'223'372'036'854'775'807, 1));
  CHECK(Ratio(4'000'000'000'000'000'001, 3) * Ratio(5, 7'000'000'001) == Ratio(952'380'952'244'897'959, 1'000'000'000));
}

TEST_CASE("rounding of fractions agrees with wide arithmetic to a billionth", "[measure][ratio]") {
  std::mt19937_64 random(11);
  std::uniform_int_distribution<std::int64_t> term(4'000'000'000'000'000'000, 9'000'000'000'000'000'000);
  for (int i = 0; i < 2'000; ++i) {
    const Ratio a(term(random), term(random));
    const Ratio b(term(random), term(random));
    const auto as_real = [](Ratio r) { return static_cast<long double>(r.num()) / static_cast<long double>(r.den()); };
    REQUIRE(std::abs(static_cast<double>(as_real(a * b) - as_real(a) * as_real(b))) < 0.6e-9);
    REQUIRE(std::abs(static_cast<double>(as_real(a / b) - as_real(a) / as_real(b))) < 0.6e-9);
    REQUIRE(std::abs(static_cast<double>(as_real(a + b) - as_real(a) - as_real(b))) < 0.6e-9);
  }
}

TEST_CASE("three pounds of cherries at the factor 1.19 are bought as 3 lb 9 oz",
          "[measure][scaling][src:afrs/A-00700]") {
  CHECK(in_unit(scaled(pounds(3), Ratio(119, 100)), Unit::Ounce) == Ratio(5712, 100));  // 57.12 oz
}

TEST_CASE("the most accepted from a person is 4,000 tonnes, 40,000 litres or a million pieces", "[measure][quantity]") {
  CHECK(most(Dimension::Mass) == quantity(Ratio(4'000'000, 1), Unit::Kilogram).amount);
  CHECK(most(Dimension::Volume) == quantity(Ratio(40'000, 1), Unit::Litre).amount);
  CHECK(most(Dimension::Count) == quantity(Ratio(1'000'000, 1), Unit::Piece).amount);
}
