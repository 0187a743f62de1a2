// The batches of a plan before they are made: their numbers and lots, what they take and fill, whom they are for.
#pragma once

#include <vector>

#include "command/work_run.h"
#include "plan/day_plan.h"

namespace lardiner::command {

/// What a planned batch is made of besides what is bought: a lot from where it stands, or another batch of the plan.
struct PlannedInput {
  const plan::OnHand* lot = nullptr;  ///< or else
  size_t batch = 0;
  measure::Quantity quantity;
};

struct PlannedBatch {
  const plan::PlannedMaking* making = nullptr;
  int number = 0;
  measure::Quantity put_up;  ///< of its output, see plan::put_up
  std::vector<PlannedInput> inputs;
  facts::Ahead ahead;  ///< of the day of its start; its lot is empty where the product has no code for lots
};

/// In the order of work, numbered from `first` (0: without numbers and lots, which are written in by hand); lots are of
/// the day on which a making starts. REQUIRES: `plan`, of the run's book, outlives them.
std::vector<PlannedBatch> planned_batches(const WorkRun& run, const plan::DayPlan& plan, int first);

}  // namespace lardiner::command
