// Needs through sub-batches, from the orders down to what is bought, netted off what is on hand; for day_plan.cpp.
#pragma once

#include <vector>

#include "plan/day_plan_needs.h"
#include "plan/day_plan_on_hand.h"

namespace lardiner::plan {

/// What all runs of one plan have in common.
struct Kitchen {
  Items& items;
  Keeping& keeping;
  const Calendar& calendar;
  SafeStarts& safe_starts;
  const OnHandRows& on_hand;
};

/// How an order, or a level, may be met.
enum class Leave {
  Merged,     ///< with others of the same product
  Alone,      ///< in makings of its own, since others in them would have made it impossible
  OnHandOnly  ///< no making of it can be
};

/// An order, or a level that is kept on hand.
struct Root {
  For::Kind kind = For::Kind::Order;
  size_t index = 0;  ///< of an order; of a level its product
  size_t item = 0;
  std::int64_t amount = 0;
  Instant at = 0;
  Ends ends;
  bool frozen = false;
  Leave leave = Leave::Merged;
};

struct Making {
  size_t item = 0;
  std::vector<For> wanted_by;  ///< Making: index into Explosion::makings; Level: unused
  std::int64_t output = 0;
  measure::Ratio makings;
  Instant earliest = 0, latest = 0;
  Ends ends;
  size_t root = kNobody;
  std::vector<size_t> subs;  ///< makings that go into it
};

/// Why a need cannot be met by a making.
struct Failure {
  std::vector<size_t> roots;  ///< all that it was for
  Unmet::Why why = Unmet::Why::TooLate;
  Instant by = 0;
  size_t item = 0;
  bool direct = false;  ///< the need of the order itself: nothing was made or taken for it
};

struct BuyNeed {
  size_t item = 0;
  size_t making = 0;
  std::int64_t amount = 0;
};

struct Explosion {
  std::vector<Making> makings;  ///< each before those that go into it
  std::vector<Take> takes;
  std::vector<BuyNeed> buys;
  std::vector<Failure> failures;
  std::vector<std::int64_t> open;  ///< of each root: neither on hand nor made
  std::vector<PassedOver> passed_over;
};

Explosion exploded(const Kitchen& kitchen, const std::vector<Root>& roots);

}  // namespace lardiner::plan
