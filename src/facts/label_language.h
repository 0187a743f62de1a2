// The words that a label may be written in: those of a language that is there, and that somebody reviewed.
#pragma once

#include <QString>
#include <vector>

#include "book/kitchen.h"
#include "problem/error.h"
#include "words/words.h"

namespace lardiner::facts {

/// The pack of language `code`. Errors, at `place`: Unknown where there is none; Unsafe where neither the pack nor the
/// kitchen names who reviewed its safety words: words that nobody reviewed are not printed.
problem::Expected<const words::Language*> label_language(const std::vector<words::Language>& languages,
                                                         const book::Kitchen& kitchen, const QString& code,
                                                         const problem::Place& place);

}  // namespace lardiner::facts
