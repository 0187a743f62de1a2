// Batch records from CSV or JSON Lines rows: words to ids, texts to amounts and instants, every fault told at once.
#pragma once

#include <QDateTime>
#include <vector>

#include "batch/record.h"
#include "book/book.h"
#include "reader/read.h"

namespace lardiner::batch {

struct RecordSettings {
  QDateTime now;               ///< nothing may be made or have happened after this
  bool decimal_comma = false;  ///< CSV written with semicolons
};

/// What of a file could be read: faulty records are left out of `records`, each with at least one error that names its
/// place. A row that adds to a record which cannot be told leaves them all out: it may be an input of any of them.
struct Records {
  std::vector<Record> records;
  problem::Errors errors;
};

/// Reads the format of RECORDS.md, one table a row. What cannot be read, cannot be true (a time in the future, more in
/// the containers than was made) or is not in the book is an error at its cell, all of them at once. Whether the food
/// is safe is for `compute` to say.
Records read_records(const reader::Rows& rows, const book::Book& book, const RecordSettings& settings);
Records read_records(const std::vector<reader::Value>& rows, const book::Book& book, const RecordSettings& settings);

}  // namespace lardiner::batch
