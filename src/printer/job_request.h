// What a job asks of a printer, held against what the printer can do: pure.
#pragma once

#include <QString>
#include <optional>

#include "printer/media_match.h"
#include "printer/printers.h"
#include "problem/error.h"

namespace lardiner::printer {

struct PageRange {
  int first = 1, last = 1;
  friend bool operator==(PageRange, PageRange) = default;
};

struct JobWish {
  QString name;  ///< by which it is found at the printer
  Size page;
  std::optional<int> dots_per_inch;  ///< that the document was drawn for
  int copies = 1;
  std::optional<PageRange> pages;  ///< absent: all
};

/// What is sent beside the document.
struct JobTerms {
  QString name;
  Match medium;
  std::optional<int> dots_per_inch;  ///< printer-resolution, where the printer states its own
  int copies = 1;
  std::optional<PageRange> pages;
  bool by_media_size = false;  ///< media-col, else the medium's name
  bool unscaled = false, one_sided = false;
};

/// Refused (Machine), each with what the printer has: no PDF, no such medium, another resolution, too many copies, no
/// ranges of pages, no jobs now. A resolution that is a whole multiple of the document's is as good: each
/// of its dots is then so many of the printer's. So is one at least twice as fine, which moves no edge by a quarter of
/// a dot: it is left to the printer.
problem::Expected<JobTerms> terms_for(const JobWish& wish, const Printer& printer);

}  // namespace lardiner::printer
