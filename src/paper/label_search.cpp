// The best attempt at a label: how large the code, what is run together, how large the type.
#include "paper/label_search.h"

#include <algorithm>

#include "symbol/qr.h"

namespace lardiner::paper {

namespace {

// Halvings of the scale, between least and preferred or preferred and most: so many to compare choices, and so many
// more for the one that is taken. They leave half a percent.
constexpr int kToCompare = 4;
constexpr int kToFinish = 4;
// Type this near its preferred sizes is good enough to leave the layout as it is.
constexpr double kNearPreferred = 0.91;
// Facts left apart are worth this much of the scale.
constexpr double kWorth = 0.05;
// Larger modules than these are read no more often (DEVELOPERS.md, "The code, and why this size").
constexpr Millimetres kLargestModule{0.65};

// An attempt that fits, and a larger scale that does not; or one that lacks room even at the least scale asked for.
struct Found {
  Attempt attempt;
  Choice choice;
  double fails = 0;

  bool fits() const { return !attempt.lack; }
  double scale() const { return choice.scale; }
};

bool is_near_preferred(const Ground& ground, const Found& found) {
  return found.fits() && least_part(ground.bounds, found.scale()) >= kNearPreferred;
}

void halve(const Ground& ground, Found& found, int times) {
  for (int i = 0; i < times; ++i) {
    Choice choice = found.choice;
    choice.scale = (found.choice.scale + found.fails) / 2;
    Attempt attempt = stack(ground, choice);
    if (attempt.lack) {
      found.fails = choice.scale;
    } else {
      found.attempt = std::move(attempt);
      found.choice = choice;
    }
  }
}

// About the largest scale from `least` on at which everything fits, or what lacks there.
Found largest(const Ground& ground, int trial, Dots module, double least) {
  Found found{{}, {1, trial, module}, largest_scale(ground.bounds)};
  found.attempt = stack(ground, found.choice);
  if (!found.fits()) {
    found.fails = 1;
    found.choice.scale = least;
    found.attempt = stack(ground, found.choice);
  }
  if (found.fits()) halve(ground, found, kToCompare);
  return found;
}

// All facts apart where that leaves the preferred sizes, else run together, trial by trial, where that makes the type
// larger.
Found best_with(const Ground& ground, Dots module) {
  Found best = largest(ground, 0, module, 0);
  for (int trial = 1; trial <= ground.label.trials() && !is_near_preferred(ground, best); ++trial) {
    Found next = largest(ground, trial, module, best.fits() ? best.scale() + kWorth : 0);
    if (!best.fits() || next.fits()) best = std::move(next);
  }
  return best;
}

Dots largest_module(const Ground& ground, Dots least) {
  const int shorter = std::min(ground.page.width.value, ground.page.height.value);
  const int room = static_cast<int>(shorter * ground.label.code_share);
  const int with_quiet = ground.code_modules + 2 * symbol::kQuietZone;
  const Dots most = whole_dots_within(fine_dots(kLargestModule, ground.page.resolution));
  return std::max(std::min(Dots{symbol::largest_dots_per_module(with_quiet, room)}, most), least);
}

// With the largest code beside which everything fits, or what lacks beside the smallest.
Found best_found(const Ground& ground, Dots most, Dots least) {
  Found found = best_with(ground, most);
  for (Dots module = most - Dots{1}; !found.fits() && module >= least; module = module - Dots{1})
    found = best_with(ground, module);
  return found;
}

}  // namespace

Attempt best_attempt(const Ground& ground, Dots least_module) {
  const bool coded = ground.code_modules > 0;
  const Dots most = coded ? largest_module(ground, least_module) : Dots{0};
  Found found = best_found(ground, most, coded ? least_module : most);
  if (found.fits()) halve(ground, found, kToFinish);
  found.attempt.layout.largest_module = most;
  return std::move(found.attempt);
}

}  // namespace lardiner::paper
