// What small books in tests are read from: the TOML files of a folder, and a kitchen.toml with one medium.
#pragma once

#include <QDir>
#include <QFile>
#include <vector>

#include "book/book.h"

namespace lardiner::test_support {

/// Every .toml of a folder, in order of name; one that cannot be read is left out.
inline std::vector<book::SourceFile> toml_files(const QString& folder) {
  std::vector<book::SourceFile> files;
  const QDir directory(folder);
  for (const QString& name : directory.entryList({QStringLiteral("*.toml")}, QDir::Files, QDir::Name)) {
    QFile file(directory.filePath(name));
    if (file.open(QIODevice::ReadOnly)) files.push_back({name, file.readAll()});
  }
  return files;
}

inline QByteArray kitchen_toml() {
  return R"(name = "Test Kitchen"
address = ["1 Lane"]
time_zone = "America/New_York"
languages = ["en"]
units = "metric"
allergen_list = "us"
rule_set = "us-fda-food-code-2022"
code_address = "https://lot.kitchen.example"
gtin_prefix = "0401"
station = "A"
lot = ["station", "year", "day-of-year", "product-code", "number"]
scale_step = "1 g"
ingredient_media = "lid"
[[media]]
id = "lid"
name = "lid"
width = "100 mm"
height = "100 mm"
bears = ["chilled", "freezer", "hot"]
)";
}

}  // namespace lardiner::test_support
