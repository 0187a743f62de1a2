// The events of one container in order, and what they mean for its clocks; for use_by.cpp and its parts.
#pragma once

#include <QDateTime>
#include <optional>
#include <vector>

#include "batch/use_by.h"

namespace lardiner::batch {

/// One stay in the freezer.
struct Freezing {
  QDateTime at;
  std::optional<QDateTime> left;  ///< absent: it is still there
  problem::Place place;
};

struct Timeline {
  std::vector<Freezing> freezings;
  std::vector<QDateTime> opened, hot_held, finished;
  std::optional<Event> time_control;
  bool discarded = false;
  book::State state = book::State::Chilled;  ///< the last of the states that need a limit of their own

  bool frozen_now() const { return !freezings.empty() && !freezings.back().left; }
};

/// By their time; at equal times in the order given.
std::vector<Event> by_time(std::vector<Event> events);

/// Sorts the events and walks them; what cannot have happened is added to `errors`. Going from the freezer straight
/// into an oven, hot holding or time control leaves it as thawing does.
Timeline read_timeline(const Question& question, problem::Errors& errors);

}  // namespace lardiner::batch
