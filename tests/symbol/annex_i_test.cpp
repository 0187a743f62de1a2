// The worked example of ISO/IEC 18004, Annex I, read out of the modules by the rules of the standard alone.
#include <array>
#include <cstdlib>
#include <vector>

#include "show.h"
#include "symbol/qr.h"

using namespace lardiner::symbol;

namespace {

constexpr int kSize = 21;  // version 1

// Format information beside the upper left finder, unmasked: two bits of level, three of mask (7.9).
int format_bits(const Matrix& code) {
  int bits = 0;
  for (int x = 0; x < 5; ++x) bits = bits * 2 + (code.dark(x, 8) ? 1 : 0);
  return bits ^ 0b10101;
}

// Data mask patterns (7.8.2, table 10).
bool masked(int pattern, int x, int y) {
  switch (pattern) {
    case 0:
      return (x + y) % 2 == 0;
    case 1:
      return y % 2 == 0;
    case 2:
      return x % 3 == 0;
    case 3:
      return (x + y) % 3 == 0;
    case 4:
      return (x / 3 + y / 2) % 2 == 0;
    case 5:
      return x * y % 2 + x * y % 3 == 0;
    case 6:
      return (x * y % 2 + x * y % 3) % 2 == 0;
    default:
      return ((x + y) % 2 + x * y % 3) % 2 == 0;
  }
}

// Finders with their separators and formats, and the timing lines of version 1.
bool fixed(int x, int y) { return (x < 9 && y < 9) || (x > 12 && y < 9) || (x < 9 && y > 12) || x == 6 || y == 6; }

// The codewords in their order: pairs of columns from the right, upwards and downwards in turn (7.7.3).
std::vector<int> codewords(const Matrix& code) {
  const int pattern = format_bits(code) & 7;
  std::vector<int> words;
  int bits = 0;
  bool upwards = true;
  for (int right = kSize - 1; right > 0; right -= right == 8 ? 3 : 2, upwards = !upwards)
    for (int step = 0; step < kSize; ++step)
      for (const int x : {right, right - 1}) {
        const int y = upwards ? kSize - 1 - step : step;
        if (fixed(x, y)) continue;
        if (bits++ % 8 == 0) words.push_back(0);
        words.back() = words.back() * 2 + (code.dark(x, y) != masked(pattern, x, y) ? 1 : 0);
      }
  return words;
}

}  // namespace

TEST_CASE("the digits 01234567 in version 1-M are the codewords of the standard's example",
          "[symbol][qr][src:iso-18004/I]") {
  const auto code = encode_qr(QByteArrayLiteral("01234567"), ErrorCorrection::M);
  REQUIRE(code);
  REQUIRE(code->size == kSize);
  CHECK(format_bits(*code) >> 3 == 0);  // level M
  // Values from memory, reproduced with an independent program.
  CHECK(codewords(*code) == std::vector<int>{0x10, 0x20, 0x0C, 0x56, 0x61, 0x80, 0xEC, 0x11, 0xEC,
                                             0x11, 0xEC, 0x11, 0xEC, 0x11, 0xEC, 0x11, 0xA5, 0x24,
                                             0xD4, 0xC1, 0xED, 0x36, 0xC7, 0x87, 0x2C, 0x55});
}

TEST_CASE("a changed digit changes the codewords", "[symbol][qr][src:iso-18004/I]") {
  const auto code = encode_qr(QByteArrayLiteral("01234568"), ErrorCorrection::M);
  CHECK(codewords(*code)[4] != 0x61);
}
