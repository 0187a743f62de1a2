// The files of a day's plan: the sheets in working order, the picture of the start windows, the records, the figures.
#pragma once

#include "command/made_plan.h"
#include "command/work_document.h"

namespace lardiner::command {

struct PlanFile {
  QString name;
  QByteArray bytes;
  QString counted;  ///< "12 pages"; may be empty
};

/// The plan's sheet, followed by that of each making in the order of work: an assembly sheet of an assembled item, else
/// a prep sheet. Errors: every sheet that cannot be written or laid out. REQUIRES: the run has faces.
problem::ExpectedAll<WorkDocument> plan_document(const WorkRun& run, const Planned& planned, paper::Paper paper);

/// plan.pdf, windows.svg, records.jsonl, plan.json. The PDF is plan_document; errors and REQUIRES are its own.
problem::ExpectedAll<std::vector<PlanFile>> plan_files(const WorkRun& run, const Planned& planned, paper::Paper paper);

/// The names of these files.
QStringList plan_file_names();

}  // namespace lardiner::command
