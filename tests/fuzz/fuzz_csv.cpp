// Any bytes as a CSV file: read or refused with faults that have a place and a remedy, never a crash.
#include "walk.h"

extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  const QByteArray bytes(reinterpret_cast<const char*>(data), static_cast<qsizetype>(size));
  const auto read = lardiner::reader::read_csv(bytes, QStringLiteral("batches.csv"));
  if (read) {
    for (const lardiner::reader::Value& row : read->rows) lardiner::fuzz::walk(row);
  } else {
    lardiner::fuzz::check(read.error());
  }
  return 0;
}
