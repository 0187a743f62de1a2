// Bytes to positioned values: TOML, CSV and JSON Lines.
#pragma once

#include <QByteArray>
#include <vector>

#include "reader/value.h"

namespace lardiner::reader {

/// Largest file accepted, in bytes; a larger one is refused before it is read.
inline constexpr qsizetype kMostBytes = 256 * 1024 * 1024;

/// One TOML 1.0 document as a table. `file` is the name used in places. A syntax fault, bytes that are not UTF-8 and a
/// duplicate key give one error and the reader stops there. Numbers keep the characters of the file.
problem::Expected<Value> read_toml(const QByteArray& bytes, const QString& file);

/// What a CSV file turned out to be.
struct CsvRows {
  std::vector<Value> rows;  ///< a table a row: column name -> String, empty fields left out, blank rows left out
  bool semicolons = false;  ///< fields were split by ; as spreadsheets of a comma-decimal locale write them
};

/// RFC 4180 with a header row: BOM or not, LF or CRLF, comma or semicolon (chosen by the header row), quoted fields with
/// doubled quotes and line breaks inside. Column names are trimmed and lower-cased with Unicode's root rules; fields are
/// trimmed unless quoted. Errors: an unclosed quote (place: where it opened), a stray quote, a row with more
/// fields than the header, a column named twice or not at all, not UTF-8, a NUL. All faults that can be told apart are
/// told at once; after an unclosed quote the reader stops.
problem::ExpectedAll<CsvRows> read_csv(const QByteArray& bytes, const QString& file);

/// JSON Lines: one object a line, UTF-8, BOM or not, blank lines skipped. Nested objects and lists are kept. Errors, one a
/// line and every bad line told: syntax, a duplicate key, not an object, nesting beyond 32, a lone surrogate. JSON null
/// is as if the key were absent.
problem::ExpectedAll<std::vector<Value>> read_json_lines(const QByteArray& bytes, const QString& file);

}  // namespace lardiner::reader
