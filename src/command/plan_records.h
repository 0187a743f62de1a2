// The batch records of a plan, ready for `labels` once the hands have made the batches.
#pragma once

#include <QByteArray>

#include "command/planned_batches.h"

namespace lardiner::command {

/// JSON Lines (src/batch/RECORDS.md), one record a batch, in the order of work: made at its planned start, with the
/// containers that it fills and the lots that it takes. Of what is bought only item and quantity are known. Who made
/// it, what was read of a thermometer, and the date of a frozen lot with the time of its thawing are left to the hands:
/// without them `labels` refuses what needs them.
QByteArray plan_records(const WorkRun& run, const plan::DayPlan& plan, const std::vector<PlannedBatch>& batches);

}  // namespace lardiner::command
