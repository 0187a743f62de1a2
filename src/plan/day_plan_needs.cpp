// What is needed of an item, until when it must keep, and what that asks of what is in it.
#include "plan/day_plan_needs.h"

#include <algorithm>

#include "batch/use_by.h"

namespace lardiner::plan {

namespace {

// The instant from which something used at `at` may be past its end.
Instant just_after(Instant at) { return at + 1; }

}  // namespace

Ends ends_of_order(Instant until, Instant due, bool frozen, const Calendar& calendar) {
  if (!frozen) return {until, until, until, until, until, until};
  // A chilled day must be left of what goes into the freezer, for the day of thawing.
  const Instant day_left = calendar.end_of_day(calendar.end_of_day(just_after(due)) + 1);
  return {until, day_left, day_left, until, until, until};
}

Ends ends_of_input(const Consumer& consumer, const InputSafety& input) {
  const Ends& of = consumer.ends;
  const Instant used = just_after(consumer.latest);
  const Instant cooked = just_after(consumer.latest + consumer.made.cook_seconds * kSecond);
  Ends ends;
  if (!input.raw) {
    ends = {of.ready, of.ready, of.ready, of.ready_lot, of.ready_lot, of.ready_lot};
  } else if (batch::cook_ends_clock({input.raw, false}, consumer.made.cooks)) {
    // Of a lot nobody knows how old the ready-to-eat part of it is: its own date has to do for that.
    const Instant lot = input.holds_ready ? std::max(cooked, of.ready_lot) : cooked;
    ends = {cooked, cooked, of.ready, lot, of.ready_lot, lot};
  } else {
    ends = {of.inside, of.inside, of.ready, of.lot, of.ready_lot, of.lot};
  }
  if (consumer.made.tcs) ends.stable_lot = used;
  if (consumer.made.tcs && input.quality_only) ends.until = ends.inside = ends.ready = used;
  return ends;
}

Ends later(const Ends& a, const Ends& b) {
  return {std::max(a.until, b.until), std::max(a.inside, b.inside),       std::max(a.ready, b.ready),
          std::max(a.lot, b.lot),     std::max(a.ready_lot, b.ready_lot), std::max(a.stable_lot, b.stable_lot)};
}

Instant SafeStarts::of(size_t item, size_t way, const Ends& ends) {
  const Instant own = keeping_.earliest(way, ends.until);
  return own == kNever ? kNever : std::max(own, inputs_ready(item, ends.inside, ends.ready));
}

Instant SafeStarts::inputs_ready(size_t item, Instant inside, Instant ready) {
  const Made& made = items_.made[item];
  if (!made.errors.empty()) return kNever;
  if (made.by_day) {
    inside = calendar_.end_of_day(inside);
    ready = calendar_.end_of_day(ready);
  }
  const auto [at, is_new] = known_[item].emplace(std::pair(inside, ready), calendar_.now());
  if (!is_new) return at->second;
  Instant all = calendar_.now();
  for (const Part& part : made.parts) {
    if (!part.made || all == kNever) continue;
    const Made& sub = items_.made[part.item];
    Ends ends{ready, ready, ready, 0, 0, 0};
    if (sub.raw) ends.until = ends.inside = made.cooks ? 0 : inside;  // cooked: it is used when it is ready
    if (made.tcs && sub.quality_only) ends = {};
    const Instant begun = of(part.item, sub.way, ends);
    all = begun == kNever ? kNever : std::max(all, begun + sub.seconds * kSecond);
  }
  return known_[item][std::pair(inside, ready)] = all;
}

}  // namespace lardiner::plan
