// Batch records from a file or standard input, read and computed.
#include "command/records.h"

#include "batch/read_records.h"
#include "command/files.h"
#include "reader/read.h"

namespace lardiner::command {

namespace {

bool is_json(const QString& path, RecordFormat format, const QByteArray& bytes) {
  if (format != RecordFormat::Guess) return format == RecordFormat::JsonLines;
  if (path.endsWith(QLatin1String(".jsonl")) || path.endsWith(QLatin1String(".json"))) return true;
  if (path.endsWith(QLatin1String(".csv"))) return false;
  const QByteArray start = bytes.left(64).trimmed();
  return start.startsWith('{') || start.startsWith("\xEF\xBB\xBF{");
}

struct Rows {
  std::vector<reader::Value> rows;
  bool decimal_comma = false;
};

problem::ExpectedAll<Rows> read_rows(const QByteArray& bytes, const QString& path, bool json) {
  if (json) {
    auto rows = reader::read_json_lines(bytes, path);
    if (!rows) return tl::unexpected(rows.error());
    return Rows{std::move(*rows), false};
  }
  auto rows = reader::read_csv(bytes, path);
  if (!rows) return tl::unexpected(rows.error());
  return Rows{std::move(rows->rows), rows->semicolons};
}

}  // namespace

problem::ExpectedAll<Run> read_run(const QString& path, RecordFormat format, const book::Book& book,
                                   const QDateTime& now) {
  const auto bytes = read_file(path);
  if (!bytes) return tl::unexpected(problem::Errors{bytes.error()});
  const auto rows = read_rows(*bytes, path, is_json(path, format, *bytes));
  if (!rows) return tl::unexpected(rows.error());
  batch::Records records = batch::read_records(rows->rows, book, {now, rows->decimal_comma});
  if (records.records.empty() && records.errors.empty())
    return tl::unexpected(problem::Errors{{problem::Code::Missing,
                                           QStringLiteral("there is no batch record in it"),
                                           {path, 0, 0, {}, 1},
                                           QStringLiteral("add a row for each batch under the header row")}});
  return Run{batch::compute(book, records.records, now), std::move(records.errors)};
}

}  // namespace lardiner::command
