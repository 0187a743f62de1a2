// The files of a day's plan: the sheets in working order, the picture of the start windows, the records, the figures.
#pragma once

#include <QJsonObject>

#include "command/planned_batches.h"
#include "facts/work_sheet.h"

namespace lardiner::command {

/// All that is known of a plan.
struct Planned {
  plan::DayPlan plan;
  std::vector<PlannedBatch> batches;
  facts::WorkSheet sheet;  ///< the plan's own
  QJsonObject json;
  QString counted;  ///< what is on hand from, a line; empty: a file
};

struct PlanFile {
  QString name;
  QByteArray bytes;
  QString counted;  ///< "12 pages"; may be empty
};

/// plan.pdf, windows.svg, records.jsonl, plan.json. In the PDF the plan's sheet is followed by that of each making in
/// the order of work: an assembly sheet of an assembled item, else a prep sheet. Errors: every sheet that cannot be
/// written or laid out. REQUIRES: the run has faces.
problem::ExpectedAll<std::vector<PlanFile>> plan_files(const WorkRun& run, const Planned& planned, paper::Paper paper);

/// The names of these files.
QStringList plan_file_names();

}  // namespace lardiner::command
