// lardiner test-page: what the printer can do on a medium, found out by printing on it.
#include "paper/test_page.h"

#include "batch/clock.h"
#include "batch/lot.h"
#include "command/commands.h"
#include "command/files.h"
#include "command/output.h"
#include "gs1/check_digit.h"
#include "paper/pdf.h"
#include "paper/sheet.h"
#include "paper/sheet_guide.h"

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
  if (sheet.places.size() > 1) writer.add_page(std::nullopt, paper::sheet_guide(sheet, faces));
  for (size_t i = 0; i < labels.size();) {
    std::vector<paper::PdfWriter::Placed> placed;
    for (const paper::Placement& place : sheet.places)
      if (i < labels.size()) placed.push_back({std::nullopt, labels[i++], sheet.label, place});
    writer.add_page(placed);
  }
  return writer.finish();
}

problem::Expected<bool> put_in_place(const TestPageOptions& wish, const QByteArray& pdf) {
  const QString name = QStringLiteral("test-page.pdf");
  auto drafts = NewFolder::beside(wish.out, NewFolder::Shape::OneFile, wish.replace);
  if (!drafts) return tl::unexpected(drafts.error());
  const auto written = drafts->write(name, pdf);
  if (!written) return tl::unexpected(written.error());
  return drafts->keep_only(name);
}

bool report(const Options& options, const TestPageOptions& wish, size_t labels) {
  if (options.json)
    return print(QJsonObject{{QStringLiteral("file"), wish.out}, {QStringLiteral("labels"), static_cast<int>(labels)}});
  return print(
      QStringLiteral("%1: %2 labels. Write the least module that your phone reads into module_dots of the medium "
                     "\"%3\".\n")
          .arg(wish.out)
          .arg(labels)
          .arg(wish.medium));
}

}  // namespace

ExitStatus test_page(const Options& options, const TestPageOptions& wish) {
  const auto book = usable_book(options);
  if (!book) return refuse(book.error(), options.json);
  const auto now = time_of_run(options, book->kitchen.zone);
  if (!now) return refuse({now.error()}, options.json);
  if (const auto error = unknown_medium(*book, wish.medium)) return refuse({*error}, options.json);
  const auto templates = read_templates(options);
  if (!templates) return refuse(templates.error(), options.json);
  const auto faces = read_faces(options);
  if (!faces) return refuse(faces.error(), options.json);

  const book::Media& medium = *book->medium(wish.medium);
  const paper::Sheet sheet = paper::sheet_of(medium);
  paper::TestPageWish page{medium_text(medium), sheet.label, sheet.margin, {}, 0};
  for (size_t i = 0; i < templates->size(); ++i)
    page.templates.push_back({template_names(options)[static_cast<qsizetype>(i)], &(*templates)[i]});
  page.code_bytes = longest_code(*book, batch::local_day(*now, book->kitchen.zone));
  const auto labels = paper::test_pages(page, *faces);
  if (!labels) return refuse({labels.error()}, options.json);
  const auto pdf = drawn(*labels, sheet, *faces, QStringLiteral("Test page, ") + medium_text(medium));
  if (!pdf) return refuse({pdf.error()}, options.json);
  const auto kept = put_in_place(wish, *pdf);
  if (!kept) return refuse({kept.error()}, options.json);
  return reported(report(options, wish, labels->size()), kDone);
}

}  // namespace lardiner::command
