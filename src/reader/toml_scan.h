// A first look over a TOML file for what its parser cannot say or bear: where a text was opened, and how long keys are.
#pragma once

#include <optional>

#include "reader/source.h"

namespace lardiner::reader {

struct TomlScan {
  std::optional<qsizetype> unclosed;  ///< the quote of the first text that is not closed
  std::optional<qsizetype> long_key;  ///< the dot that gives a key too many parts
};

/// Most parts of a dotted key. Each part is a table within a table, which are walked by recursion.
inline constexpr int kMostKeyParts = 16;

/// Knows TOML's texts and comments, nothing else; sure only as far as the file is well formed. Stops at a text that is
/// not closed.
TomlScan scan_toml(const Source& source);

}  // namespace lardiner::reader
