// A lot's lineage as a picture on paper: SVG or PDF.
#include "command/lineage_file.h"

#include <QTimeZone>

#include "command/files.h"
#include "command/work_run.h"
#include "paper/lineage_drawing.h"
#include "paper/pdf.h"
#include "paper/svg.h"

namespace lardiner::command {

namespace {

using problem::Errors;

facts::Lineage lineage_of(const Traced& traced, const QTimeZone& zone) {
  facts::Lineage out;
  QHash<qint64, size_t> place;
  for (const ledger::LotName& lot : traced.lineage.lots) {
    place.insert(lot.id, out.lots.size());
    if (lot.id == traced.lineage.of) out.asked = out.lots.size();
    const QDate day = lot.began ? QDateTime::fromSecsSinceEpoch(*lot.began, zone).date() : QDate();
    out.lots.push_back({lot.item, lot.code, day});
  }
  for (const ledger::Edge& edge : traced.lineage.edges)
    out.into.push_back({place.value(edge.input), place.value(edge.output), edge.assumed});
  return out;
}

problem::ExpectedAll<QByteArray> bytes_of(const WorkRun& run, const facts::LineagePicture& picture, bool pdf) {
  const auto drawn = paper::lineage_drawing(picture, paper_of({}, run.book.kitchen), *run.faces);
  if (!drawn) return tl::unexpected(drawn.error());
  if (!pdf) {
    const auto svg = paper::svg(*run.faces, drawn->drawing, drawn->size, picture.title);
    if (!svg) return tl::unexpected(Errors{svg.error()});
    return *svg;
  }
  paper::PdfWriter writer(*run.faces);
  writer.begin({picture.title, picture.language, drawn->size});
  writer.add_page(std::nullopt, drawn->drawing);
  const auto bytes = writer.finish();
  if (!bytes) return tl::unexpected(Errors{bytes.error()});
  return *bytes;
}

}  // namespace

problem::ExpectedAll<QByteArray> lineage_svg(const Options& options, const Traced& traced) {
  const auto run = read_work_run(options, QStringLiteral("lineage.svg"));
  if (!run) return tl::unexpected(run.error());
  const auto picture = facts::lineage_picture(run->setting(), lineage_of(traced, run->book.kitchen.zone));
  if (!picture) return tl::unexpected(picture.error());
  return bytes_of(*run, *picture, false);
}

Errors write_lineage(const Options& options, const Traced& traced, const QString& out, bool replace) {
  const auto run = read_work_run(options, out);
  if (!run) return run.error();
  const auto picture = facts::lineage_picture(run->setting(), lineage_of(traced, run->book.kitchen.zone));
  if (!picture) return picture.error();
  const auto bytes = bytes_of(*run, *picture, out.endsWith(QLatin1String(".pdf")));
  if (!bytes) return bytes.error();
  auto drafts = NewFolder::beside(out, NewFolder::Shape::OneFile, replace);
  if (!drafts) return {drafts.error()};
  const QString name = QStringLiteral("lineage");
  if (const auto written = drafts->write(name, *bytes); !written) return {written.error()};
  const auto kept = drafts->keep_only(name);
  return kept ? Errors{} : Errors{kept.error()};
}

}  // namespace lardiner::command
