// What a file says, value by value, each with its place; no meaning yet. One shape for TOML, CSV and JSON.
#pragma once

#include <QString>
#include <cstdint>
#include <optional>
#include <vector>

#include "problem/error.h"

namespace lardiner::reader {

struct Entry;

/// A value as written. `text` holds a string's content, and a number's, date's or boolean's exact characters in the
/// file (so 0.61 is never a float). Lists and tables keep the order of the file.
struct Value {
  enum class Kind { String, Number, Boolean, Date, List, Table };  // Date: a TOML date, time or date-time

  Kind kind = Kind::Table;
  QString text;
  std::vector<Value> items;    // of a List
  std::vector<Entry> entries;  // of a Table; keys are unique
  problem::Place place;        // of the value
  problem::Place key_place;    // of the key that names it, when it has one

  bool is_true() const { return kind == Kind::Boolean && text == QLatin1String("true"); }

  /// The entry of a table, or nullptr.
  const Value* find(QStringView key) const;
};

/// A table's key with what stands there.
struct Entry {
  Entry(QString key, Value value);

  QString first;
  Value second;
};

}  // namespace lardiner::reader
