// Amounts of food: mass, volume and pieces as integers, exact in every unit that a kitchen writes.
#pragma once

#include <compare>
#include <cstdint>

namespace lardiner::measure {

/// A fraction in lowest terms with a positive denominator; what multiplies an amount. Exact: never a float.
class Ratio {
 public:
  constexpr Ratio() = default;
  /// REQUIRES: den != 0.
  Ratio(std::int64_t num, std::int64_t den);

  std::int64_t num() const { return num_; }
  std::int64_t den() const { return den_; }

  friend bool operator==(Ratio, Ratio) = default;
  friend std::strong_ordering operator<=>(Ratio a, Ratio b);  // compared in 128 bits

 private:
  std::int64_t num_ = 0;
  std::int64_t den_ = 1;
};

/// Products, quotients and sums in 128 bits, brought to lowest terms; when the result does not fit 64-bit terms it is
/// rounded to the nearest fraction with a denominator of 10^9, and beyond 9 x 10^9 to the nearest whole number; what 64
/// bits cannot hold at all stops at the greatest number they can. REQUIRES for `/`: b is not 0.
Ratio operator*(Ratio a, Ratio b);
Ratio operator/(Ratio a, Ratio b);
Ratio operator+(Ratio a, Ratio b);
Ratio operator-(Ratio a, Ratio b);

/// What an amount measures.
enum class Dimension { Mass, Volume, Count };

/// An amount in its dimension's smallest unit: nanograms; units of 10^-11 mL (an ounce and a teaspoon are whole numbers
/// of these); millionths of a piece. Amounts of different dimensions are never equal and never compare.
struct Quantity {
  Dimension dimension = Dimension::Mass;
  std::int64_t amount = 0;

  friend bool operator==(Quantity, Quantity) = default;
};

/// Largest amounts accepted from a person: 4,000 tonnes, 40,000 litres, a million pieces.
inline constexpr std::int64_t kMostNanograms = 4'000'000'000'000'000'000;
inline constexpr std::int64_t kMostVolume = 4'000'000'000'000'000'000;
inline constexpr std::int64_t kMostMillionths = 1'000'000'000'000;

/// The largest amount of `dimension` accepted from a person.
std::int64_t most(Dimension dimension);

/// Sums stop at the greatest amount that 64 bits hold, far beyond `most`. REQUIRES: equal dimensions.
Quantity operator+(Quantity a, Quantity b);
Quantity operator-(Quantity a, Quantity b);
bool less(Quantity a, Quantity b);

/// `q` times `by`, in 128 bits, rounded once: half away from zero. Stops at the greatest amount that 64 bits hold.
Quantity scaled(Quantity q, Ratio by);

/// a : b as a fraction. REQUIRES: equal dimensions and b.amount != 0.
Ratio ratio(Quantity a, Quantity b);

enum class Unit {
  Milligram,
  Gram,
  Kilogram,
  Ounce,
  Pound,
  Millilitre,
  Litre,
  Teaspoon,
  Tablespoon,
  FluidOunce,
  Cup,
  Pint,
  Quart,
  Gallon,
  Piece
};

/// One of `unit` as a quantity. Source: NIST Handbook 44, Appendix C (US customary units).
Quantity one(Unit unit);

/// `count` of `unit`, rounded once to the smallest unit.
Quantity quantity(Ratio count, Unit unit);

/// How many of `unit` `q` is, exactly. REQUIRES: equal dimensions.
Ratio in_unit(Quantity q, Unit unit);

}  // namespace lardiner::measure
