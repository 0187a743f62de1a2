// The size and number of the pages of a PDF, as its own text says them.
#pragma once

#include <QByteArray>
#include <QString>

#include "printer/media_match.h"
#include "problem/error.h"

namespace lardiner::printer {

struct PdfPages {
  Size size;
  int count = 0;  ///< 0: it does not say so
  friend bool operator==(const PdfPages&, const PdfPages&) = default;
};

/// Reads what lies open in the file, as in every PDF of ours; `file` is for errors. Errors: Malformed where it is no
/// PDF, is cut off, or has its pages packed away; Conflict where they differ in size. Source: ISO 32000-1, 7.5 and
/// 7.7.3.
problem::Expected<PdfPages> pages_of(const QByteArray& pdf, const QString& file);

}  // namespace lardiner::printer
