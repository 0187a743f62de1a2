// Lengths on paper as types: millimetres, points, whole printer dots and fine positions in dots.
#pragma once

#include <cmath>
#include <compare>

namespace lardiner::paper {

// An inch is 25.4 mm exactly: international yard and pound agreement, 1959.
inline constexpr double kMillimetresPerInch = 25.4;
// A point is 1/72 inch: ISO 32000-1:2008, 8.3.2.3.
inline constexpr double kPointsPerInch = 72.0;

/// One unit of length with the arithmetic that lengths have; `Unit` only keeps the units apart.
template <class Unit, class Number>
struct Length {
  Number value{};

  friend constexpr Length operator+(Length a, Length b) { return {a.value + b.value}; }
  friend constexpr Length operator-(Length a, Length b) { return {a.value - b.value}; }
  friend constexpr Length operator*(Length a, Number n) { return {a.value * n}; }
  friend constexpr Length operator*(Number n, Length a) { return {a.value * n}; }
  constexpr Length& operator+=(Length b) { return *this = *this + b; }
  constexpr Length& operator-=(Length b) { return *this = *this - b; }
  friend constexpr auto operator<=>(Length, Length) = default;
};

using Millimetres = Length<struct MillimetreUnit, double>;
using Points = Length<struct PointUnit, double>;
/// Whole printer dots: where boxes and codes stand, so that each edge is the edge of a dot.
using Dots = Length<struct DotUnit, int>;
/// A width or position of text in dots, with a fraction: a face's widths are no whole dots, and rounding each word
/// would add up over a line. A double holds every width on a label exactly enough (far below 1/1000 dot).
using FineDots = Length<struct FineDotUnit, double>;

/// A printer's resolution as its maker states it (203 is used as 203, not as 8 dots a millimetre).
struct Resolution {
  int dots_per_inch = 203;
  friend constexpr bool operator==(Resolution, Resolution) = default;
};

constexpr FineDots fine_dots(Dots d) { return {static_cast<double>(d.value)}; }
constexpr FineDots fine_dots(Points p, Resolution r) { return {p.value * r.dots_per_inch / kPointsPerInch}; }
constexpr FineDots fine_dots(Millimetres mm, Resolution r) {
  return {mm.value * r.dots_per_inch / kMillimetresPerInch};
}
constexpr Points points(FineDots d, Resolution r) { return {d.value * kPointsPerInch / r.dots_per_inch}; }
constexpr Points points(Millimetres mm) { return {mm.value * kPointsPerInch / kMillimetresPerInch}; }
constexpr Millimetres millimetres(FineDots d, Resolution r) {
  return {d.value * kMillimetresPerInch / r.dots_per_inch};
}
constexpr Millimetres millimetres(Points p) { return {p.value * kMillimetresPerInch / kPointsPerInch}; }

/// The nearest whole dot.
inline Dots nearest_dots(FineDots d) { return {static_cast<int>(std::lround(d.value))}; }
/// The most whole dots that are not more than the length: what a medium really offers.
inline Dots whole_dots_within(FineDots d) { return {static_cast<int>(std::floor(d.value + 1e-9))}; }
/// The fewest whole dots that are not less than the length: for minima.
inline Dots whole_dots_covering(FineDots d) { return {static_cast<int>(std::ceil(d.value - 1e-9))}; }

}  // namespace lardiner::paper
