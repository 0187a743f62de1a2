// The keys of the words that labels and sheets print.
#pragma once

#include <QString>
#include <QStringList>

namespace lardiner::words {

/// Every key that labels and sheets print; a pack that lacks one is refused by the reader of packs.
const QStringList& keys();

/// How many values a sentence takes: 2 for "Tub {0} of {1}", 0 for a plain word. A key of an open family, such as
/// "allergen.kiwi", takes as many as its family.
int values_of(const QString& key);

/// Whether a pack may hold `key`: one of `keys`, or one more of a family that a kitchen may extend (allergen., list.,
/// equipment., container.).
bool is_known(const QString& key);

}  // namespace lardiner::words
