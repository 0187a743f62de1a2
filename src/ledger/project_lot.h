// What an entry does to one lot: its state, and the rows that say so.
#pragma once

#include "history/event.h"
#include "ledger/holder_rows.h"
#include "ledger/lots.h"
#include "ledger/store.h"

namespace lardiner::ledger {

struct Work {
  Store& store;
  Lots& lots;
  qint64 seq;  ///< of the entry
};

/// Puts the numbers of the containers that an event reaches into it, where it names none.
void resolve_containers(const Work& work, qint64 lot, history::Event& event);

/// Lets the entry befall a lot and writes what it changes. A lot that is only named has no state: nothing is done.
problem::Errors befall(const Work& work, qint64 lot, const history::Entry& entry);

/// Remembers that the entry concerns the lot.
void touch(const Work& work, qint64 lot);

/// What the row of a lot says of its state.
struct State {
  qint64 held = 0;  ///< holds that are not released
  bool refused = false;
  std::optional<qint64> cooling_due;  ///< seconds since 1970 UTC
  friend bool operator==(const State&, const State&) = default;
};
State state_of(const history::Lot& lot);

/// Writes what the rows of a lot and of its containers say otherwise than `before` and before.
void write_state(const Work& work, qint64 id, const history::Lot& lot, const State& before, Dated dated);

}  // namespace lardiner::ledger
