// Prints label runs to PDFs in memory, as the program does, with each QR code made on the way or beforehand.
#include "press.h"

#include "command/label_job.h"
#include "symbol/qr.h"

namespace bench {

using namespace lardiner;

paper::CodeImage encoded(const QByteArray& uri) {
  const symbol::Matrix matrix = symbol::encode_qr(uri, symbol::strongest_correction(uri)).value();
  return {matrix.size,
          QByteArray(reinterpret_cast<const char*>(matrix.bits.data()), static_cast<qsizetype>(matrix.bits.size()))};
}

paper::LabelLayout laid_out(const Workshop& workshop, const facts::LabelRun& run) {
  return paper::lay_out(run, workshop.templates.at(run.purpose), *workshop.book.medium(run.media), workshop.faces)
      .value();
}

void Press::print(const facts::LabelRun& run) {
  const paper::LabelLayout layout = laid_out(workshop_, run);
  auto& document = documents_[run.media];
  if (!document) document = std::make_unique<Document>(workshop_.faces);
  std::optional<paper::PdfWriter::Form> form;
  for (const facts::ContainerFacts& container : run.containers) {
    if (document->labels == 0) document->writer.begin({run.title, run.language, layout.size});
    if (document->labels == 0 || !form) form = document->writer.add_form(layout.shared);
    const paper::CodeImage code = codes_ ? codes_->value(container.uri) : encoded(container.uri);
    document->writer.add_page(form, paper::own_drawing(layout, container, code, workshop_.faces));
    ++labels_;
    if (++document->labels == command::LabelJob::kMostLabels) end(*document);
  }
}

void Press::end(Document& document) {
  bytes_ += document.writer.finish().value().size();
  document.labels = 0;
}

void Press::finish() {
  for (auto& [medium, document] : documents_)
    if (document->labels > 0) end(*document);
}

}  // namespace bench
