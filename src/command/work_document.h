// Work sheets as one PDF, one behind the other, on a printer's paper.
#pragma once

#include <QByteArray>
#include <vector>

#include "facts/work_sheet.h"
#include "paper/work_pages.h"

namespace lardiner::command {

struct WorkDocument {
  QByteArray pdf;
  int pages = 0;
};

/// REQUIRES: at least one sheet. Errors: those of paper::lay_out of every sheet, of PdfWriter.
problem::ExpectedAll<WorkDocument> work_document(const std::vector<facts::WorkSheet>& sheets, paper::Paper paper,
                                                 const paper::Faces& faces, const QString& title);

/// "prep.pdf: 2 pages", with its line's end.
QString pages_text(const QString& file, int pages);

}  // namespace lardiner::command
