// Restricted ingredients in what really went in: at most their share of what was made.
#include <algorithm>
#include <map>

#include "batch/compute_product.h"
#include "book/restricted.h"
#include "reader/quote.h"

namespace lardiner::batch {

using measure::Quantity;
using problem::Code;
using reader::quoted;

namespace {

bool is_mass(const std::optional<Quantity>& quantity) {
  return quantity && quantity->dimension == measure::Dimension::Mass;
}

// All lines of one ingredient together.
struct Weighed {
  const Input* first = nullptr;
  Quantity sum;
  bool whole = true;  ///< every line has a weight
};

bool in_formula(const book::Product& product, const QString& item) {
  return std::any_of(product.formula.begin(), product.formula.end(),
                     [&](const book::FormulaLine& line) { return line.item == item; });
}

void judge(Making& making, const book::Ingredient& ingredient, const Weighed& weighed) {
  const std::optional<Quantity>& made = making.batch.record.quantity;
  if (!weighed.whole || !is_mass(made)) {
    if (in_formula(*making.product, ingredient.id)) return;  // as much as the formula says, which the book has judged
    refuse(making, "missing.other",
           {Code::Missing,
            QStringLiteral("how much of the restricted %1 is in %2 is not written")
                .arg(quoted(ingredient.id), quoted(making.product->id)),
            weighed.first->place, QStringLiteral("write the weight of each of its inputs, and of what was made")});
    return;
  }
  if (measure::ratio(weighed.sum, *made) <= *ingredient.most_percent) return;
  refuse(making, "missing.other",
         {Code::Unsafe,
          QStringLiteral("more of the restricted %1 is in %2 than its maximum (%3)")
              .arg(quoted(ingredient.id), quoted(making.product->id), ingredient.most_source),
          weighed.first->place, QStringLiteral("discard the batch, or correct the weight if it was written wrongly")});
}

}  // namespace

void check_restricted(Making& making, const Run& run, const std::vector<Used>& used) {
  if (!book::finished(run.book, *making.product)) return;
  std::map<const book::Ingredient*, Weighed> all;
  for (const Used& part : used) {
    const book::Ingredient* ingredient = part.input ? run.book.ingredient(part.item) : nullptr;
    if (!ingredient || !ingredient->most_percent) continue;
    Weighed& weighed = all[ingredient];
    if (!weighed.first) weighed.first = part.input;
    if (is_mass(part.input->quantity))
      weighed.sum = weighed.sum + *part.input->quantity;
    else
      weighed.whole = false;
  }
  for (const auto& [ingredient, weighed] : all) judge(making, *ingredient, weighed);
}

}  // namespace lardiner::batch
