// A text that a kitchen wrote in one or more languages.
#pragma once

#include <QString>
#include <utility>
#include <vector>

namespace lardiner::book {

/// Language code -> text, in the order of the file. `name = "Salsa"` stands for the kitchen's first language.
struct LocalText {
  std::vector<std::pair<QString, QString>> texts;

  bool empty() const { return texts.empty(); }
  /// The text in `language`, or an empty string: a missing translation is the caller's to refuse, never replaced in silence.
  QString in(const QString& language) const {
    for (const auto& [code, text] : texts)
      if (code == language) return text;
    return {};
  }

  friend bool operator==(const LocalText&, const LocalText&) = default;
};

}  // namespace lardiner::book
