// What must hold of every value read and of every fault told, whatever the bytes were.
#pragma once

#include <QSet>
#include <cstdlib>

#include "reader/fields.h"
#include "reader/read.h"

namespace lardiner::fuzz {

/// Stops the program, so that the bytes are kept as a crash.
inline void must(bool holds) {
  if (!holds) std::abort();
}

inline void check_place(const problem::Place& place) {
  const qsizetype shown = place.source_line.toUcs4().size();
  must(place.line >= 0 && place.column >= 0 && place.width >= 1 && place.shown_from >= 1);
  must(shown <= 160 && place.width <= 160);
  if (place.column > 0) must(place.column >= place.shown_from && place.column - place.shown_from <= shown);
}

/// A fault has words, a remedy and a place within the line it shows.
inline void check(const problem::Error& error) {
  check_place(error.place);
  must(!error.what.isEmpty() && !error.hint.isEmpty());
  must(!problem::text(error).isEmpty());
}

inline void check(const problem::Errors& errors) {
  must(!errors.empty() && errors.size() <= reader::kMostFaults);
  for (const problem::Error& error : errors) check(error);
}

/// Asks a table for each of its entries as everything that it might be.
inline void ask(const reader::Value& table) {
  problem::Errors errors;
  reader::Fields fields(table, QStringLiteral("table"), errors);
  for (size_t i = 0; i < table.entries.size() && i < 8; ++i) {
    const QString& key = table.entries[i].first;
    fields.required_text(key);
    fields.boolean(key);
    fields.integer(key, -5, 5);
    fields.date(key);
    fields.texts(key);
    fields.tables(key);
    fields.table(key);
    if (const auto written = reader::parse_written(table.entries[i].second.text))
      must(written->date.isValid() && written->seconds_of_day.value_or(0) < 24 * 60 * 60);
  }
  fields.finish();
  for (const problem::Error& error : errors) check(error);
}

/// Every value stands at a place; keys are unique; lists and tables are asked in their turn.
inline void walk(const reader::Value& value) {
  check_place(value.place);
  check_place(value.key_place);
  if (value.kind == reader::Value::Kind::Table) ask(value);
  QSet<QString> keys;
  for (const auto& [key, entry] : value.entries) {
    must(!keys.contains(key));
    keys.insert(key);
    walk(entry);
  }
  for (const reader::Value& item : value.items) walk(item);
}

}  // namespace lardiner::fuzz
