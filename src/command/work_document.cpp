// Work sheets as one PDF, one behind the other, on a printer's paper.
#include "command/work_document.h"

#include "paper/pdf.h"

namespace lardiner::command {

using problem::Errors;

problem::ExpectedAll<WorkDocument> work_document(const std::vector<facts::WorkSheet>& sheets, paper::Paper paper,
                                                 const paper::Faces& faces, const QString& title) {
  paper::PdfWriter writer(faces);
  writer.begin({title, sheets.front().language, paper::page_size(paper)});
  WorkDocument document;
  Errors errors;
  for (const facts::WorkSheet& sheet : sheets) {
    const auto pages = paper::lay_out(sheet, paper, faces);
    if (!pages) {
      errors.insert(errors.end(), pages.error().begin(), pages.error().end());
      continue;
    }
    for (const paper::Drawing& page : *pages) writer.add_page(std::nullopt, page);
    document.pages += static_cast<int>(pages->size());
  }
  if (!errors.empty()) return tl::unexpected(errors);
  const auto pdf = writer.finish();
  if (!pdf) return tl::unexpected(Errors{pdf.error()});
  document.pdf = *pdf;
  return document;
}

QString pages_text(const QString& file, int pages) {
  return QStringLiteral("%1: %2 %3\n")
      .arg(file)
      .arg(pages)
      .arg(pages == 1 ? QStringLiteral("page") : QStringLiteral("pages"));
}

}  // namespace lardiner::command
