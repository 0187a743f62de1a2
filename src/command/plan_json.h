// A day's plan as JSON; its keys are in src/plan/ORDERS.md.
#pragma once

#include <QJsonObject>

#include "command/planned_batches.h"

namespace lardiner::command {

QJsonObject json_of(const WorkRun& run, const plan::DayPlan& plan, const std::vector<PlannedBatch>& batches);

}  // namespace lardiner::command
