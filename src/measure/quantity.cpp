// Amounts of food: mass, volume and pieces as integers, exact in every unit that a kitchen writes.
#include "measure/quantity.h"

#include <QtGlobal>

#include "measure/wide.h"

namespace lardiner::measure {

namespace {

Wide magnitude(Wide value) { return value < 0 ? -value : value; }

Wide common_divisor(Wide a, Wide b) {
  while (b != 0) {
    const Wide rest = a % b;
    a = b;
    b = rest;
  }
  return a;
}

bool fits(Wide value) { return magnitude(value) <= kMost64; }

// The next decimal digit of rest / den; `rest` becomes what is left. Ten additions, since ten times `rest` may not fit.
int next_digit(Wide& rest, Wide den) {
  int digit = 0;
  Wide sum = 0;
  for (int i = 0; i < 10; ++i) {
    sum -= den - rest;  // sum + rest - den, in an order that cannot overflow
    if (sum < 0) {
      sum += den;
    } else {
      ++digit;
    }
  }
  rest = sum;
  return digit;
}

constexpr std::int64_t kRoundedDenominator = 1'000'000'000;

// The nearest fraction with the denominator 10^9. REQUIRES: num not negative.
Ratio rounded(Wide num, Wide den, bool negative) {
  const Wide whole = num / den;
  const Wide sign = negative ? -1 : 1;
  if (whole > kMost64 / kRoundedDenominator - 1) return Ratio(saturated(sign * divided(num, den)), 1);
  Wide rest = num % den;
  Wide billionths = whole;
  for (int i = 0; i < 9; ++i) billionths = billionths * 10 + next_digit(rest, den);
  if (rest >= den - rest) ++billionths;
  return Ratio(saturated(sign * billionths), kRoundedDenominator);
}

Ratio lowest_terms(Wide num, Wide den) {
  const bool negative = (num < 0) != (den < 0);
  num = magnitude(num);
  den = magnitude(den);
  const Wide divisor = common_divisor(num, den);
  num /= divisor;
  den /= divisor;
  if (!fits(num) || !fits(den)) return rounded(num, den, negative);
  return Ratio(saturated(negative ? -num : num), saturated(den));
}

}  // namespace

Ratio::Ratio(std::int64_t num, std::int64_t den) {
  Q_ASSERT(den != 0);
  const Wide sign = den < 0 ? -1 : 1;
  const Wide divisor = common_divisor(magnitude(num), magnitude(den));
  num_ = saturated(sign * num / divisor);
  den_ = saturated(sign * den / divisor);
}

std::strong_ordering operator<=>(Ratio a, Ratio b) { return Wide{a.num_} * b.den_ <=> Wide{b.num_} * a.den_; }

Ratio operator*(Ratio a, Ratio b) { return lowest_terms(Wide{a.num()} * b.num(), Wide{a.den()} * b.den()); }

Ratio operator/(Ratio a, Ratio b) {
  Q_ASSERT(b.num() != 0);
  return lowest_terms(Wide{a.num()} * b.den(), Wide{a.den()} * b.num());
}

Ratio operator+(Ratio a, Ratio b) {
  return lowest_terms(Wide{a.num()} * b.den() + Wide{b.num()} * a.den(), Wide{a.den()} * b.den());
}

Ratio operator-(Ratio a, Ratio b) { return a + Ratio(-b.num(), b.den()); }

std::int64_t most(Dimension dimension) {
  switch (dimension) {
    case Dimension::Mass:
      return kMostNanograms;
    case Dimension::Volume:
      return kMostVolume;
    case Dimension::Count:
      return kMostMillionths;
  }
  return 0;
}

Quantity operator+(Quantity a, Quantity b) {
  Q_ASSERT(a.dimension == b.dimension);
  return {a.dimension, saturated(Wide{a.amount} + b.amount)};
}

Quantity operator-(Quantity a, Quantity b) {
  Q_ASSERT(a.dimension == b.dimension);
  return {a.dimension, saturated(Wide{a.amount} - b.amount)};
}

bool less(Quantity a, Quantity b) {
  Q_ASSERT(a.dimension == b.dimension);
  return a.amount < b.amount;
}

Quantity scaled(Quantity q, Ratio by) { return {q.dimension, saturated(divided(Wide{q.amount} * by.num(), by.den()))}; }

Ratio ratio(Quantity a, Quantity b) {
  Q_ASSERT(a.dimension == b.dimension);
  return Ratio(a.amount, b.amount);
}

// NIST Handbook 44, Appendix C: 1 lb is 453.59237 g, 1 oz a sixteenth of it; 1 US gallon is 3785.411784 mL, and the
// quart, pint, cup, fluid ounce, tablespoon and teaspoon are its 4th, 8th, 16th, 128th, 256th and 768th parts.
Quantity one(Unit unit) {
  switch (unit) {
    case Unit::Milligram:
      return {Dimension::Mass, 1'000'000};
    case Unit::Gram:
      return {Dimension::Mass, 1'000'000'000};
    case Unit::Kilogram:
      return {Dimension::Mass, 1'000'000'000'000};
    case Unit::Ounce:
      return {Dimension::Mass, 28'349'523'125};
    case Unit::Pound:
      return {Dimension::Mass, 453'592'370'000};
    case Unit::Millilitre:
      return {Dimension::Volume, 100'000'000'000};
    case Unit::Litre:
      return {Dimension::Volume, 100'000'000'000'000};
    case Unit::Teaspoon:
      return {Dimension::Volume, 492'892'159'375};
    case Unit::Tablespoon:
      return {Dimension::Volume, 1'478'676'478'125};
    case Unit::FluidOunce:
      return {Dimension::Volume, 2'957'352'956'250};
    case Unit::Cup:
      return {Dimension::Volume, 23'658'823'650'000};
    case Unit::Pint:
      return {Dimension::Volume, 47'317'647'300'000};
    case Unit::Quart:
      return {Dimension::Volume, 94'635'294'600'000};
    case Unit::Gallon:
      return {Dimension::Volume, 378'541'178'400'000};
    case Unit::Piece:
      return {Dimension::Count, 1'000'000};
  }
  return {};
}

Quantity quantity(Ratio count, Unit unit) { return scaled(one(unit), count); }

Ratio in_unit(Quantity q, Unit unit) { return ratio(q, one(unit)); }

}  // namespace lardiner::measure
