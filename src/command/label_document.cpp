// One PDF of labels in the making: its labels in order, in pieces whose codes are made side by side.
#include "command/label_document.h"

#include "command/stop.h"
#include "symbol/qr.h"

namespace lardiner::command {

namespace {

paper::CodeImage image(const symbol::Matrix& matrix) {
  const auto* bytes = reinterpret_cast<const char*>(matrix.bits.data());
  return {matrix.size, QByteArray(bytes, static_cast<qsizetype>(matrix.bits.size()))};
}

problem::Expected<LabelCodes> codes_of(const std::vector<facts::ContainerFacts>& labels, const GivenUp& given_up) {
  LabelCodes codes(labels.size());
  for (size_t i = 0; i < labels.size() && !given_up && !stop_asked(); ++i) {
    if (labels[i].uri.isEmpty()) continue;
    const auto matrix = symbol::encode_qr(labels[i].uri, symbol::strongest_correction(labels[i].uri));
    if (!matrix) return tl::unexpected(matrix.error());
    codes[i] = image(*matrix);
  }
  return codes;
}

// Puts labels on pages, as many as the sheet has places; a page that is one label is drawn without more ado.
class Pages {
 public:
  Pages(const LabelDocument& document, paper::PdfWriter& writer)
      : sheet_(*document.sheet),
        one_label_(sheet_.places.size() == 1 && sheet_.page == sheet_.label && !sheet_.places.front().turned),
        place_(static_cast<size_t>(document.start)),
        writer_(writer) {}

  paper::PdfWriter::Form form(const paper::LabelLayout& layout) { return writer_.add_form(layout.shared, layout.size); }

  void add(paper::PdfWriter::Form form, paper::Drawing own, paper::PageSize size) {
    if (one_label_) return writer_.add_page(form, own);
    page_.push_back({form, std::move(own), size, sheet_.places[place_]});
    if (++place_ == sheet_.places.size()) end();
  }

  void end() {
    if (!page_.empty()) writer_.add_page(page_);
    page_.clear();
    place_ = 0;
  }

 private:
  const paper::Sheet& sheet_;
  bool one_label_;
  size_t place_;
  paper::PdfWriter& writer_;
  std::vector<paper::PdfWriter::Placed> page_;
};

problem::Expected<DrawnLabels> files_of(paper::PdfWriter& writer, std::optional<paper::Proof>& proof) {
  const auto pdf = writer.finish();
  if (!pdf) return tl::unexpected(pdf.error());
  if (!proof) return DrawnLabels{*pdf, {}};
  const auto page = proof->finish();
  if (!page) return tl::unexpected(page.error());
  return DrawnLabels{*pdf, *page};
}

}  // namespace

void LabelPiece::make_codes(const GivenUp& given_up) {
  problem::Expected<LabelCodes> codes = codes_of(labels_, given_up);
  const std::lock_guard lock(mutex_);
  codes_ = std::move(codes);
  made_.notify_all();
}

const problem::Expected<LabelCodes>& LabelPiece::codes() {
  std::unique_lock lock(mutex_);
  made_.wait(lock, [this] { return codes_.has_value(); });
  return *codes_;
}

problem::Expected<DrawnLabels> drawn(LabelDocument& document, const paper::Faces& faces, paper::PdfWriter& writer,
                                     const GivenUp& given_up) {
  writer.begin(document.settings);
  Pages pages(document, writer);
  std::optional<paper::Proof> proof;
  if (document.proofed) proof.emplace(faces, *document.proofed, QStringLiteral("Proof. ") + document.settings.title);
  const paper::LabelLayout* layout = nullptr;
  std::optional<paper::PdfWriter::Form> form;
  for (std::shared_ptr<LabelPiece>& piece : document.pieces) {
    const problem::Expected<LabelCodes>& codes = piece->codes();
    if (!codes) return tl::unexpected(codes.error());
    if (given_up || stop_asked()) return DrawnLabels();
    if (&piece->layout() != layout) {
      layout = &piece->layout();
      form = pages.form(*layout);
      if (proof) proof->add_run(piece->run(), *layout);
    }
    for (size_t i = 0; i < piece->labels().size(); ++i) {
      paper::Drawing own = paper::own_drawing(*layout, piece->labels()[i], (*codes)[i], faces);
      if (proof) proof->add_label(own);
      pages.add(*form, std::move(own), layout->size);
    }
  }
  pages.end();
  return files_of(writer, proof);
}

}  // namespace lardiner::command
