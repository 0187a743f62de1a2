// Any bytes as a picture or a PDF, and as the report of a process that read one: codes with a place, or words, never a
// crash, and soon.
#include "scan/report.h"
#include "walk.h"

namespace {

using namespace lardiner;

// So small that what takes long, or much memory, does so out of all proportion.
constexpr scan::Bounds kBounds{.most_bytes = 100'000, .most_pixels = 1'000'000, .most_pages = 3, .seconds = 2};

void say_nothing(QtMsgType, const QMessageLogContext&, const QString&) {}

void check(const scan::Code& code, int pages) {
  fuzz::must(!code.format.isEmpty() && !code.pass.isEmpty());
  fuzz::must(code.page >= 1 && code.page <= pages);
}

QByteArray told(const scan::Codes& codes) {
  QByteArray messages;
  for (const scan::Code& code : codes.codes) messages += scan::found_message(code);
  return messages + scan::end_message(codes);
}

void read(const QByteArray& bytes) {
  size_t found = 0;
  const scan::Listener listener{{}, [&](const scan::Code&) { ++found; }};
  const auto codes = scan::read_codes(bytes, QStringLiteral("tub"), kBounds, listener);
  if (!codes) return fuzz::check(codes.error());
  for (const scan::Code& code : codes->codes) check(code, codes->pages);
  const scan::Report report = scan::report_of(told(*codes));
  fuzz::must(found == codes->codes.size() && report.ended && report.codes.codes.size() == found);
}

}  // namespace

extern "C" int LLVMFuzzerInitialize(int*, char***) {
  qInstallMessageHandler(say_nothing);
  return 0;
}

extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  const QByteArray bytes(reinterpret_cast<const char*>(data), static_cast<qsizetype>(size));
  read(bytes);
  scan::report_of(bytes);
  return 0;
}
