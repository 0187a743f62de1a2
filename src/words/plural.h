// The plural categories of the shipped languages, by CLDR's rules.
#pragma once

#include <QString>
#include <vector>

namespace lardiner::words {

/// CLDR's names for the forms that a counted word takes; a language has some of them, Other always.
enum class Plural { One, Few, Many, Other };

/// "one", "few", "many", "other": the key of the form in a pack.
QString name(Plural plural);

/// The forms that a pack for `language` (a BCP 47 tag) gives, in CLDR's order. A language that is not shipped has Other
/// alone: its words are phrased so that they serve any number.
std::vector<Plural> plurals_of(const QString& language);

/// The form for a number as written in digits, "21" or "2,5": CLDR's operands are the visible digits.
/// Source: Unicode CLDR, supplemental data, plurals.xml (cardinals).
Plural plural_of(const QString& language, const QString& figure);

}  // namespace lardiner::words
