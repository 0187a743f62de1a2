// The 128-bit integers in which amounts are multiplied before they are divided, and the one rounding at the end.
#pragma once

#include <cstdint>
#include <limits>

namespace lardiner::measure {

__extension__ typedef __int128 Wide;

inline constexpr std::int64_t kMost64 = std::numeric_limits<std::int64_t>::max();

/// `value`, or the nearest number that 64 bits hold (symmetrical, so that every result can be negated).
constexpr std::int64_t saturated(Wide value) {
  if (value > kMost64) return kMost64;
  if (value < -Wide{kMost64}) return -kMost64;
  return static_cast<std::int64_t>(value);
}

/// num / den, half away from zero. REQUIRES: den > 0.
constexpr Wide divided(Wide num, Wide den) {
  const Wide whole = num / den;
  const Wide rest = num % den;
  const Wide size = rest < 0 ? -rest : rest;
  if (size < den - size) return whole;
  return num < 0 ? whole - 1 : whole + 1;
}

}  // namespace lardiner::measure
