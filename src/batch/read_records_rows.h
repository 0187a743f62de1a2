// Which rows of a file make up one record: its own, and the further rows that add to it.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "problem/error.h"
#include "reader/read.h"

namespace lardiner::batch {

/// A further row, by the word in its column `row`.
struct FurtherRow {
  QString adds;    ///< input, cooked, cooled, event, containers
  size_t row = 0;  ///< its number in the file's rows
};

struct RecordRows {
  size_t own = 0;
  QString item;                     ///< product or ingredient as written; may be empty
  std::optional<int> number;        ///< as written, if it can be read
  std::vector<FurtherRow> further;  ///< in the order of the file
  bool doubled = false;             ///< another record has the same item and number
};

/// The records in the order of the file. Told: a further row that belongs to no record or to several, an unknown word
/// in `row`, two records with one item and number. A further row without its record may be any record's input, so then
/// no record of the file is whole, and none is given.
std::vector<RecordRows> record_rows(const reader::Rows& rows, problem::Errors& errors);

}  // namespace lardiner::batch
