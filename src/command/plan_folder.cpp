// The files of a day's plan: the sheets in working order, the picture of the start windows, the records, the figures.
#include "command/plan_folder.h"

#include <QJsonDocument>

#include "command/plan_records.h"
#include "facts/assembly_sheet.h"
#include "facts/plan_sheet.h"
#include "facts/prep_sheet.h"
#include "paper/svg.h"

namespace lardiner::command {

namespace {

using problem::Errors;
using problem::ExpectedAll;

const QString kSheets = QStringLiteral("plan.pdf");
const QString kWindows = QStringLiteral("windows.svg");
const QString kRecords = QStringLiteral("records.jsonl");
const QString kFigures = QStringLiteral("plan.json");

ExpectedAll<facts::WorkSheet> assembly_sheet_of(const WorkRun& run, book::Weighing& weighing,
                                                const PlannedBatch& batch) {
  const std::int64_t units = measure::in_unit(batch.put_up, measure::Unit::Piece).num();
  const auto assembly = plan::assembly(run.book, weighing, *batch.making->product, units);
  if (!assembly) return tl::unexpected(assembly.error());
  return facts::assembly_sheet(run.setting(), *assembly, {}, batch.ahead);
}

ExpectedAll<facts::WorkSheet> prep_sheet_of(const WorkRun& run, book::Weighing& weighing, const PlannedBatch& batch) {
  const auto scaled = plan::scaled(run.book, weighing, *batch.making->product, batch.making->makings);
  if (!scaled) return tl::unexpected(scaled.error());
  return facts::prep_sheet(run.setting(), plan::prep(run.book, *scaled), batch.ahead);
}

ExpectedAll<std::vector<facts::WorkSheet>> sheets_of(const WorkRun& run, const Planned& planned) {
  std::vector<facts::WorkSheet> sheets{planned.sheet};
  Errors errors;
  book::Weighing weighing(run.book);
  for (const PlannedBatch& batch : planned.batches) {
    const bool assembled = batch.put_up.dimension == measure::Dimension::Count &&
                           batch.making->product->kind == book::ProductKind::AssembledItem;
    const auto sheet = assembled ? assembly_sheet_of(run, weighing, batch) : prep_sheet_of(run, weighing, batch);
    if (sheet)
      sheets.push_back(*sheet);
    else
      errors.insert(errors.end(), sheet.error().begin(), sheet.error().end());
  }
  if (!errors.empty()) return tl::unexpected(errors);
  return sheets;
}

ExpectedAll<QByteArray> windows_svg(const WorkRun& run, const Planned& planned) {
  const auto spans = facts::start_windows(run.setting(), planned.plan, run.now);
  if (!spans) return tl::unexpected(spans.error());
  const auto picture = paper::spans_picture(*spans, *run.faces);
  if (!picture) return tl::unexpected(picture.error());
  const auto bytes = paper::svg(*run.faces, picture->drawing, picture->size, spans->caption);
  if (!bytes) return tl::unexpected(Errors{bytes.error()});
  return *bytes;
}

QString title(const WorkRun& run) {
  return QStringLiteral("Plan, %1, %2").arg(run.book.kitchen.name, run.day().toString(Qt::ISODate));
}

QString counted(qsizetype count, const char* noun) {
  return QStringLiteral("%1 %2%3").arg(count).arg(QLatin1String(noun), count == 1 ? QString() : QStringLiteral("s"));
}

}  // namespace

QStringList plan_file_names() { return {kSheets, kWindows, kRecords, kFigures}; }

ExpectedAll<WorkDocument> plan_document(const WorkRun& run, const Planned& planned, paper::Paper paper) {
  const auto sheets = sheets_of(run, planned);
  if (!sheets) return tl::unexpected(sheets.error());
  return work_document(*sheets, paper, *run.faces, title(run));
}

ExpectedAll<std::vector<PlanFile>> plan_files(const WorkRun& run, const Planned& planned, paper::Paper paper) {
  const auto document = plan_document(run, planned, paper);
  if (!document) return tl::unexpected(document.error());
  const auto windows = windows_svg(run, planned);
  if (!windows) return tl::unexpected(windows.error());
  return std::vector<PlanFile>{{kSheets, document->pdf, counted(document->pages, "page")},
                               {kWindows, *windows, {}},
                               {kRecords, plan_records(run, planned.plan, planned.batches),
                                counted(static_cast<qsizetype>(planned.batches.size()), "record")},
                               {kFigures, QJsonDocument(planned.json).toJson(QJsonDocument::Indented), {}}};
}

}  // namespace lardiner::command
