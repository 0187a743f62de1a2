// The labels that show what a printer can do on a medium, and whether the medium is the one that it has.
#include "command/test_label.h"

#include "batch/clock.h"
#include "batch/lot.h"
#include "facts/label_facts.h"
#include "gs1/check_digit.h"
#include "paper/pdf.h"
#include "paper/sheet.h"
#include "paper/sheet_guide.h"
#include "paper/test_page.h"

namespace lardiner::command {

namespace {

using problem::Errors;

constexpr int kNumber = 99;  // of the batch and of the container whose code is as long as most are

// The bytes of one label's code: of a batch with a date, as most have.
qsizetype code_bytes(const book::Kitchen& kitchen, const book::Product& product, QDate day) {
  const auto gtin = gs1::gtin14(kitchen.gtin_prefix, product.item_number);
  if (!gtin || product.code.isEmpty()) return 0;
  batch::Batch batch;
  batch.gtin = *gtin;
  batch.lot = batch::lot(kitchen, day, product.code, kNumber);
  batch.record.made_at = batch::start_of(day, kitchen.zone);
  batch.use_bys.resize(1);
  batch.use_bys.front().date = day;
  batch::Container container;
  container.serial = batch::serial(kitchen, day, kNumber, kNumber);
  const auto uri = facts::code_uri(kitchen, batch, container);
  return uri ? uri->size() : 0;
}

int longest_code(const book::Book& book, QDate day) {
  qsizetype longest = 0;
  for (const book::Product& product : book.products)
    longest = std::max(longest, code_bytes(book.kitchen, product, day));
  return static_cast<int>(longest);
}

QString medium_text(const book::Media& medium) {
  return QStringLiteral("%1: %2 × %3 mm, %4 dpi")
      .arg(medium.id)
      .arg(medium.width_as_read() / 100.0)
      .arg(medium.height_as_read() / 100.0)
      .arg(medium.dots_per_inch);
}

problem::ExpectedAll<std::vector<paper::LabelTemplate>> read_templates(const Options& options) {
  std::vector<paper::LabelTemplate> out;
  Errors errors;
  for (const QString& name : template_names(options)) {
    auto label = read_template(options, name);
    if (label)
      out.push_back(std::move(*label));
    else
      errors.insert(errors.end(), label.error().begin(), label.error().end());
  }
  if (!errors.empty()) return tl::unexpected(errors);
  return out;
}

// The labels at their places, as many to a page as the medium has; of a sheet first the guide to its places.
problem::Expected<QByteArray> drawn(const std::vector<paper::Drawing>& labels, const paper::Sheet& sheet,
                                    const paper::Faces& faces, const QString& title) {
  paper::PdfWriter writer(faces);
  writer.begin({title, QStringLiteral("en"), sheet.page});
  if (sheet.places.size() > 1 && labels.size() > 1) writer.add_page(std::nullopt, paper::sheet_guide(sheet, faces));
  for (size_t i = 0; i < labels.size();) {
    std::vector<paper::PdfWriter::Placed> placed;
    for (const paper::Placement& place : sheet.places)
      if (i < labels.size()) placed.push_back({std::nullopt, labels[i++], sheet.label, place});
    writer.add_page(placed);
  }
  return writer.finish();
}

}  // namespace

problem::ExpectedAll<TestLabels> test_labels(const Options& options, const book::Book& book, const book::Media& medium,
                                             const QDateTime& now, bool first_alone) {
  const auto templates = read_templates(options);
  if (!templates) return tl::unexpected(templates.error());
  const auto faces = read_faces(options);
  if (!faces) return tl::unexpected(faces.error());
  const paper::Sheet sheet = paper::sheet_of(medium);
  paper::TestPageWish page{medium_text(medium), sheet.label, sheet.margin, {}, 0};
  for (size_t i = 0; i < templates->size(); ++i)
    page.templates.push_back({template_names(options)[static_cast<qsizetype>(i)], &(*templates)[i]});
  page.code_bytes = longest_code(book, batch::local_day(now, book.kitchen.zone));
  auto labels = paper::test_pages(page, *faces);
  if (!labels) return tl::unexpected(Errors{labels.error()});
  if (first_alone && labels->size() > 1) labels->resize(1);
  const auto pdf = drawn(*labels, sheet, *faces, QStringLiteral("Test page, ") + medium_text(medium));
  if (!pdf) return tl::unexpected(Errors{pdf.error()});
  return TestLabels{*pdf, labels->size()};
}

}  // namespace lardiner::command
