// How a refused file of records is told, and the text that a test expects of it.
#pragma once

#include "compute_kitchen.h"

namespace lardiner::batch::day {

/// The text after the line break that opens it.
inline QString told(const char* text) { return QString::fromUtf8(text).sliced(1); }

/// What is wrong with a file of which at most one record can be read.
inline QString csv(const char* text) {
  const Records records = read_csv(text);
  CHECK(records.records.size() < 2);
  return problem::text(records.errors);
}

}  // namespace lardiner::batch::day
