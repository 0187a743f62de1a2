// The words that a label may be written in: those of a language that is there, and that somebody reviewed.
#include "facts/label_language.h"

#include <algorithm>

namespace lardiner::facts {

using problem::Code;
using problem::Error;

problem::Expected<const words::Language*> label_language(const std::vector<words::Language>& languages,
                                                         const book::Kitchen& kitchen, const QString& code,
                                                         const problem::Place& place) {
  const auto found = std::find_if(languages.begin(), languages.end(), [&](const auto& l) { return l.code() == code; });
  if (found == languages.end())
    return tl::unexpected(
        Error{Code::Unknown, QStringLiteral("there are no words for language \"%1\"").arg(code), place,
              QStringLiteral("add templates/words/%1.toml, or use a language that is there").arg(code)});
  if (!found->reviewed() && kitchen.words_reviewed_by.in(code).isEmpty())
    return tl::unexpected(
        Error{Code::Unsafe, QStringLiteral("the safety words of language \"%1\" are not reviewed").arg(code), place,
              QStringLiteral("have somebody who speaks it read templates/words/%1.toml, and name them in kitchen.toml: "
                             "words_reviewed_by = { %1 = \"…\" }")
                  .arg(code)});
  return &*found;
}

}  // namespace lardiner::facts
