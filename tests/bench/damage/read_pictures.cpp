// What ZXing-C++, zbar and the program itself read in pictures that come one after another on standard input.
//   damage_readers read: a line "WIDTH HEIGHT CONTENT" and the bytes of 8-bit greys; out: "1 0", where ZXing-C++ as it
//     comes and zbar as it comes each found a QR code of just that content
//   damage_readers read-all: the same with a third answer, symbol::read_codes
//   damage_readers passes: the same; out: "0 1 9.3 31.0", where ZXing-C++ as it comes found that content, and where the
//     program found it and no other, by all its passes; then the milliseconds of each
//   damage_readers find: the same with any CONTENT; out: left, top, right and bottom edge of the one QR code, in
//     pixels, and its content; "none" unless there is one that zbar reads too
#include <ZXing/ReadBarcode.h>

#include <algorithm>
#include <chrono>
#include <iostream>
#include <string>
#include <string_view>

#include "scan/passes.h"
#include "symbol/read.h"
#include "zbar_reader.h"

using namespace lardiner;

namespace {

struct Picture {
  symbol::Grey grey;
  std::string content;
};

bool next(Picture& picture) {
  symbol::Grey& grey = picture.grey;
  if (!(std::cin >> grey.width >> grey.height >> picture.content)) return false;
  std::cin.get();
  grey.stride = grey.width;
  grey.bytes.resize(qsizetype{grey.width} * grey.height);
  return bool(std::cin.read(grey.bytes.data(), grey.bytes.size()));
}

// One call with nothing told: every format, every default.
bool zxing_reads(const symbol::Grey& grey, const std::string& content) {
  const ZXing::ImageView view(reinterpret_cast<const uint8_t*>(grey.bytes.constData()), grey.width, grey.height,
                              ZXing::ImageFormat::Lum, grey.stride);
  const auto results = ZXing::ReadBarcodes(view);
  return std::any_of(results.begin(), results.end(), [&](const ZXing::Result& result) {
    return result.isValid() && result.format() == ZXing::BarcodeFormat::QRCode && result.text() == content;
  });
}

std::vector<symbol::Found> qr_codes(const symbol::Grey& grey) {
  auto codes = symbol::read_codes(grey);
  std::erase_if(codes, [](const symbol::Found& code) { return code.format != QLatin1String("QRCode"); });
  return codes;
}

bool program_reads(const symbol::Grey& grey, const std::string& content) {
  const auto codes = qr_codes(grey);
  return std::any_of(codes.begin(), codes.end(),
                     [&](const symbol::Found& code) { return code.text.toStdString() == content; });
}

bool passes_read(const symbol::Grey& grey, const std::string& content) {
  constexpr int kSeconds = 30;
  const scan::Deadline deadline(kSeconds);
  auto codes = scan::read_plainly(grey);
  scan::read_harder(grey, codes, deadline);
  return !codes.empty() && std::all_of(codes.begin(), codes.end(),
                                       [&](const scan::Code& code) { return code.text.toStdString() == content; });
}

template <class Read>
double milliseconds(const Read& read) {
  const auto start = std::chrono::steady_clock::now();
  read();
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

void compare(const symbol::Grey& grey, const std::string& content) {
  bool plain = false, passes = false;
  const double plain_time = milliseconds([&] { plain = zxing_reads(grey, content); });
  const double passes_time = milliseconds([&] { passes = passes_read(grey, content); });
  std::cout << plain << ' ' << passes << ' ' << plain_time << ' ' << passes_time << std::endl;
}

void find(const symbol::Grey& grey, bench::ZbarReader& zbar) {
  const auto codes = qr_codes(grey);
  if (codes.size() != 1 || !zbar.reads(grey, codes[0].text.toStdString())) {
    std::cout << "none" << std::endl;
    return;
  }
  const QPoint first = codes[0].corners[0], last = codes[0].corners[2];
  std::cout << first.x() << ' ' << first.y() << ' ' << last.x() << ' ' << last.y() << ' ' << codes[0].text.toStdString()
            << std::endl;
}

}  // namespace

int main(int count, char** words) {
  const std::string_view mode = count == 2 ? words[1] : "";
  if (mode != "read" && mode != "read-all" && mode != "passes" && mode != "find") return 2;
  bench::ZbarReader zbar;
  for (Picture picture; next(picture);) {
    const auto& [grey, content] = picture;
    if (mode == "find") {
      find(grey, zbar);
      continue;
    }
    if (mode == "passes") {
      compare(grey, content);
      continue;
    }
    std::cout << zxing_reads(grey, content) << ' ' << zbar.reads(grey, content);
    if (mode == "read-all") std::cout << ' ' << program_reads(grey, content);
    std::cout << std::endl;
  }
}
