// Any bytes as a TOML file: read or refused with a fault that has a place and a remedy, never a crash.
#include "walk.h"

extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  const QByteArray bytes(reinterpret_cast<const char*>(data), static_cast<qsizetype>(size));
  const auto read = lardiner::reader::read_toml(bytes, QStringLiteral("book.toml"));
  if (read) {
    lardiner::fuzz::walk(*read);
  } else {
    lardiner::fuzz::check(read.error());
  }
  return 0;
}
