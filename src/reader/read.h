// Bytes to positioned values: TOML, CSV and JSON Lines.
#pragma once

#include <QByteArray>
#include <functional>
#include <vector>

#include "reader/value.h"

namespace lardiner::reader {

/// Largest record file and largest book file accepted, in bytes; a larger one is refused before it is read.
inline constexpr qsizetype kMostBytes = 64 * 1024 * 1024;
inline constexpr qsizetype kMostTomlBytes = 4 * 1024 * 1024;

/// Most faults told of one file; the reader stops there.
inline constexpr size_t kMostFaults = 100;

// Places, for all formats. Columns count code points from 1, a byte order mark not counted. The shown line has control
// characters replaced; of a line longer than 160 code points a window of 160 around the column is shown, with … where
// it is cut, and Place::shown_from says at which column the window begins (Place::column stays the file's). A whole
// record (a CSV row, a line of JSON) has its line with column 0: no caret. A TOML document as a whole has its file
// alone.

/// One TOML 1.0 document as a table. `file` is the name used in places. A syntax fault, bytes that are not UTF-8 and a
/// duplicate key give one error and the reader stops there. Numbers keep the characters of the file; inf, nan,
/// hexadecimal, octal and binary numbers and underscores are refused, for no amount is written so. Entries stand in the
/// order in which the file first names them. Keys of more than 16 parts and nesting beyond 32 are refused.
problem::Expected<Value> read_toml(const QByteArray& bytes, const QString& file);

/// The rows of a record file, tables all, in the order of the file. A row is made when it is asked for, so that a long
/// file takes little more memory than its bytes.
struct Rows {
  size_t count = 0;
  std::function<Value(size_t)> row;  ///< REQUIRES: less than `count`. The same each time; one thread at a time
  bool semicolons = false;           ///< CSV split by ; as spreadsheets of a comma-decimal locale write it
};

/// RFC 4180 with a header row: BOM or not, LF or CRLF, comma or semicolon (chosen by the header row), quoted fields
/// with doubled quotes and line breaks inside. A row is a table of column name -> String, empty fields left out; blank
/// rows are left out. Column names are trimmed and lower-cased with Unicode's root rules; fields are trimmed unless
/// quoted. A row with fewer fields than the header leaves the rest out; columns at the end that have neither a name nor
/// a value are passed over, as spreadsheets write them. Errors: an unclosed quote (place: where it opened), a stray
/// quote, a row with more fields than the header, a column named twice or not at all, no header row, a carriage return
/// that ends a line alone, not UTF-8, a NUL. All faults that can be told apart are told at once; after an unclosed
/// quote or a lone carriage return the reader stops.
problem::ExpectedAll<Rows> csv_rows(const QByteArray& bytes, const QString& file);

/// JSON Lines: one object a line, UTF-8, BOM or not, blank lines skipped. Nested objects and lists are kept. Errors,
/// one a line and every bad line told: syntax, a duplicate key, not an object, nesting beyond 32, half a surrogate
/// pair, null in a list. A key whose value is null is as if it were absent.
problem::ExpectedAll<Rows> json_rows(const QByteArray& bytes, const QString& file);

/// All rows of a short file at once.
struct CsvRows {
  std::vector<Value> rows;
  bool semicolons = false;
};
problem::ExpectedAll<CsvRows> read_csv(const QByteArray& bytes, const QString& file);
problem::ExpectedAll<std::vector<Value>> read_json_lines(const QByteArray& bytes, const QString& file);

}  // namespace lardiner::reader
