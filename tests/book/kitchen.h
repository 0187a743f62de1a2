// The small kitchen book that the tests of the book read, and edit to be refused.
#pragma once

#include <QFile>

#include "book/book.h"
#include "rules.h"

namespace book_test {

using lardiner::book::Reading;
using lardiner::book::SourceFile;

inline std::vector<SourceFile> kitchen() {
  std::vector<SourceFile> files;
  for (const char* name : {"kitchen.toml", "pantry.toml", "places.toml", "products.toml"}) {
    QFile file(QStringLiteral(LARDINER_SOURCE_DIR "/tests/book/kitchen/") + QLatin1String(name));
    REQUIRE(file.open(QIODevice::ReadOnly));
    files.push_back({QLatin1String(name), file.readAll()});
  }
  return files;
}

inline const std::vector<SourceFile>& rules() {
  static const std::vector<SourceFile> files = [] {
    std::vector<SourceFile> all;
    for (const char* name : {"allergens.toml", "invented-county.toml", "us-fda-food-code-2022.toml"})
      all.push_back({QLatin1String(name), rules_test::shipped(name)});
    return all;
  }();
  return files;
}

inline SourceFile& file_of(std::vector<SourceFile>& files, const QString& name) {
  for (SourceFile& file : files)
    if (file.name == name) return file;
  FAIL("no file named " << name.toStdString());
  return files.front();
}

/// `from`, which must stand in the file, replaced by `to` where it stands first after `after`.
inline void edit(SourceFile& file, const QByteArray& after, const QByteArray& from, const QByteArray& to) {
  const qsizetype start = file.bytes.indexOf(after);
  const qsizetype at = start < 0 ? -1 : file.bytes.indexOf(from, start);
  INFO(after.toStdString() << " … " << from.toStdString());
  REQUIRE(at >= 0);
  file.bytes.replace(at, from.size(), to);
}

inline Reading read(const std::vector<SourceFile>& files) { return lardiner::book::read_book(files, rules()); }

/// The kitchen with further tables at the end of its products.
inline Reading read_with(const QByteArray& tables) {
  std::vector<SourceFile> files = kitchen();
  files.push_back({QStringLiteral("more.toml"), tables});
  return read(files);
}

}  // namespace book_test
