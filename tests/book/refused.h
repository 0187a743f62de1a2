// Books that are refused: one edit of the sound kitchen each, and everything that is then said.
#pragma once

#include <vector>

#include "kitchen.h"

namespace book_test {

struct Refused {
  const char* name;  ///< what is wrong, in plain words
  const char* file;
  const char* after;  ///< the edit is made after this
  const char* from;
  const char* to;
  const char* text;  ///< all that is said, whole
};

inline Reading read_edited(const Refused& one) {
  std::vector<SourceFile> files = kitchen();
  edit(file_of(files, QLatin1String(one.file)), one.after, one.from, one.to);
  return read(files);
}

/// Each book is refused with exactly its errors.
inline void check_refused(const std::vector<Refused>& books) {
  for (const Refused& one : books) {
    DYNAMIC_SECTION(one.name) {
      CHECK(lardiner::problem::text(read_edited(one).findings.errors) == QString::fromUtf8(one.text));
    }
  }
}

/// Each book is sound, but has exactly these gaps.
inline void check_gaps(const std::vector<Refused>& books) {
  for (const Refused& one : books) {
    DYNAMIC_SECTION(one.name) {
      const Reading reading = read_edited(one);
      CHECK(lardiner::problem::text(reading.findings.errors) == QString());
      CHECK(lardiner::problem::text(reading.findings.gaps) == QString::fromUtf8(one.text));
    }
  }
}

}  // namespace book_test
