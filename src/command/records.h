// Batch records from a file or standard input, read and computed.
#pragma once

#include <QString>
#include <vector>

#include "batch/batch.h"
#include "batch/read_records.h"
#include "book/book.h"
#include "problem/error.h"
#include "reader/read.h"

namespace lardiner::command {

enum class RecordFormat { Guess, Csv, JsonLines };

/// The rows of a file of records, orders or lots. Guess: by the name's ending (.csv, .jsonl, .json), else JSON Lines
/// when the first character is a brace.
problem::ExpectedAll<reader::Rows> read_rows(const QString& path, RecordFormat format);

/// The records of a run, and what is wrong with those that could not be read; a file without any is refused.
problem::ExpectedAll<batch::Records> read_record_file(const QString& path, RecordFormat format, const book::Book& book,
                                                      const QDateTime& now);

/// The same with every batch computed: those of readable records, refused or not.
struct Run {
  std::vector<batch::Batch> batches;
  problem::Errors errors;
};
problem::ExpectedAll<Run> read_run(const QString& path, RecordFormat format, const book::Book& book,
                                   const QDateTime& now);

}  // namespace lardiner::command
