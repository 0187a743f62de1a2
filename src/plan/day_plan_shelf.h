// What stands on hand of one item, the first to expire in front; each gram is taken once. For day_plan.cpp.
#pragma once

#include <array>
#include <vector>

#include "plan/day_plan_calendar.h"

namespace lardiner::plan {

/// Lots whose dates are asked in the same way.
enum class Row {
  Dated,          ///< a date that what is made of it cannot pass
  Quality,        ///< the best-before of what needs no temperature control, or no date at all
  FrozenDated,    ///< frozen, with a use-by
  FrozenQuality,  ///< frozen, with a best-before
  FrozenUndated   ///< frozen, of unknown date
};
inline constexpr size_t kRows = 5;

/// The end that a lot of each row must reach; kNever: none of this row will do.
using LeastEnds = std::array<Instant, kRows>;

class Shelf {
 public:
  /// `lot` names it in what is taken. REQUIRES: `sort` before anything is taken.
  void add(Row row, size_t lot, Instant end, std::int64_t amount);
  void sort();

  struct Taken {
    size_t lot = 0;
    std::int64_t amount = 0;
    bool frozen = false;
  };
  /// Up to `wanted`: first-expiring first of what stands in no freezer, then of what does.
  std::vector<Taken> take(const LeastEnds& least, std::int64_t wanted);

  /// All that would do.
  std::int64_t left(const LeastEnds& least) const;

  /// Lots of a row of which nothing was taken.
  std::vector<size_t> untouched(Row row) const;

 private:
  struct Lot {
    Instant end = 0;
    size_t lot = 0;
    std::int64_t amount = 0, left = 0;
    bool frozen = false;
  };
  struct Lots {
    std::vector<Lot> lots;
    std::vector<size_t> next;  // the first at or after a place of which something is left
  };

  static size_t first_left(Lots& row, size_t at);
  Lot* first(Row row, Instant least);
  Lot* first_of(const LeastEnds& least, Row a, Row b);
  Lot* first_of(const LeastEnds& least);

  std::array<Lots, kRows> rows_;
};

}  // namespace lardiner::plan
