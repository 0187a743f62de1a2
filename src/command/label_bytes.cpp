// Labels as bytes, for who shows or prints them at once instead of keeping a file.
#include "command/label_bytes.h"

#include <QTemporaryDir>

#include "command/label_job.h"
#include "command/recording.h"
#include "paper/svg.h"
#include "symbol/qr.h"

namespace lardiner::command {

using problem::Code;
using problem::Errors;

namespace {

problem::Expected<std::optional<paper::CodeImage>> code_of(const QByteArray& uri) {
  if (uri.isEmpty()) return std::optional<paper::CodeImage>();
  const auto matrix = symbol::encode_qr(uri, symbol::strongest_correction(uri));
  if (!matrix) return tl::unexpected(matrix.error());
  const auto* bits = reinterpret_cast<const char*>(matrix->bits.data());
  return std::optional(paper::CodeImage{matrix->size, QByteArray(bits, static_cast<qsizetype>(matrix->bits.size()))});
}

// A printer has one medium loaded at a time.
Errors not_one_medium(const std::vector<facts::LabelRun>& runs) {
  QStringList media;
  for (const facts::LabelRun& run : runs)
    if (!media.contains(run.media)) media << run.media;
  if (media.size() == 1) return {};
  if (media.isEmpty())
    return {{Code::Missing, QStringLiteral("nothing of it is in the kitchen to be labelled"), {}, {}}};
  return {{Code::Conflict,
           QStringLiteral("these labels are printed on %1 media").arg(media.size()),
           {},
           QStringLiteral("name the containers of one, or one medium for all: ") + media.join(QStringLiteral(", "))}};
}

// The labels of a lot as it stands now, all of one medium; the ledger remembers that they will have been made.
problem::ExpectedAll<std::vector<facts::LabelRun>> runs_of(LabelLedger& ledger, const book::Book& book,
                                                           const std::vector<words::Language>& languages,
                                                           const LotToPrint& wish) {
  const auto batches = ledger.batches({wish.lot}, wish.containers);
  if (!batches) return tl::unexpected(batches.error());
  std::vector<facts::LabelRun> all;
  for (const batch::Batch& batch : *batches) {
    const bool held = !batch.refused.empty();
    if (held && !wish.hold) return tl::unexpected(batch.refused);
    const auto runs = facts::label_runs(book, batch, languages, {wish.hold, wish.medium});
    if (!runs) return tl::unexpected(runs.error());
    all.insert(all.end(), runs->begin(), runs->end());
    if (const Errors errors = ledger.made(batch, held); !errors.empty()) return tl::unexpected(errors);
  }
  if (const Errors errors = not_one_medium(all); !errors.empty()) return tl::unexpected(errors);
  return all;
}

// The containers as their labels come out.
std::vector<int> in_order(const std::vector<facts::LabelRun>& runs) {
  std::vector<int> numbers;
  for (const facts::LabelRun& run : runs)
    for (const facts::ContainerFacts& container : run.containers) numbers.push_back(container.number);
  return numbers;
}

// Drawn in a folder that goes away. REQUIRES: of one medium.
problem::ExpectedAll<LabelFile> drawn(const Options& options, const book::Book& book,
                                      const std::vector<facts::LabelRun>& runs, const QString& title) {
  const auto faces = read_faces(options);
  if (!faces) return tl::unexpected(faces.error());
  const QTemporaryDir folder;
  auto drafts = NewFolder::beside(folder.filePath(QStringLiteral("labels")), NewFolder::Shape::Folder, false);
  if (!drafts) return tl::unexpected(Errors{drafts.error()});
  LabelJob job(options, book, *faces, *drafts, title, 1, false);
  if (const auto added = job.add(runs); !added) return tl::unexpected(added.error());
  const auto written = job.finish();
  if (!written) return tl::unexpected(written.error());
  if (written->size() != 1)
    return tl::unexpected(Errors{{Code::Range,
                                  QStringLiteral("these are more labels than are printed at once"),
                                  {},
                                  QStringLiteral("name fewer containers")}});
  const Written& file = written->front();
  const auto bytes = read_file(drafts->draft_of(file.file));
  if (!bytes) return tl::unexpected(Errors{bytes.error()});
  return LabelFile{file.medium, file.labels, *bytes};
}

}  // namespace

problem::ExpectedAll<QByteArray> label_picture(const Options& options, const book::Book& book,
                                               const facts::LabelRun& run, const paper::Faces& faces) {
  const auto layout = lay_out_run(options, book, run, faces);
  if (!layout) return tl::unexpected(layout.error());
  if (run.containers.empty()) return QByteArray();
  const facts::ContainerFacts& first = run.containers.front();
  const auto code = code_of(first.uri);
  if (!code) return tl::unexpected(Errors{code.error()});
  paper::SvgWriter writer(faces);
  const QByteArray pictures = writer.group(layout->shared, layout->size.resolution) +
                              writer.group(paper::own_drawing(*layout, first, *code, faces), layout->size.resolution);
  const auto definitions = writer.definitions();
  if (!definitions) return tl::unexpected(Errors{definitions.error()});
  return paper::svg_tag(layout->size, run.title) + *definitions + pictures + "</svg>\n";
}

problem::ExpectedAll<LabelsToCome> labels_to_come(const Options& options, const book::Book& book,
                                                  const std::vector<words::Language>& languages, const QDateTime& now,
                                                  const LotToPrint& wish) {
  auto ledger = LabelLedger::open(options, book, now, true);
  if (!ledger) return tl::unexpected(ledger.error());
  const auto runs = runs_of(**ledger, book, languages, wish);
  if (!runs) return tl::unexpected(runs.error());
  return LabelsToCome{(*ledger)->item(), runs->front().media, in_order(*runs)};
}

problem::ExpectedAll<LabelFile> print_lot(const Options& options, const book::Book& book,
                                          const std::vector<words::Language>& languages, const QDateTime& now,
                                          const LotToPrint& wish) {
  for (int attempt = 1;; ++attempt) {
    auto ledger = LabelLedger::open(options, book, now, true);
    if (!ledger) return tl::unexpected(ledger.error());
    const auto runs = runs_of(**ledger, book, languages, wish);
    if (!runs) return tl::unexpected(runs.error());
    auto file = drawn(options, book, *runs, QStringLiteral("Labels, %1, %2").arg(book.kitchen.name, wish.lot));
    if (!file) return file;
    if (wish.of.valid()) (*ledger)->sent(wish.of, in_order(*runs));
    const Errors errors = (*ledger)->record_prints(wish.by);
    if (errors.empty()) return file;
    if (attempt == kMostAttempts || !(*ledger)->has_grown()) return tl::unexpected(errors);
  }
}

}  // namespace lardiner::command
