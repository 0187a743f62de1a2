// How much each version of a QR code holds.
#include <algorithm>
#include <array>

#include "symbol/qr.h"

namespace lardiner::symbol {

namespace {

// ISO/IEC 18004, table 7: data codewords of each version, for the levels L, M, Q, H.
// clang-format off
constexpr std::array<std::array<int, 4>, kLargestVersion> kDataCodewords = {{
    {{19, 16, 13, 9}}, {{34, 28, 22, 16}},  // 1, 2
    {{55, 44, 34, 26}}, {{80, 64, 48, 36}},  // 3, 4
    {{108, 86, 62, 46}}, {{136, 108, 76, 60}},  // 5, 6
    {{156, 124, 88, 66}}, {{194, 154, 110, 86}},  // 7, 8
    {{232, 182, 132, 100}}, {{274, 216, 154, 122}},  // 9, 10
    {{324, 254, 180, 140}}, {{370, 290, 206, 158}},  // 11, 12
    {{428, 334, 244, 180}}, {{461, 365, 261, 197}},  // 13, 14
    {{523, 415, 295, 223}}, {{589, 453, 325, 253}},  // 15, 16
    {{647, 507, 367, 283}}, {{721, 563, 397, 313}},  // 17, 18
    {{795, 627, 445, 341}}, {{861, 669, 485, 385}},  // 19, 20
    {{932, 714, 512, 406}}, {{1006, 782, 568, 442}},  // 21, 22
    {{1094, 860, 614, 464}}, {{1174, 914, 664, 514}},  // 23, 24
    {{1276, 1000, 718, 538}}, {{1370, 1062, 754, 596}},  // 25, 26
    {{1468, 1128, 808, 628}}, {{1531, 1193, 871, 661}},  // 27, 28
    {{1631, 1267, 911, 701}}, {{1735, 1373, 985, 745}},  // 29, 30
    {{1843, 1455, 1033, 793}}, {{1955, 1541, 1115, 845}},  // 31, 32
    {{2071, 1631, 1171, 901}}, {{2191, 1725, 1231, 961}},  // 33, 34
    {{2306, 1812, 1286, 986}}, {{2434, 1914, 1354, 1054}},  // 35, 36
    {{2566, 1992, 1426, 1096}}, {{2702, 2102, 1502, 1142}},  // 37, 38
    {{2812, 2216, 1582, 1222}}, {{2956, 2334, 1666, 1276}},  // 39, 40
}};
// clang-format on

// ISO/IEC 18004, table 5: the alphanumeric mode's characters.
constexpr char kAlphanumeric[] = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";

constexpr qsizetype kModeBits = 4;

// ISO/IEC 18004, table 3: bits of the character count in versions 1 to 9, 10 to 26, 27 to 40.
struct CountBits {
  int small;
  int medium;
  int large;
};
constexpr CountBits kNumericCount = {10, 12, 14};
constexpr CountBits kAlphanumericCount = {9, 11, 13};
constexpr CountBits kByteCount = {8, 16, 16};

int count_bits(CountBits bits, int version) {
  if (version <= 9) return bits.small;
  return version <= 26 ? bits.medium : bits.large;
}

int data_codewords(int version, ErrorCorrection correction) {
  return kDataCodewords[static_cast<size_t>(version - 1)][static_cast<size_t>(correction)];
}

int smallest_version(qsizetype bits, CountBits count, ErrorCorrection correction) {
  for (int version = kSmallestVersion; version <= kLargestVersion; ++version)
    if (kModeBits + count_bits(count, version) + bits <= 8 * data_codewords(version, correction)) return version;
  return 0;
}

bool all_of(const QByteArray& content, const char* letters) {
  const QByteArrayView known(letters);
  return std::all_of(content.begin(), content.end(), [&](char letter) { return known.contains(letter); });
}

// ISO/IEC 18004, 7.4.3: three digits in 10 bits, two in 7, one in 4.
qsizetype numeric_bits(qsizetype digits) {
  constexpr std::array<qsizetype, 3> kRest = {0, 4, 7};
  return digits / 3 * 10 + kRest[static_cast<size_t>(digits % 3)];
}

// ISO/IEC 18004, 7.4.4: two characters in 11 bits, one in 6.
qsizetype alphanumeric_bits(qsizetype letters) { return letters / 2 * 11 + letters % 2 * 6; }

}  // namespace

int byte_capacity(int version, ErrorCorrection correction) {
  return (8 * data_codewords(version, correction) - static_cast<int>(kModeBits) - count_bits(kByteCount, version)) / 8;
}

int qr_version_for(qsizetype bytes, ErrorCorrection correction) {
  return smallest_version(8 * bytes, kByteCount, correction);
}

int qr_version_for(const QByteArray& content, ErrorCorrection correction) {
  if (all_of(content, "0123456789")) return smallest_version(numeric_bits(content.size()), kNumericCount, correction);
  if (all_of(content, kAlphanumeric))
    return smallest_version(alphanumeric_bits(content.size()), kAlphanumericCount, correction);
  return qr_version_for(content.size(), correction);
}

ErrorCorrection strongest_correction(const QByteArray& content) {
  using enum ErrorCorrection;
  const int smallest = qr_version_for(content, L);
  if (smallest == 0) return L;
  for (const ErrorCorrection correction : {H, Q, M})
    if (qr_version_for(content, correction) == smallest) return correction;
  return L;
}

int largest_dots_per_module(int modules_a_side, int dots_available) { return dots_available / modules_a_side; }

}  // namespace lardiner::symbol
