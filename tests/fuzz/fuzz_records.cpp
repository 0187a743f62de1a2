// Any bytes as batch records, CSV or JSON Lines, over a small book that is right: every fault with words, never a
// crash.
#include <QDateTime>
#include <QTimeZone>

#include "batch/read_records.h"
#include "small_book.h"

namespace {

using namespace lardiner;

void read(const std::vector<reader::Value>& rows, bool decimal_comma) {
  batch::RecordSettings settings;
  settings.now = QDateTime(QDate(2026, 10, 7), QTime(18, 0), QTimeZone::utc());
  settings.decimal_comma = decimal_comma;
  const batch::Records records = batch::read_records(rows, fuzz::small_book(), settings);
  for (const problem::Error& error : records.errors) fuzz::must(!problem::text(error).isEmpty());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  const QByteArray bytes(reinterpret_cast<const char*>(data), static_cast<qsizetype>(size));
  if (const auto rows = reader::read_csv(bytes, QStringLiteral("batches.csv"))) read(rows->rows, rows->semicolons);
  if (const auto rows = reader::read_json_lines(bytes, QStringLiteral("day.jsonl"))) read(*rows, false);
  return 0;
}
