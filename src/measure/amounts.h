// `1 lb 1.6 oz` taken apart into its numbers and the words after them; shared by amounts of food and of time.
#pragma once

#include <QString>
#include <vector>

#include "measure/quantity.h"
#include "problem/error.h"

namespace lardiner::measure {

/// One number with the word after it: `1 1/2` and `cup`. The word is in lower case, abbreviation points dropped.
struct Amount {
  QString number;
  QString word;
};

/// The amounts in `text`, in order; a word before any number has an empty number.
std::vector<Amount> amounts(const QString& text);

/// Reads `number` (a decimal, `1/2` or `1 1/2`); errors quote `whole`, of which it is a part.
problem::Expected<Ratio> read_number(const QString& number, const QString& whole, bool decimal_comma);

/// `"text" clause`, with a remedy.
problem::Error fault(problem::Code code, const QString& text, const QString& clause, const QString& hint);

/// Whether `text` begins with a minus sign of any kind.
bool negative(const QString& text);

}  // namespace lardiner::measure
