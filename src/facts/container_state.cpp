// Where a container's events have brought it: its timeline in order, and the state that this left it in.
#include "facts/container_state.h"

#include <algorithm>

namespace lardiner::facts {

std::vector<const batch::Event*> timeline(const batch::Record& record, int container) {
  std::vector<const batch::Event*> events;
  for (const batch::Event& event : record.events) {
    const auto& of = event.containers;
    if (of.empty() || std::find(of.begin(), of.end(), container) != of.end()) events.push_back(&event);
  }
  std::stable_sort(events.begin(), events.end(), [](const auto* a, const auto* b) { return a->at < b->at; });
  return events;
}

book::State state_of(const batch::Record& record, int container, book::State at_first) {
  book::State state = at_first;
  for (const batch::Event* event : timeline(record, container)) {
    switch (event->what) {
      case batch::Happening::Frozen:
        state = book::State::Frozen;
        break;
      case batch::Happening::Thawed:
        state = book::State::Thawed;
        break;
      case batch::Happening::HotHeld:
        state = book::State::HotHeld;
        break;
      case batch::Happening::TimeControl:
        state = book::State::TimeControl;
        break;
      case batch::Happening::Finished:
      case batch::Happening::Reheated:
      case batch::Happening::Opened:
      case batch::Happening::Packed:
      case batch::Happening::Discarded:
        break;
    }
  }
  return state;
}

}  // namespace lardiner::facts
