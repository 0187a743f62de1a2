// Any bytes as a kitchen book of one file or several: read and checked as a whole, every fault with words, never a
// crash.
#include "files.h"
#include "walk.h"

extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  using namespace lardiner;
  static const std::vector<book::SourceFile> kRules = fuzz::files_in("templates/rules");
  const QByteArray bytes(reinterpret_cast<const char*>(data), static_cast<qsizetype>(size));
  const book::Reading reading = book::read_book(fuzz::files_of(bytes), kRules);
  for (const problem::Error& error : reading.findings.errors) fuzz::must(!problem::text(error).isEmpty());
  for (const problem::Error& gap : reading.findings.gaps) fuzz::must(!problem::text(gap).isEmpty());
  return 0;
}
