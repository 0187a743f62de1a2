// Batch records from CSV or JSON Lines rows: words to ids, texts to amounts and instants, every fault told at once.
#pragma once

#include <QDateTime>
#include <vector>

#include "batch/record.h"
#include "book/book.h"
#include "reader/value.h"

namespace lardiner::batch {

struct RecordSettings {
  QDateTime now;               ///< nothing may be made or have happened after this
  bool decimal_comma = false;  ///< CSV written with semicolons
};

/// What of a file could be read: faulty records are left out of `records`, each with at least one error that names its place.
struct Records {
  std::vector<Record> records;
  problem::Errors errors;
};

/// JSON: one object a record, with lists `inputs`, `containers`, `cooked`, `cooled`, `events`.
/// CSV: one row a record; further rows of the same `number` and an empty `product` add an input, a reading, an event or
/// a container group to it, in any order of rows (docs: samples/kitchen/records and `lardiner labels --help`).
Records read_records(const std::vector<reader::Value>& rows, const book::Book& book, const RecordSettings& settings);

}  // namespace lardiner::batch
