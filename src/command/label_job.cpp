// Collects label runs into PDFs, one for each medium (numbered when there are many), and writes all or nothing.
#include "command/label_job.h"

#include "symbol/qr.h"

namespace lardiner::command {

using problem::Code;
using problem::Errors;

/// The PDF being drawn for one medium.
struct LabelJob::Document {
  explicit Document(const paper::Faces& faces) : writer(faces) {}

  paper::PdfWriter writer;
  QString medium, language;
  paper::PageSize size;
  bool open = false;
  int labels = 0;                ///< in the file being drawn
  std::vector<Written> written;  ///< files ended
};

namespace {

QString template_name(const facts::LabelRun& run) {
  if (run.hold) return QStringLiteral("hold");
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

paper::CodeImage image(const symbol::Matrix& matrix) {
  const auto* bytes = reinterpret_cast<const char*>(matrix.bits.data());
  return {matrix.size, QByteArray(bytes, static_cast<qsizetype>(matrix.bits.size()))};
}

}  // namespace

LabelJob::LabelJob(const Options& options, const book::Book& book, const paper::Faces& faces, NewFolder& drafts,
                   QString title)
    : options_(options), book_(book), faces_(faces), drafts_(drafts), title_(std::move(title)) {}

LabelJob::~LabelJob() = default;

problem::ExpectedAll<int> LabelJob::add(const std::vector<facts::LabelRun>& runs) {
  std::vector<paper::LabelLayout> layouts;
  Errors errors;
  for (const facts::LabelRun& run : runs) {
    auto layout = lay_out(run);
    if (layout)
      layouts.push_back(std::move(*layout));
    else
      errors.insert(errors.end(), layout.error().begin(), layout.error().end());
  }
  if (!errors.empty()) return tl::unexpected(errors);
  int labels = 0;
  for (size_t i = 0; i < runs.size(); ++i) {
    const auto drawn = draw(runs[i], layouts[i]);
    if (!drawn) return drawn;
    labels += *drawn;
  }
  return labels;
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
  const book::Media* medium = book_.medium(run.media);
  if (!medium)
    return tl::unexpected(Errors{{Code::Unknown, QStringLiteral("\"%1\" is not a medium of the book").arg(run.media),
                                  run.place, QStringLiteral("name one of its [[media]]")}});
  auto layout = paper::lay_out(run, **label, *medium, faces_);
  if (layout) return layout;
  Errors errors = layout.error();
  for (problem::Error& error : errors) {
    if (error.code != Code::NoRoom) continue;
    const book::Media* fits = paper::smallest_that_fits(run, **label, book_.media, faces_);
    error.hint = fits ? QStringLiteral("\"%1\" (%2 × %3 mm) is the smallest medium of the book that holds it")
                            .arg(fits->id)
                            .arg(fits->width / 100.0)
                            .arg(fits->height / 100.0)
                      : QStringLiteral("no medium of the book holds it: add a larger one, or shorten the text");
  }
  return tl::unexpected(errors);
}

LabelJob::Document& LabelJob::document(const facts::LabelRun& run, const paper::LabelLayout& layout) {
  auto& document = documents_[run.media];
  if (!document) document = std::make_unique<Document>(faces_);
  if (!document->open) {
    document->medium = run.media;
    document->language = run.language;
    document->size = layout.size;
    document->writer.begin({title_, run.language, layout.size});
    document->open = true;
    document->labels = 0;
  }
  return *document;
}

problem::ExpectedAll<int> LabelJob::draw(const facts::LabelRun& run, const paper::LabelLayout& layout) {
  std::optional<paper::PdfWriter::Form> form;
  for (const facts::ContainerFacts& container : run.containers) {
    Document& document = this->document(run, layout);
    if (document.labels == 0 || !form) form = document.writer.add_form(layout.shared);
    std::optional<paper::CodeImage> code;
    if (!container.uri.isEmpty()) {
      const auto matrix = symbol::encode_qr(container.uri, symbol::ErrorCorrection::M);
      if (!matrix) return tl::unexpected(Errors{matrix.error()});
      code = image(*matrix);
    }
    document.writer.add_page(form, paper::own_drawing(layout, container, code, faces_));
    if (++document.labels < kMostLabels) continue;
    const auto ended = end_file(document);
    if (!ended) return tl::unexpected(Errors{ended.error()});
    form.reset();
  }
  return static_cast<int>(run.containers.size());
}

problem::Expected<int> LabelJob::end_file(Document& document) {
  document.open = false;
  const auto bytes = document.writer.finish();
  if (!bytes) return tl::unexpected(bytes.error());
  const QString number = QString::number(document.written.size() + 1).rightJustified(4, u'0');
  const QString name = QStringLiteral("%1-%2.pdf").arg(document.medium, number);
  const auto written = drafts_.write(name, *bytes);
  if (!written) return tl::unexpected(written.error());
  document.written.push_back({name, document.labels, document.medium});
  return document.labels;
}

problem::ExpectedAll<std::vector<Written>> LabelJob::finish() {
  std::vector<Written> all;
  for (auto& [medium, document] : documents_) {
    if (document->open) {
      const auto ended = end_file(*document);
      if (!ended) return tl::unexpected(Errors{ended.error()});
    }
    if (document->written.size() == 1) {  // one file needs no number
      const QString name = medium + QStringLiteral(".pdf");
      const auto renamed = drafts_.rename(document->written.front().file, name);
      if (!renamed) return tl::unexpected(Errors{renamed.error()});
      document->written.front().file = name;
    }
    all.insert(all.end(), document->written.begin(), document->written.end());
  }
  return all;
}

}  // namespace lardiner::command
