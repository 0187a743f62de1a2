// Cooling is a critical limit: its readings against the rule set's stages.
#pragma once

#include <QDateTime>
#include <QString>
#include <optional>
#include <vector>

#include "batch/record.h"
#include "book/rule_set.h"

namespace lardiner::batch {

struct Cooling {
  enum class State { NotNeeded, Pending, Passed, Missed };
  State state = State::NotNeeded;
  QString why;                                  ///< "21 °C (70 °F) was not reached within 2 h: at 14:05 it read …"
  std::optional<QDateTime> due = std::nullopt;  ///< of Pending: when the next stage must be reached
};

/// Of cooked food (`rules.cooling`). Readings in any order; each is judged in its own scale. The clock starts at the
/// last of the first readings that are at or above the first stage's `from`: the food cannot have passed it sooner;
/// without one, at the end of the cook, else of the making. The cook ends with its last reading at or above that
/// `from`; readings of the cooling before it do not count. A stage is passed by a reading at or below its `to` within
/// its time of that start, unless the food is warmer again: the last stage's at any later reading, the others' at one
/// after their time. Food that was cooled, reheated and has readings after that is judged by them too. Missed is what a
/// reading shows, or what has no such reading when its time is over at `now`; until then it is Pending. A corrective
/// action (reheat and cool once) that names who took it, with a Reheated event of all containers that meets `rules`'
/// minimum for hot holding, has the readings after the reheat judged afresh. Times in `why` are the zone's of the
/// record's made_at.
Cooling cooling(const book::RuleSet& rules, const Record& record, const QDateTime& now);

/// Of food made from room-temperature ingredients (`rules.cooling_from_ambient`): the same, but the clock starts at the
/// end of the making (its start, where no end is written) or at the first reading, whichever is the earlier; there is
/// no reheating.
Cooling cooling_from_ambient(const book::RuleSet& rules, const Record& record, const QDateTime& now);

/// Whether one of the readings meets one of the ways of `minimum`. One from a microwave oven must meet the rule set's
/// microwave minimum, standing time included, and the temperature of one of the ways.
bool cooked_enough(const std::vector<CookReading>& readings, const book::CookMinimum& minimum,
                   const book::RuleSet& rules);

}  // namespace lardiner::batch
