// What is needed of an item, until when it must keep, and what that asks of what is in it; for day_plan.cpp.
#pragma once

#include <map>
#include <utility>
#include <vector>

#include "plan/day_plan.h"
#include "plan/day_plan_items.h"
#include "plan/day_plan_shelf.h"

namespace lardiner::plan {

/// The ends that must be reached. What is made in this plan has its dates counted anew, and its time in a freezer does
/// not count; a lot keeps the date on its label.
struct Ends {
  Instant until = 0;       ///< what is made for it
  Instant inside = 0;      ///< what goes into that
  Instant ready = 0;       ///< what is ready to eat in it, at any depth: no later cook renews that
  Instant lot = 0;         ///< a lot of it
  Instant ready_lot = 0;   ///< a lot of what is ready to eat in it
  Instant stable_lot = 0;  ///< a lot whose best-before is about quality alone
};

/// Who speaks for a need through all depths: an order, or a level; nobody for what is made for several.
inline constexpr size_t kNobody = static_cast<size_t>(-1);

struct Need {
  For::Kind kind = For::Kind::Order;
  size_t index = 0;         ///< of an order, of a making, or of the product whose level it is
  std::int64_t amount = 0;  ///< still open
  Instant at = 0;           ///< when it must be there
  Ends ends;
  bool frozen = false;                                ///< it leaves the kitchen frozen
  bool thaws = false;                                 ///< the consumer has its thawing as a step
  size_t root = kNobody;                              ///< it is made for this order or level alone
  Instant earliest = 0;                               ///< of its making, by its own shelf life
  Instant safe_from = 0;                              ///< of its making, were everything in it made anew too
  Instant latest = 0;                                 ///< of its making
  bool urgent() const { return safe_from > latest; }  ///< what is on hand may be its only hope
};

/// What an order wants. `until`: the end that it must reach.
Ends ends_of_order(Instant until, Instant due, bool frozen, const Calendar& calendar);

/// The making that needs an input.
struct Consumer {
  const Made& made;
  Ends ends;  ///< the latest of what it is for
  Instant latest = 0;
};
struct InputSafety {
  bool raw = true;
  bool quality_only = false;  ///< of a product made in this plan
  bool holds_ready = false;   ///< of a product
};
Ends ends_of_input(const Consumer& consumer, const InputSafety& input);

/// The later of each.
Ends later(const Ends& a, const Ends& b);

/// When a making can begin if everything in it is made anew as well, each product worked out once for each end.
class SafeStarts {
 public:
  SafeStarts(const Items& items, Keeping& keeping, const Calendar& calendar)
      : items_(items), keeping_(keeping), calendar_(calendar), known_(items.made.size()) {}

  /// kNever where the book lacks a weight or a shelf life.
  Instant of(size_t item, size_t way, const Ends& ends);

 private:
  Instant inputs_ready(size_t item, Instant inside, Instant ready);

  const Items& items_;
  Keeping& keeping_;
  const Calendar& calendar_;
  std::vector<std::map<std::pair<Instant, Instant>, Instant>> known_;
};

}  // namespace lardiner::plan
