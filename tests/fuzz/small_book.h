// The small book, without fault, over which records and orders are fuzzed.
#pragma once

#include "files.h"
#include "walk.h"

namespace lardiner::fuzz {

inline const book::Book& small_book() {
  static const book::Book kBook = [] {
    const book::Reading reading = book::read_book(files_in("tests/fuzz/book"), files_in("templates/rules"));
    for (const problem::Error& error : reading.findings.errors) qWarning("%s", qPrintable(problem::text(error)));
    must(reading.findings.errors.empty());
    return reading.book;
  }();
  return kBook;
}

}  // namespace lardiner::fuzz
