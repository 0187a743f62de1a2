// Collects label runs into PDFs, one for each medium (numbered when there are many), and writes all or nothing.
#include "command/label_job.h"

#include <algorithm>

namespace lardiner::command {

using problem::Code;
using problem::Errors;

namespace {

// Labels whose codes one thread makes at a time: some hundredths of a second's work.
constexpr size_t kPiece = 64;
// Drawing and writing a document takes a ninth of the time that its codes take: one thread in eight does it, the least
// number that the others do not wait for. Each holds a whole document.
constexpr int kEncodersForOneWriter = 8;

int writers_for(int encoders) { return 1 + (encoders - 1) / kEncodersForOneWriter; }

// Of one document: as many whole sheets as hold no more labels than that, or one.
int most_places(int of_sheet) { return std::max(1, LabelJob::kMostLabels / of_sheet) * of_sheet; }

QString template_name(const facts::LabelRun& run) {
  if (run.hold) return QStringLiteral("hold");
  if (run.pad) return QStringLiteral("pad");
  if (!run.label_template.isEmpty()) return run.label_template;
  switch (run.purpose) {
    case book::Purpose::Inside:
      return QStringLiteral("inside");
    case book::Purpose::Finisher:
      return QStringLiteral("finisher");
    case book::Purpose::Sale:
      return QStringLiteral("sale");
  }
  return QStringLiteral("inside");
}

// "lid.pdf" has "lid-proof.html" beside it.
QString proof_of(const QString& pdf) { return pdf.chopped(4) + QStringLiteral("-proof.html"); }

problem::ExpectedAll<paper::LabelLayout> lay_out_on(const book::Book& book, const facts::LabelRun& run,
                                                    const paper::LabelTemplate& label, const paper::Faces& faces) {
  const book::Media* medium = book.medium(run.media);
  if (!medium)
    return tl::unexpected(Errors{{Code::Unknown, QStringLiteral("\"%1\" is not a medium of the book").arg(run.media),
                                  run.place, QStringLiteral("name one of its [[media]]")}});
  auto layout = paper::lay_out(run, label, *medium, faces);
  if (layout) return layout;
  Errors errors = layout.error();
  for (problem::Error& error : errors) {
    if (error.code != Code::NoRoom) continue;
    const book::Media* fits = paper::smallest_that_fits(run, label, book.media, faces);
    error.hint = fits ? QStringLiteral("\"%1\" (%2 × %3 mm) is the smallest medium of the book that holds it")
                            .arg(fits->id)
                            .arg(fits->width_as_read() / 100.0)
                            .arg(fits->height_as_read() / 100.0)
                      : QStringLiteral("no medium of the book holds it: add a larger one, or shorten the text");
  }
  return tl::unexpected(errors);
}

int count(const std::vector<facts::LabelRun>& runs) {
  size_t labels = 0;
  for (const facts::LabelRun& run : runs) labels += run.containers.size();
  return static_cast<int>(labels);
}

}  // namespace

LabelJob::LabelJob(const Options& options, const book::Book& book, const paper::Faces& faces, NewFolder& drafts,
                   QString title, int start, bool proof)
    : options_(options),
      book_(book),
      faces_(faces),
      drafts_(drafts),
      title_(std::move(title)),
      start_(start),
      proof_(proof),
      encoders_(options.threads, static_cast<size_t>(options.threads) * 8),
      writers_(writers_for(options.threads), static_cast<size_t>(writers_for(options.threads)) + 1) {}

LabelJob::~LabelJob() { given_up_ = true; }

int LabelJob::most_labels(const book::Media& medium) { return most_places(medium.sheet ? medium.sheet->labels() : 1); }

problem::ExpectedAll<int> LabelJob::fit(const std::vector<facts::LabelRun>& runs) {
  return lay_out_all(runs).map([&](const auto&) { return count(runs); });
}

problem::ExpectedAll<int> LabelJob::add(const std::vector<facts::LabelRun>& runs) {
  auto layouts = lay_out_all(runs);
  if (!layouts) return tl::unexpected(layouts.error());
  for (size_t i = 0; i < runs.size(); ++i) take(runs[i], std::move((*layouts)[i]));
  return count(runs);
}

problem::ExpectedAll<std::vector<paper::LabelLayout>> LabelJob::lay_out_all(const std::vector<facts::LabelRun>& runs) {
  std::vector<paper::LabelLayout> layouts;
  Errors errors = faults();
  for (const facts::LabelRun& run : runs) {
    auto layout = lay_out(run);
    if (layout)
      layouts.push_back(std::move(*layout));
    else
      errors.insert(errors.end(), layout.error().begin(), layout.error().end());
  }
  if (!errors.empty()) return tl::unexpected(std::move(errors));
  return layouts;
}

problem::ExpectedAll<const paper::LabelTemplate*> LabelJob::label_template(const facts::LabelRun& run) {
  const QString name = template_name(run);
  const auto known = templates_.find(name);
  if (known != templates_.end()) return &known->second;
  auto read = read_template(options_, name);
  if (!read) return tl::unexpected(read.error());
  return &templates_.emplace(name, std::move(*read)).first->second;
}

problem::ExpectedAll<paper::LabelLayout> LabelJob::lay_out(const facts::LabelRun& run) {
  const auto label = label_template(run);
  if (!label) return tl::unexpected(label.error());
  return lay_out_on(book_, run, **label, faces_);
}

problem::ExpectedAll<paper::LabelLayout> lay_out_run(const Options& options, const book::Book& book,
                                                     const facts::LabelRun& run, const paper::Faces& faces) {
  const auto label = read_template(options, template_name(run));
  if (!label) return tl::unexpected(label.error());
  return lay_out_on(book, run, *label, faces);
}

LabelJob::Medium& LabelJob::medium_of(const facts::LabelRun& run) {
  Medium& medium = media_[run.media];
  if (medium.sheet) return medium;
  const book::Media& of = *book_.medium(run.media);
  medium.sheet = std::make_shared<const paper::Sheet>(paper::sheet_of(of));
  if (of.sheet) medium.used = start_ - 1;
  return medium;
}

void LabelJob::take(const facts::LabelRun& run, paper::LabelLayout layout) {
  const auto shared = std::make_shared<const paper::LabelLayout>(std::move(layout));
  Medium& medium = medium_of(run);
  for (size_t from = 0; from < run.containers.size();) {
    if (!medium.open) {
      medium.open = std::make_shared<LabelDocument>();
      medium.open->settings = {title_, run.language, medium.sheet->page};
      medium.open->sheet = medium.sheet;
      medium.open->start = medium.used;
      if (proof_) medium.open->proofed = book_.medium(run.media);
    }
    LabelDocument& open = *medium.open;
    const auto room = static_cast<size_t>(most_places(medium.places()) - open.start - open.labels);
    const size_t to = from + std::min({run.containers.size() - from, room, kPiece});
    const auto label = run.containers.begin();
    add_piece(open, std::make_shared<LabelPiece>(run.title, shared,
                                                 std::vector(label + static_cast<std::ptrdiff_t>(from),
                                                             label + static_cast<std::ptrdiff_t>(to))));
    medium.used = (open.start + open.labels) % medium.places();
    if (to - from == room) end_document(run.media, medium);
    from = to;
  }
}

void LabelJob::add_piece(LabelDocument& document, std::shared_ptr<LabelPiece> piece) {
  document.labels += static_cast<int>(piece->labels().size());
  document.pieces.push_back(piece);
  encoders_.give([piece = std::move(piece), this] { piece->make_codes(given_up_); });
}

void LabelJob::end_document(const QString& name, Medium& medium) {
  const std::shared_ptr<LabelDocument> document = std::exchange(medium.open, nullptr);
  document->file =
      QStringLiteral("%1-%2.pdf").arg(name, QString::number(medium.written.size() + 1).rightJustified(4, u'0'));
  medium.written.push_back({document->file, document->labels, name, proof_ ? proof_of(document->file) : QString()});
  writers_.give([document, this] { write(*document); });
}

// On a thread of its own. Each of these keeps a writer, which has read the faces already.
void LabelJob::write(LabelDocument& document) {
  std::unique_ptr<paper::PdfWriter> writer;
  {
    const std::lock_guard lock(mutex_);
    if (!idle_writers_.empty()) {
      writer = std::move(idle_writers_.back());
      idle_writers_.pop_back();
    }
  }
  if (!writer) writer = std::make_unique<paper::PdfWriter>(faces_);
  const auto files = drawn(document, faces_, *writer, given_up_);
  auto written = files.map([](const DrawnLabels& drawn) { return drawn.pdf.size(); });
  if (files && !given_up_) written = drafts_.write(document.file, files->pdf);
  if (written && !given_up_ && proof_) written = drafts_.write(proof_of(document.file), files->proof);
  const std::lock_guard lock(mutex_);
  idle_writers_.push_back(std::move(writer));
  if (!written) faults_.push_back(written.error());
}

// A medium's only file needs no number.
problem::Expected<bool> LabelJob::rename_only(Written& written) const {
  const QString alone = written.medium + QStringLiteral(".pdf");
  auto renamed = drafts_.rename(written.file, alone);
  written.file = alone;
  if (!proof_ || !renamed) return renamed;
  renamed = drafts_.rename(written.proof, proof_of(alone));
  written.proof = proof_of(alone);
  return renamed;
}

// What failed since it was last asked.
Errors LabelJob::faults() {
  const std::lock_guard lock(mutex_);
  return std::exchange(faults_, {});
}

problem::ExpectedAll<std::vector<Written>> LabelJob::finish() {
  for (auto& [name, medium] : media_)
    if (medium.open) end_document(name, medium);
  writers_.wait();
  if (Errors errors = faults(); !errors.empty()) return tl::unexpected(std::move(errors));
  std::vector<Written> all;
  for (auto& [name, medium] : media_) {
    if (medium.written.size() == 1)
      if (const auto renamed = rename_only(medium.written.front()); !renamed)
        return tl::unexpected(Errors{renamed.error()});
    if (book_.medium(name)->sheet) {
      medium.written.back().places_left = (medium.places() - medium.used) % medium.places();
      medium.written.back().next_start = medium.used + 1;
    }
    all.insert(all.end(), medium.written.begin(), medium.written.end());
  }
  return all;
}

}  // namespace lardiner::command
