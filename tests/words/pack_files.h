// The shipped language packs, for the tests of this layer.
#pragma once

#include <QFile>

#include "show.h"
#include "words/pack.h"

namespace lardiner::words {

inline QByteArray pack_bytes(const QString& code) {
  QFile file(QStringLiteral(LARDINER_SOURCE_DIR "/templates/words/") + code + QStringLiteral(".toml"));
  if (!file.open(QIODevice::ReadOnly)) throw std::runtime_error("no language pack");
  return file.readAll();
}

/// The shipped pack; what is wrong with it fails the test.
inline Language shipped(const QString& code) {
  const auto read = read_language(pack_bytes(code), code + QStringLiteral(".toml"), code);
  if (!read) throw std::runtime_error(problem::text(read.error()).toStdString());
  return *read;
}

}  // namespace lardiner::words
