// QR codes (ISO/IEC 18004): the size that a content needs, and its modules.
#pragma once

#include <QByteArray>
#include <vector>

#include "problem/error.h"

namespace lardiner::symbol {

/// Share of the code that may be destroyed: about 7, 15, 25 and 30 %.
enum class ErrorCorrection { L, M, Q, H };

/// Light modules that must stand on each side (ISO/IEC 18004, 6.3.8).
inline constexpr int kQuietZone = 4;

inline constexpr int kSmallestVersion = 1;
inline constexpr int kLargestVersion = 40;

/// Modules a side, without the quiet zone.
constexpr int modules(int version) { return 17 + 4 * version; }
/// Modules a side, with the quiet zone on both sides.
constexpr int modules_with_quiet_zone(int version) { return modules(version) + 2 * kQuietZone; }

/// Bytes that a version holds in byte mode. REQUIRES: kSmallestVersion <= version <= kLargestVersion.
int byte_capacity(int version, ErrorCorrection correction);

/// The smallest version that holds so many bytes in byte mode, 0 if none does. Exact for a content that is not digits
/// or capitals throughout, as an address of ours with an attribute never is; else the version taken may be
/// smaller.
int qr_version_for(qsizetype bytes, ErrorCorrection correction);

/// The version that `encode_qr` takes for this very content, 0 if none holds it.
int qr_version_for(const QByteArray& content, ErrorCorrection correction);

/// The strongest error correction that the smallest version for a content still has room for: what is left of that
/// version's room is no use otherwise. L where no version holds it.
ErrorCorrection strongest_correction(const QByteArray& content);

/// The dots a printer gives to each module's side: whole ones, as many as fit; 0 when the code does not fit.
/// REQUIRES: modules_a_side > 0, dots_available >= 0.
int largest_dots_per_module(int modules_a_side, int dots_available);

/// The modules of a code without its quiet zone.
struct Matrix {
  int size = 0;     ///< modules a side
  int version = 0;  ///< 1 to 40
  /// Rows from the top, each of `stride()` bytes, the leftmost module in the highest bit, 1 for dark, padding bits 0:
  /// the samples of a 1-bit image as they are.
  std::vector<quint8> bits;

  int stride() const { return (size + 7) / 8; }
  /// REQUIRES: 0 <= x < size and 0 <= y < size; x from the left, y from the top.
  bool dark(int x, int y) const { return ((bits[static_cast<size_t>(y * stride() + x / 8)] >> (7 - x % 8)) & 1) != 0; }

  friend bool operator==(const Matrix&, const Matrix&) = default;
};

/// The smallest code that holds `content`, byte for byte and without a character set switch. Refused: an empty content,
/// one that no version holds. Any number of threads may encode at once.
problem::Expected<Matrix> encode_qr(const QByteArray& content, ErrorCorrection correction);

}  // namespace lardiner::symbol
