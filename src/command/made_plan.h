// A day's plan with its batches: from the orders and what is on hand, as `plan` and the station make it.
#pragma once

#include <QJsonObject>

#include "command/on_hand_found.h"
#include "command/planned_batches.h"
#include "command/records.h"
#include "facts/work_sheet.h"

namespace lardiner::command {

/// What a plan is made from.
struct PlanTold {
  std::vector<plan::Order> orders;
  OnHandFound on_hand;
  int number = 1;  ///< of the first batch; 0: numbers are written in by hand
};

/// All that is known of a plan.
struct Planned {
  plan::DayPlan plan;
  std::vector<PlannedBatch> batches;
  facts::WorkSheet sheet;  ///< the plan's own
  QJsonObject json;
  QString counted;  ///< what is on hand from, a line; empty: a file
};

/// Errors: every fault of the file, among them what is due before `from`; what the run's faces do not have.
problem::ExpectedAll<std::vector<plan::Order>> read_orders_file(const WorkRun& run, const QString& path,
                                                                RecordFormat format, const QDateTime& from);

/// Errors: more batches than numbers; a sheet that cannot be written.
problem::ExpectedAll<Planned> made_plan(const WorkRun& run, PlanTold told);

}  // namespace lardiner::command
