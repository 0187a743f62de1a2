// Any bytes as JSON Lines: read or refused with faults that have a place and a remedy, never a crash. What is read,
// Qt's reader reads too.
#include <QJsonDocument>

#include "walk.h"

extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  const QByteArray bytes(reinterpret_cast<const char*>(data), static_cast<qsizetype>(size));
  const auto read = lardiner::reader::read_json_lines(bytes, QStringLiteral("day.jsonl"));
  if (!read) {
    lardiner::fuzz::check(read.error());
    return 0;
  }
  for (const lardiner::reader::Value& record : *read) lardiner::fuzz::walk(record);
  for (const QByteArray& line : bytes.split('\n')) {
    QByteArray alone = line.startsWith("\xEF\xBB\xBF") ? line.mid(3) : line;
    alone = alone.trimmed();
    if (!alone.isEmpty()) lardiner::fuzz::must(QJsonDocument::fromJson(alone).isObject());
  }
  return 0;
}
