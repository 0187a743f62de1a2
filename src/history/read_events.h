// Events from CSV or JSON Lines rows: every fault told at once, each at its cell.
#pragma once

#include <QStringList>
#include <vector>

#include "book/book.h"
#include "history/event.h"
#include "reader/read.h"

namespace lardiner::history {

struct ReadSettings {
  QDateTime now;               ///< nothing may have happened after this
  bool decimal_comma = false;  ///< CSV written with semicolons
};

/// What could be read; a faulty row is left out, with at least one error that names its place.
struct Events {
  std::vector<Event> events;
  problem::Errors errors;
};

/// Rows that have an `event` key (EVENTS.md). REQUIRES: that each has one.
Events read_events(const std::vector<reader::Value>& rows, const book::Book& book, const ReadSettings& settings);

/// Whether a row of a file of records is an event: it has the key `event`.
bool is_event(const reader::Value& row);

}  // namespace lardiner::history
