// The PINs and strong words of the kitchen's people, as hashes in a file of their own.
#pragma once

#include <QString>
#include <memory>
#include <optional>

#include "problem/error.h"

namespace lardiner::station {

/// What one hash of Argon2id costs.
struct HashCost {
  unsigned long long passes;
  size_t bytes;
};

/// libsodium's INTERACTIVE limits of Argon2id: 2 passes over 64 MiB. A PIN of six figures has a million values: whoever
/// steals the file tries them all, and this is what makes that cost hours instead of a second. More would keep people
/// waiting at a tablet: it takes a tenth of a second here and about half a second on a small board.
inline constexpr HashCost kHashCost{2, 64 * 1024 * 1024};

inline constexpr int kFewestFigures = 4;
inline constexpr int kMostFigures = 12;
inline constexpr int kShortestStrongWord = 8;
inline constexpr int kLongestStrongWord = 128;
/// Most letters that initials here may have; the book allows fewer.
inline constexpr int kMostInitials = 16;

/// The file is read anew for each question, so that what one program sets another knows at once; nothing of it is kept.
/// Every function may be called from several threads. One hash is made at a time, for each takes its 64 MiB.
///
/// Errors of all functions: Code::Missing where there is no file, which is never taken for one without PINs;
/// Code::Machine where it cannot be read or written, is damaged, or may be opened by others than its owner. No error
/// repeats a PIN, a word or a hash.
class Pins {
 public:
  /// `path`: the file, outside the book and the ledger; it need not be there yet. Makes one hash, and so fails where
  /// libsodium cannot start or has not the memory.
  static problem::Expected<Pins> at(const QString& path, HashCost cost = kHashCost);
  ~Pins();
  Pins(Pins&&) noexcept;

  /// From now on that person's PIN, in place of the one before. Makes the file where there is none, for its owner alone
  /// (mode 0600); it is written whole or not at all. Refused: what is not 4 to 12 figures, and those that anybody would
  /// try first (1234, 2468, 0000, 1212, 2026). Sessions that are open end: `mark`.
  problem::Expected<bool> set(const QString& initials, const QString& pin);
  /// The same for the strong word: 8 to 128 characters, not figures alone, at least 4 different ones.
  problem::Expected<bool> set_strong(const QString& initials, const QString& word);
  /// Takes out the PIN and the strong word of a person who has left; false when there was none.
  problem::Expected<bool> forget(const QString& initials);

  /// Whether that is the person's PIN, or word. One whose hash is not there is answered alike, and after as long.
  /// Without the memory for a hash the answer is no: libsodium 1.0.18 does not tell it from a wrong PIN.
  problem::Expected<bool> verify(const QString& initials, const QString& pin) const;
  problem::Expected<bool> verify_strong(const QString& initials, const QString& word) const;

  /// Whether the person has a PIN.
  problem::Expected<bool> has(const QString& initials) const;
  /// Another one once the person's PIN or strong word was set anew or taken out: a digest of their hashes.
  problem::Expected<QByteArray> mark(const QString& initials) const;

 private:
  struct Inside;
  explicit Pins(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

/// Why a PIN or a strong word is not taken, with the remedy; nothing when it is.
std::optional<problem::Error> refused_pin(const QString& pin);
std::optional<problem::Error> refused_strong_word(const QString& word);

}  // namespace lardiner::station
