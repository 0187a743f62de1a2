// What a plan cannot meet, in plain English: why, and by how much.
#pragma once

#include "plan/day_plan.h"
#include "problem/error.h"

namespace lardiner::command {

/// One of each order, at its row, and of each level that is kept, at its product; with it what the book lacks, where
/// that is why.
problem::Errors unmet_problems(const book::Book& book, const plan::DayPlan& plan);

}  // namespace lardiner::command
