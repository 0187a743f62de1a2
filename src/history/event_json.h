// The body of an entry: the exact text that is hashed and kept.
#pragma once

#include <QByteArray>

#include "history/event.h"

namespace lardiner::history {

/// Compact JSON, UTF-8, keys sorted, without floats; instants in UTC. What is empty is left out. `id` is not in it: the
/// chain holds it apart. The same entry always gives the same bytes.
QByteArray body(const Entry& entry);

/// Reads a body back: `entry` with `id` as given. Errors name the key.
problem::Expected<Entry> entry_of(const EntryId& id, const QByteArray& body);

/// The same without the fixed facts of a batch (event.made stays empty): much faster for lists.
problem::Expected<Entry> brief_entry_of(const EntryId& id, const QByteArray& body);

}  // namespace lardiner::history
