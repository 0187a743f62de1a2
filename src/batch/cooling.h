// Cooling is a critical limit: its readings against the rule set's stages.
#pragma once

#include <QString>
#include <vector>

#include "batch/record.h"
#include "book/rule_set.h"

namespace lardiner::batch {

struct Cooling {
  enum class State { NotNeeded, Pending, Passed, Missed };
  State state = State::NotNeeded;
  QString why;  ///< "21 °C (70 °F) was not reached within 2 h: at 14:05 it read …"
};

/// Readings in any order. A stage is passed when a reading at or below its `to` lies within its time from the first
/// reading at or above its `from` (or from the end of the cook where no such reading is given). A corrective action (reheat and
/// cool once) is judged by the readings after the reheat.
Cooling cooling(const std::vector<book::CoolingStage>& stages, const Record& record, const QDateTime& now);

/// Whether one of the readings meets one of the ways of `minimum`.
bool cooked_enough(const std::vector<CookReading>& readings, const book::CookMinimum& minimum, const book::RuleSet& rules);

}  // namespace lardiner::batch
