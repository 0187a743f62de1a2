// A prep sheet's lines: a pull of a formula with what the scale reads as each line goes in.
#include "plan/prep.h"

#include <utility>

#include "measure/text.h"
#include "plan/brought_allergens.h"

namespace lardiner::plan {

using measure::Quantity;

Prep prep(const book::Book& book, Scaled scaled) {
  Prep out;
  Quantity in_bowl;
  for (const ScaledLine& line : scaled.lines) {
    if (out.bowls.empty() || !(out.bowls.back().name == line.line->bowl)) {
      out.bowls.push_back({line.line->bowl, {}});
      in_bowl = {};
    }
    in_bowl = in_bowl + line.weighed;
    PrepLine& added = out.bowls.back().lines.emplace_back();
    added.amount = line;
    if (!line.fine) added.reading = measure::rounded_to_step(in_bowl, line.step);
    Brought brought = brought_allergens(book, line.line->item);
    added.allergens_known = brought.known;
    added.allergens = std::move(brought.entries);
  }
  out.scaled = std::move(scaled);
  return out;
}

}  // namespace lardiner::plan
