// What a prep or an assembly sheet says, as JSON.
#pragma once

#include <QJsonObject>

#include "command/work_run.h"
#include "plan/assembly.h"
#include "plan/prep.h"

namespace lardiner::command {

/// The keys are in src/plan/ORDERS.md.
QJsonObject json_of(const WorkRun& run, const plan::Prep& prep, const facts::Ahead& ahead);
QJsonObject json_of(const WorkRun& run, const plan::Assembly& assembly, const std::vector<plan::Suffices>& suffices,
                    const facts::Ahead& ahead);

}  // namespace lardiner::command
