// A first look over a TOML file for what its parser cannot say or bear: where a text was opened, and how long keys are.
#include "reader/toml_scan.h"

namespace lardiner::reader {

namespace {

bool stands_in_key(char c) {
  return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == '_' || c == '-' ||
         c == ' ' || c == '\t' || c == '.';
}

// The offset after the text that opens at `open`, or nothing when it is not closed.
std::optional<qsizetype> after_text(QByteArrayView bytes, qsizetype open) {
  const char quote = bytes[open];
  const QByteArray triple(3, quote);
  const bool lines = bytes.sliced(open).startsWith(triple);
  qsizetype at = open + (lines ? 3 : 1);
  for (; at < bytes.size(); ++at) {
    if (bytes[at] == '\\' && quote == '"') {
      ++at;
    } else if (lines && bytes.sliced(at).startsWith(triple)) {
      at += 3;
      while (at < bytes.size() && bytes[at] == quote) ++at;  // up to two quotes may stand before the closing three
      return at;
    } else if (!lines && bytes[at] == quote) {
      return at + 1;
    } else if (!lines && bytes[at] == '\n') {
      return std::nullopt;
    }
  }
  return std::nullopt;
}

}  // namespace

TomlScan scan_toml(const Source& source) {
  TomlScan scan;
  int parts = 1;
  for (qsizetype at = source.begin(); at < source.size();) {
    const char c = source.at(at);
    if (c == '"' || c == '\'') {
      const std::optional<qsizetype> after = after_text(source.bytes(), at);
      if (!after) {
        scan.unclosed = at;
        return scan;
      }
      at = *after;
      continue;
    }
    if (c == '#') at = source.line_end(at);
    if (c == '.' && ++parts > kMostKeyParts && !scan.long_key) scan.long_key = at;
    if (!stands_in_key(c)) parts = 1;
    ++at;
  }
  return scan;
}

}  // namespace lardiner::reader
