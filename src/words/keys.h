// The keys of the words that labels and sheets print.
#pragma once

#include <QString>
#include <QStringList>

#include "words/plural.h"

namespace lardiner::words {

/// Every key that labels and sheets print in `language`; a pack that lacks one is refused by the reader of packs. A
/// counted word has a key for each plural form of the language: pieces.one, pieces.few.
QStringList keys(const QString& language);

/// "pieces.few"
QString plural_key(const QString& key, Plural plural);

/// How many values a sentence takes: 2 for "Tub {0} of {1}", 0 for a plain word. A key of an open family, such as
/// "allergen.kiwi", takes as many as its family.
int values_of(const QString& key);

/// Whether the values must stand in the order {0}, {1}: other text is built around them (a list, brackets).
bool is_in_order(const QString& key);

/// Whether a pack for `language` may hold `key`: one of `keys`, or one more of a family that a kitchen may extend
/// (allergen., list., equipment., container.).
bool is_known(const QString& key, const QString& language);

}  // namespace lardiner::words
