// The state that a container's events have left it in.
#include "facts/container_state.h"

namespace lardiner::facts {

book::State state_of(const batch::Record& record, int container, book::State at_first) {
  book::State state = at_first;
  for (const batch::Event* event : batch::events_of(record, container)) {
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
        state = book::State::Finished;
        break;
      case batch::Happening::Reheated:
        if (state == book::State::Frozen) state = book::State::Thawed;  // it left the freezer for the oven
        break;
      case batch::Happening::Opened:
      case batch::Happening::Packed:
      case batch::Happening::Discarded:
        break;
    }
  }
  return state;
}

}  // namespace lardiner::facts
