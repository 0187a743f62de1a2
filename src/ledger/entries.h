// Entries out of the store: by lot, by day, by name, in the order in which they were recorded here.
#pragma once

#include <QDate>
#include <functional>
#include <optional>
#include <vector>

#include "history/event.h"
#include "ledger/store.h"

namespace lardiner::ledger {

/// An entry, and its place in this file.
struct Recorded {
  qint64 seq = 0;
  history::Entry entry;
};

/// The one that began a lot, then those that befell it; a correction may be older than the receipt. Of a batch made
/// FROM the lot there is none: that stands in `input`. Makings have their facts: the first, and those of what is in
/// it that were recorded later; the others are brief. Errors: a body
/// that cannot be read, by the entry's name.
problem::Expected<std::vector<Recorded>> entries_of_lot(Store& store, qint64 lot);

/// Those of a day of the kitchen, by when they happened; briefly.
problem::Expected<std::vector<Recorded>> entries_of_day(Store& store, QDate day);

/// The same of a range of days, each handed to `take` until it returns false.
problem::Expected<bool> each_of_days(Store& store, QDate from, QDate to,
                                     const std::function<bool(const Recorded&)>& take);

/// One by its name, whole; nothing where there is none.
problem::Expected<std::optional<Recorded>> entry_named(Store& store, const history::EntryId& id);

/// One by its place, whole.
problem::Expected<std::optional<Recorded>> entry_at(Store& store, qint64 seq);

}  // namespace lardiner::ledger
