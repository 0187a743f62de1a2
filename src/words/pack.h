// Reads a language pack: templates/words/<language>.toml.
#pragma once

#include <QByteArray>
#include <QString>

#include "problem/error.h"
#include "words/words.h"

namespace lardiner::words {

/// The pack in `toml`, a file named `file` in errors, for the language `code` (the file's name without .toml).
///
///     language = "es"
///     reviewed_by = "…"      # who read the safety words; "" while nobody has
///     [words]
///     use_by = "USAR HASTA"
///     [words.allergen]       # the key "allergen.milk"
///     milk = "leche"
///
/// Errors, all told at once: a key of `keys()` that is missing or empty, a key that is not known (with the nearest), a
/// sentence that lacks a {0} or has one too many, a form of a counted word that the language needs, another language
/// than `code`, and a language whose months or days have no name in CLDR that says what it is, since a date on a label
/// must not be misread.
problem::ExpectedAll<Language> read_language(const QByteArray& toml, const QString& file, const QString& code);

}  // namespace lardiner::words
