// Batch records from a file or standard input, read and computed.
#pragma once

#include <QString>
#include <vector>

#include "batch/batch.h"
#include "book/book.h"
#include "problem/error.h"

namespace lardiner::command {

enum class RecordFormat { Guess, Csv, JsonLines };

/// A run's batches: those of readable records, refused or not, and what is wrong with the records that could not be
/// read.
struct Run {
  std::vector<batch::Batch> batches;
  problem::Errors errors;
};

/// Guess: by the name's ending (.csv, .jsonl, .json), else JSON Lines when the first character is a brace.
problem::ExpectedAll<Run> read_run(const QString& path, RecordFormat format, const book::Book& book,
                                   const QDateTime& now);

}  // namespace lardiner::command
