// The demo kitchen's book and the records of its days.
#pragma once

#include "compute_kitchen.h"

namespace lardiner::batch::day {

inline const QString kDemo = QStringLiteral(LARDINER_SOURCE_DIR "/samples/kitchen");
inline const char* const kDemoNow = "2026-11-25 20:00";

inline const book::Book& demo_kitchen() {
  static const book::Book book = [] {
    const book::Reading reading = book::read_book(test_support::toml_files(kDemo), rule_files());
    if (!reading.findings.errors.empty()) FAIL(problem::text(reading.findings.errors).toStdString());
    return reading.book;
  }();
  return book;
}

/// The records of a file that can be read; `refused.csv` has others too.
inline std::vector<Record> demo_records(const char* file) {
  const QString name = QString::fromLatin1(file);
  const QByteArray bytes = file_bytes(kDemo + QStringLiteral("/records/") + name);
  return (name.endsWith(QStringLiteral(".csv")) ? read_csv(bytes, demo_kitchen(), kDemoNow)
                                                 : read_json(bytes, demo_kitchen(), kDemoNow))
      .records;
}

}  // namespace lardiner::batch::day
