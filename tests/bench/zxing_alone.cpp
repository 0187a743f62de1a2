// Times ZXing-C++ alone on the addresses of a content file, on so many threads at once.
//   bench_zxing CONTENT THREADS
// Prints "name value" lines; the seconds are the clock's.
#include <ZXing/BitMatrix.h>
#include <ZXing/MultiFormatWriter.h>

#include <atomic>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <string>
#include <thread>
#include <vector>

namespace {

std::vector<std::wstring> addresses(const char* path) {
  std::vector<std::wstring> out;
  std::ifstream content(path);
  for (std::string line; std::getline(content, line);)
    if (line.starts_with("code ")) {
      const std::string uri = line.substr(line.rfind(' ') + 1);
      out.emplace_back(uri.begin(), uri.end());
    }
  return out;
}

// As a program would that has nothing but the library: the size and level that our labels have.
int modules(const std::wstring& uri) {
  // Of ZXing's 0 to 8. Version 5 holds this many bytes at level M (ISO/IEC 18004, table 7), and more at L.
  constexpr int kLevelL = 1, kLevelM = 3;
  constexpr std::size_t kMostAtM = 84;
  const int level = uri.size() <= kMostAtM ? kLevelM : kLevelL;
  const ZXing::MultiFormatWriter writer =
      ZXing::MultiFormatWriter(ZXing::BarcodeFormat::QRCode).setEccLevel(level).setMargin(0);
  return writer.encode(uri, 0, 0).width();
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) return 2;
  const std::vector<std::wstring> uris = addresses(argv[1]);
  if (uris.empty()) return 1;
  const auto start = std::chrono::steady_clock::now();
  std::atomic<std::size_t> next = 0;
  {
    std::vector<std::jthread> threads;
    for (int i = 0; i < std::atoi(argv[2]); ++i)
      threads.emplace_back([&] {
        for (std::size_t at = next++; at < uris.size(); at = next++)
          if (modules(uris[at]) == 0) std::abort();
      });
  }
  const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - start;
  std::printf("labels %zu\nseconds %.9g\n", uris.size(), spent.count());
  return 0;
}
