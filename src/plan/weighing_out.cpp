// The lines of a pull as the scale shall read them, adding up to the printed total.
#include "plan/weighing_out.h"

#include <algorithm>

#include "measure/text.h"
#include "plan/rounding.h"

namespace lardiner::plan {

using measure::Quantity;
using measure::Ratio;

namespace {

// A line is not read this far off for the sake of the sum: each is then just rounded. Common practice, no source.
const Ratio kMostOff(1, 10);

class WeighingOut {
 public:
  WeighingOut(std::vector<ScaledLine>& lines, Quantity step, std::optional<Quantity> most)
      : lines_(lines), step_(step), most_(most) {}

  Quantity run() {
    for (ScaledLine& line : lines_) line.weighed = plan::weighed(line.net, line.step, line.restricted);
    if (ScaledLine* const largest = bearer()) give_residue(*largest);
    if (fits() && measure::less(*most_, sum(&ScaledLine::weighed)))
      for (ScaledLine& line : lines_) line.weighed = plan::weighed(line.net, line.step, true);
    return sum(&ScaledLine::weighed);
  }

 private:
  Quantity sum(Quantity ScaledLine::*what) const {
    Quantity all;
    for (const ScaledLine& line : lines_) all = all + line.*what;
    return all;
  }

  // A pull of more than the vessel takes is not this class's to refuse.
  bool fits() const {
    return most_ && most_->amount > 0 && whole_up(measure::ratio(sum(&ScaledLine::net), *most_)) <= 1;
  }

  ScaledLine* bearer() const {
    ScaledLine* largest = nullptr;
    for (ScaledLine& line : lines_) {
      if (line.fine || line.restricted) continue;
      const bool larger = !largest || measure::less(largest->net, line.net) ||
                          (largest->net == line.net && line.line->item < largest->line->item);
      if (larger) largest = &line;
    }
    return largest;
  }

  void give_residue(ScaledLine& largest) const {
    const Quantity others = sum(&ScaledLine::weighed) - largest.weighed;
    const Quantity share = rounded(sum(&ScaledLine::net) - others, others);
    const Quantity off = measure::less(share, largest.net) ? largest.net - share : share - largest.net;
    if (!measure::less(measure::scaled(largest.net, kMostOff), off)) largest.weighed = share;
  }

  // What is left for the largest line, in whole steps, within what is left of the vessel.
  Quantity rounded(Quantity rest, Quantity others) const {
    if (rest.amount <= 0) return {};
    const bool any_restricted =
        std::any_of(lines_.begin(), lines_.end(), [](const ScaledLine& line) { return line.restricted; });
    const Quantity share =
        any_restricted ? measure::rounded_up_to_step(rest, step_) : measure::rounded_to_step(rest, step_);
    if (!fits() || !measure::less(*most_, others + share) || !measure::less(others, *most_)) return share;
    return rounded_down_to_step(*most_ - others, step_);
  }

  std::vector<ScaledLine>& lines_;
  Quantity step_;
  std::optional<Quantity> most_;
};

}  // namespace

Quantity weigh_out(std::vector<ScaledLine>& lines, Quantity scale_step, std::optional<Quantity> most) {
  return WeighingOut(lines, scale_step, most).run();
}

}  // namespace lardiner::plan
