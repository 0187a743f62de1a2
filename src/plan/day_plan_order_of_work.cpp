// In which order the makings of a plan are begun, and when.
#include "plan/day_plan_order_of_work.h"

#include <algorithm>
#include <numeric>
#include <set>
#include <tuple>

namespace lardiner::plan {

namespace {

class Sequence {
 public:
  Sequence(const Items& items, const std::vector<Making>& makings, const Calendar& calendar)
      : items_(items),
        makings_(makings),
        calendar_(calendar),
        from_(makings.size()),
        waits_for_(makings.size()),
        goes_into_(makings.size()),
        rank_(makings.size()) {
    for (size_t i = 0; i < makings.size(); ++i) {
      from_[i] = by_day(i, makings[i].earliest);
      waits_for_[i] = makings[i].subs.size();
      for (const size_t sub : makings[i].subs) goes_into_[sub].push_back(i);
      latest_.insert(makings[i].latest);
      if (makings[i].subs.empty()) ready_.push_back(i);
    }
    set_ranks();
  }

  std::vector<Begun> run() {
    std::vector<Begun> all;
    Instant clock = calendar_.now();
    while (!ready_.empty()) {
      const size_t place = best(clock);
      const size_t making = ready_[place];
      clock = std::max(clock, from_[making]);
      all.push_back({making, clock, !all.empty() && needs_clean_down(all.back().making, making)});
      begin(place, clock);
    }
    return all;
  }

 private:
  const Made& made(size_t making) const { return items_.made[makings_[making].item]; }

  // Not in the night of a later day, where the window leaves the time: work begins at the hour at which the plan is
  // made (common practice, no source; the book knows no opening hours).
  Instant by_day(size_t making, Instant at) const {
    const Instant begins = calendar_.hour_of_run(calendar_.day_of(at));
    return at < begins && begins <= makings_[making].latest ? begins : at;
  }

  // The order that cleanliness asks for, if time does not.
  void set_ranks() {
    std::vector<size_t> order(makings_.size());
    std::iota(order.begin(), order.end(), size_t{0});
    const auto key = [&](size_t i) {
      const Made& m = made(i);
      return std::tuple(m.handles_raw, !m.allergens_stated, m.allergens.size());
    };
    std::sort(order.begin(), order.end(), [&](size_t a, size_t b) {
      if (key(a) != key(b)) return key(a) < key(b);
      if (made(a).allergens != made(b).allergens) return made(a).allergens < made(b).allergens;
      return std::tie(makings_[a].latest, made(a).product->id, a) <
             std::tie(makings_[b].latest, made(b).product->id, b);
    });
    for (size_t i = 0; i < order.size(); ++i) rank_[order[i]] = i;
  }

  // The first by rank that makes nothing else too late, of those that can be begun on the first day that any can.
  size_t best(Instant clock) {
    Instant first = kNever;
    for (const size_t i : ready_) first = std::min(first, std::max(clock, from_[i]));
    const Instant day_end = calendar_.start(calendar_.day_of(first) + 1);
    size_t chosen = ready_.size();
    for (size_t place = 0; place < ready_.size(); ++place) {
      const Instant at = std::max(clock, from_[ready_[place]]);
      if (at >= day_end || at > latest_of_others(ready_[place])) continue;
      if (chosen == ready_.size() || rank_[ready_[place]] < rank_[ready_[chosen]]) chosen = place;
    }
    return chosen;
  }

  Instant latest_of_others(size_t making) const {
    auto first = latest_.begin();
    if (*first == makings_[making].latest) ++first;
    return first == latest_.end() ? kNever : *first;
  }

  void begin(size_t place, Instant clock) {
    const size_t making = ready_[place];
    ready_.erase(ready_.begin() + static_cast<std::ptrdiff_t>(place));
    latest_.erase(latest_.find(makings_[making].latest));
    const Instant done = clock + made(making).seconds * kSecond;
    for (const size_t next : goes_into_[making]) {
      from_[next] = by_day(next, std::max(from_[next], done));
      if (--waits_for_[next] == 0) ready_.push_back(next);
    }
  }

  // All that was made since the last clean-down is in what came last, or it was cleaned down before that. Raw animal
  // foods are kept apart from what is ready to eat, and from each other: Food Code 3-302.11(A), from memory.
  bool needs_clean_down(size_t before, size_t after) const {
    const Made& last = made(before);
    const Made& next = made(after);
    if (last.handles_raw && !next.handles_raw) return true;
    if (!last.allergens_stated || !last.raw_foods_known) return true;
    return !holds_all(next.allergens, last.allergens) || !holds_all(next.raw_foods, last.raw_foods);
  }

  template <class Sorted>
  static bool holds_all(const Sorted& all, const Sorted& some) {
    return std::includes(all.begin(), all.end(), some.begin(), some.end());
  }

  const Items& items_;
  const std::vector<Making>& makings_;
  const Calendar& calendar_;
  std::vector<Instant> from_;  // the first start, by its window, by what goes into it, and by day
  std::vector<size_t> waits_for_;
  std::vector<std::vector<size_t>> goes_into_;
  std::vector<size_t> rank_;
  std::vector<size_t> ready_;
  std::multiset<Instant> latest_;  // of all that is not begun
};

}  // namespace

std::vector<Begun> order_of_work(const Items& items, std::vector<Making>& makings, const Calendar& calendar) {
  for (size_t i = makings.size(); i-- > 0;)  // what goes in stands behind what it goes into
    for (const size_t sub : makings[i].subs)
      makings[i].earliest =
          std::max(makings[i].earliest, makings[sub].earliest + items.made[makings[sub].item].seconds * kSecond);
  return Sequence(items, makings, calendar).run();
}

}  // namespace lardiner::plan
