// What the book lacks, or has wrong, for several of this layer's sheets.
#include "plan/refusals.h"

#include "reader/quote.h"

namespace lardiner::plan {

using problem::Code;
using reader::quoted;

problem::Error not_in_pieces(const book::Product& product) {
  return {Code::Missing, QStringLiteral("product %1 is not made in pieces").arg(quoted(product.id)), product.place,
          QStringLiteral("state makes in pieces, or unit_weight")};
}

problem::Error nothing_edible(const book::Ingredient& ingredient) {
  return {Code::Conflict, QStringLiteral("nothing of ingredient %1 is edible").arg(quoted(ingredient.id)),
          ingredient.place, QStringLiteral("correct edible")};
}

}  // namespace lardiner::plan
