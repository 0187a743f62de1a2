// Batch records from a file or standard input, read and computed.
#include "command/records.h"

#include "command/files.h"

namespace lardiner::command {

namespace {

bool is_json(const QString& path, RecordFormat format, const QByteArray& bytes) {
  if (format != RecordFormat::Guess) return format == RecordFormat::JsonLines;
  if (path.endsWith(QLatin1String(".jsonl")) || path.endsWith(QLatin1String(".json"))) return true;
  if (path.endsWith(QLatin1String(".csv"))) return false;
  const QByteArray start = bytes.left(64).trimmed();
  return start.startsWith('{') || start.startsWith("\xEF\xBB\xBF{");
}

}  // namespace

problem::ExpectedAll<reader::Rows> read_rows(const QString& path, RecordFormat format) {
  const auto bytes = read_file(path);
  if (!bytes) return tl::unexpected(problem::Errors{bytes.error()});
  return is_json(path, format, *bytes) ? reader::json_rows(*bytes, path) : reader::csv_rows(*bytes, path);
}

problem::ExpectedAll<batch::Records> read_record_file(const QString& path, RecordFormat format, const book::Book& book,
                                                      const QDateTime& now) {
  const auto rows = read_rows(path, format);
  if (!rows) return tl::unexpected(rows.error());
  batch::Records records = batch::read_records(*rows, book, {now, rows->semicolons});
  if (records.records.empty() && records.errors.empty())
    return tl::unexpected(problem::Errors{{problem::Code::Missing,
                                           QStringLiteral("there is no batch record in it"),
                                           {path, 0, 0, {}, 1},
                                           QStringLiteral("add a row for each batch under the header row")}});
  return records;
}

problem::ExpectedAll<Run> read_run(const QString& path, RecordFormat format, const book::Book& book,
                                   const QDateTime& now) {
  auto read = read_record_file(path, format, book, now);
  if (!read) return tl::unexpected(read.error());
  return Run{batch::compute(book, std::move(read->records), now), std::move(read->errors)};
}

}  // namespace lardiner::command
