// Check characters of ISO/IEC 7064: they find a wrong character and nearly every swap in a number copied by hand.
#pragma once

#include <QString>
#include <QStringView>

#include "problem/error.h"

namespace lardiner::gs1 {

enum class CheckSystem {
  Mod11_2,   ///< digits; one check character, 0 to 9 or X
  Mod37_2,   ///< digits and A to Z; one check character, 0 to 9, A to Z or *
  Mod97_10,  ///< digits; two check digits
  Mod37_36   ///< digits and A to Z; one check character, 0 to 9 or A to Z: the system of lots here
};

/// The characters that belong behind `text`. Refused: an empty text, a character outside the system's alphabet (small
/// letters too; separators are the caller's to take out).
problem::Expected<QString> check_characters(CheckSystem system, const QString& text);

/// Whether `text` ends in its own check characters; false for a text that has room for nothing else, and for
/// characters outside the alphabet.
bool check_characters_hold(CheckSystem system, QStringView text);

}  // namespace lardiner::gs1
