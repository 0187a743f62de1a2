// How much each version of a QR code holds, and how large it prints.
#include <array>

#include "show.h"
#include "symbol/qr.h"

using namespace lardiner::symbol;
using lardiner::problem::text;

namespace {

constexpr std::array kLevels = {ErrorCorrection::L, ErrorCorrection::M, ErrorCorrection::Q, ErrorCorrection::H};

// Largest version whose code and quiet zone fit with so many dots a module.
int largest_version(int dots_available, int dots) {
  int version = 0;
  while (largest_dots_per_module(modules_with_quiet_zone(version + 1), dots_available) >= dots) ++version;
  return version;
}

}  // namespace

TEST_CASE("versions 1 to 6 hold the bytes of the standard's table", "[symbol][capacity][src:iso-18004/7]") {
  constexpr std::array<std::array<int, 4>, 6> kBytes = {
      {{17, 14, 11, 7}, {32, 26, 20, 14}, {53, 42, 32, 24}, {78, 62, 46, 34}, {106, 84, 60, 44}, {134, 106, 74, 58}}};
  for (int version = 1; version <= 6; ++version)
    for (size_t level = 0; level < 4; ++level) {
      INFO("version " << version << " level " << level);
      const int bytes = kBytes[static_cast<size_t>(version - 1)][level];
      CHECK(byte_capacity(version, kLevels[level]) == bytes);
      CHECK(qr_version_for(bytes, kLevels[level]) == version);
      CHECK(qr_version_for(bytes + 1, kLevels[level]) == version + 1);
    }
}

TEST_CASE("the encoder takes the version foretold, at the limits of every version and level",
          "[symbol][capacity][src:iso-18004/7]") {
  for (int version = 1; version <= kLargestVersion; ++version)
    for (const ErrorCorrection level : kLevels) {
      INFO("version " << version << " level " << static_cast<int>(level));
      const QByteArray full(byte_capacity(version, level), 'a');
      CHECK(encode_qr(full, level)->version == version);
      CHECK(qr_version_for(full.size(), level) == version);
      if (version < kLargestVersion) CHECK(encode_qr(full + 'a', level)->version == version + 1);
    }
}

TEST_CASE("the version foretold for capitals or digits alone is the encoder's too",
          "[symbol][capacity][src:iso-18004/7]") {
  for (const char letter : {'7', 'A', ':', 'a'})
    for (int length = 1; length <= 400; length += 3) {
      const QByteArray content(length, letter);
      INFO(content.toStdString());
      for (const ErrorCorrection level : kLevels)
        REQUIRE(encode_qr(content, level)->version == qr_version_for(content, level));
    }
}

TEST_CASE("what no version holds is refused", "[symbol][capacity][src:iso-18004/7]") {
  CHECK(qr_version_for(2953, ErrorCorrection::L) == 40);
  CHECK(qr_version_for(2954, ErrorCorrection::L) == 0);
  CHECK(encode_qr(QByteArray(2331, 'a'), ErrorCorrection::M).has_value());
  CHECK(text(encode_qr(QByteArray(2332, 'a'), ErrorCorrection::M).error()) ==
        QStringLiteral("2332 bytes are more than any QR code holds\n  at this error correction it holds 2331 bytes"));
  CHECK(text(encode_qr(QByteArray(), ErrorCorrection::M).error()) ==
        QStringLiteral("there is nothing to put into the code\n  give the address that a scan should show"));
}

TEST_CASE("a content takes its smallest version, at the strongest error correction for which that has room",
          "[symbol][capacity][src:iso-18004/7]") {
  const auto taken = [](int length) { return strongest_correction(QByteArray(length, 'a')); };
  CHECK(taken(7) == ErrorCorrection::H);
  CHECK(taken(11) == ErrorCorrection::Q);
  CHECK(taken(14) == ErrorCorrection::M);
  CHECK(taken(17) == ErrorCorrection::L);
  CHECK(taken(84) == ErrorCorrection::M);
  CHECK(taken(85) == ErrorCorrection::L);
  CHECK(taken(2953) == ErrorCorrection::L);
  CHECK(taken(2954) == ErrorCorrection::L);  // which no version holds
  for (int length = 1; length <= 400; ++length)
    CHECK(encode_qr(QByteArray(length, 'a'), taken(length))->version == qr_version_for(length, ErrorCorrection::L));
}

TEST_CASE("a code has 17 and 4 for each version modules a side, and 4 more around it",
          "[symbol][capacity][src:iso-18004/6]") {
  CHECK(modules(1) == 21);
  CHECK(modules(40) == 177);
  CHECK(modules_with_quiet_zone(6) == 49);
}

TEST_CASE("in an inch at 203 dpi a module has 3 dots up to version 10, 4 up to 6, 5 up to 3",
          "[symbol][dots][src:iso-18004/6]") {
  CHECK(largest_version(203, 3) == 10);
  CHECK(largest_version(203, 4) == 6);
  CHECK(largest_version(203, 5) == 3);
  CHECK(largest_dots_per_module(49, 195) == 3);
  CHECK(largest_dots_per_module(49, 196) == 4);
  CHECK(largest_dots_per_module(49, 48) == 0);
  CHECK(largest_dots_per_module(49, 0) == 0);
}
