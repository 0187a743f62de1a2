// A fuzz input as several files: the parts between lines of "----".
#pragma once

#include <QByteArray>
#include <QDir>
#include <QFile>
#include <vector>

#include "book/book.h"

namespace lardiner::fuzz {

/// The parts as kitchen.toml, 1.toml, 2.toml and so on.
inline std::vector<book::SourceFile> files_of(const QByteArray& bytes) {
  std::vector<book::SourceFile> files;
  for (qsizetype begin = 0; begin >= 0 && begin <= bytes.size();) {
    const qsizetype mark = bytes.indexOf("\n----\n", begin);
    const QByteArray part = bytes.mid(begin, mark < 0 ? -1 : mark + 1 - begin);
    files.push_back(
        {files.empty() ? QStringLiteral("kitchen.toml") : QStringLiteral("%1.toml").arg(files.size()), part});
    begin = mark < 0 ? -1 : mark + 6;
  }
  return files;
}

/// Every file of a folder of the source tree, in order of name.
inline std::vector<book::SourceFile> files_in(const char* folder) {
  std::vector<book::SourceFile> files;
  const QDir directory(QStringLiteral(LARDINER_SOURCE_DIR "/") + QString::fromUtf8(folder));
  for (const QString& name : directory.entryList({QStringLiteral("*.toml")}, QDir::Files, QDir::Name)) {
    QFile file(directory.filePath(name));
    if (file.open(QIODevice::ReadOnly)) files.push_back({name, file.readAll()});
  }
  return files;
}

}  // namespace lardiner::fuzz
