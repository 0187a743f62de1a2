// A file of PINs in a folder of its own, with hashes that cost next to nothing.
#pragma once

#include <QFile>
#include <QTemporaryDir>

#include "show.h"
#include "station/pins.h"

namespace lardiner::station {

/// The least that libsodium takes, so that a test may guess thousands of times.
inline constexpr HashCost kCheap{1, 8192};

struct PinsFile {
  QTemporaryDir folder;
  QString path = folder.filePath(QStringLiteral("pins"));
  problem::Expected<Pins> pins = Pins::at(path, kCheap);

  PinsFile() { REQUIRE(pins); }

  QByteArray bytes() const {
    QFile file(path);
    REQUIRE(file.open(QIODevice::ReadOnly));
    return file.readAll();
  }
  /// In place of what is there, in the same file and so in its mode.
  void put(const QByteArray& bytes) const {
    QFile file(path);
    REQUIRE(file.open(QIODevice::WriteOnly | QIODevice::Truncate));
    REQUIRE(file.write(bytes) == bytes.size());
  }
};

inline QString refused(const problem::Expected<bool>& answer) {
  REQUIRE_FALSE(answer);
  return problem::text(answer.error());
}

}  // namespace lardiner::station
