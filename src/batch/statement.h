// The ingredient statement of a batch: descending by weight, compounds in parentheses or merged.
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "batch/batch.h"

namespace lardiner::batch {

/// One ingredient as it will be read out, with its parts; `allergen` marks what is on the destination's list (which may
/// ask for emphasis). A supplier's own statement is one part, its text as the supplier wrote it.
struct StatedIngredient {
  QString name;
  measure::Quantity weight;
  std::vector<StatedIngredient> parts;  ///< of a compound, descending
  bool allergen = false;
  QStringList declares;  ///< entries of the list that the law wants named within the list of ingredients: US sulphites
};

/// Descending by weight (21 CFR 101.4), equal weights in the formula's order. With `merged`, compounds of our own are
/// dissolved and equal ingredients summed. Names in `language`; a missing translation or weight is an error.
problem::ExpectedAll<std::vector<StatedIngredient>> ingredient_statement(const book::Book& book, const Batch& batch,
                                                                         const QString& language, bool merged);

}  // namespace lardiner::batch
