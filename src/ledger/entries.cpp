// Entries out of the store: by lot, by day, by name, in the order in which they were recorded here.
#include "ledger/entries.h"

#include <algorithm>

#include "history/event_json.h"

namespace lardiner::ledger {

using history::Entry;
using history::EntryId;
using problem::Error;

namespace {

// Rows of seq, station, number, body.
struct Row {
  qint64 seq;
  EntryId id;
  QByteArray body;
};

Row row_of(const Statement& statement) {
  return {statement.number(0), {statement.text(1), statement.number(2)}, statement.bytes(3)};
}

std::vector<Row> rows_of(Statement& statement) {
  std::vector<Row> rows;
  while (statement.next()) rows.push_back(row_of(statement));
  return rows;
}

Error unreadable(const Store& store, const EntryId& id, Error error) {
  error.what = QStringLiteral("entry %1 cannot be read: %2").arg(id.text(), error.what);
  error.code = problem::Code::Machine;
  error.place = at_file(store.path());
  error.hint = QStringLiteral("lardiner verify tells whether it was changed; restore a backup that verifies");
  return error;
}

problem::Expected<Recorded> recorded(const Store& store, const Row& row, bool whole) {
  const problem::Expected<Entry> entry =
      whole ? history::entry_of(row.id, row.body) : history::brief_entry_of(row.id, row.body);
  if (!entry) return tl::unexpected(unreadable(store, row.id, entry.error()));
  return Recorded{row.seq, *entry};
}

problem::Expected<std::optional<Recorded>> only(Store& store, Statement& statement) {
  const std::vector<Row> rows = rows_of(statement);
  if (store.fault()) return tl::unexpected(*store.fault());
  if (rows.empty()) return std::optional<Recorded>();
  const problem::Expected<Recorded> found = recorded(store, rows.front(), true);
  if (!found) return tl::unexpected(found.error());
  return std::optional<Recorded>(*found);
}

}  // namespace

problem::Expected<std::vector<Recorded>> entries_of_lot(Store& store, qint64 lot) {
  Statement& statement = store.statement(
      "SELECT event.seq, station, number, CAST(body AS BLOB) FROM touched JOIN event ON event.seq = touched.seq"
      " JOIN chain ON chain.id = event.chain JOIN lot ON lot.id = touched.lot WHERE touched.lot = ?"
      " ORDER BY event.seq IS NOT lot.seq, event.seq");
  const std::vector<Row> rows = rows_of(statement.with(lot));
  if (store.fault()) return tl::unexpected(*store.fault());
  std::vector<Recorded> entries;
  for (const Row& row : rows) {
    problem::Expected<Recorded> entry = recorded(store, row, entries.empty());
    const bool late_making = entry && !entries.empty() && entry->entry.event.kind == history::Kind::Made;
    if (late_making) entry = recorded(store, row, true);
    if (!entry) return tl::unexpected(entry.error());
    entries.push_back(std::move(*entry));
  }
  return entries;
}

problem::Expected<bool> each_of_days(Store& store, QDate from, QDate to,
                                     const std::function<bool(const Recorded&)>& take) {
  Statement& statement = store.statement(
      "SELECT seq, station, number, CAST(body AS BLOB) FROM happened JOIN event USING (seq)"
      " JOIN chain ON chain.id = event.chain WHERE day BETWEEN ? AND ? ORDER BY day, seq");
  statement.with(from.toJulianDay()).with(to.toJulianDay());
  while (statement.next()) {
    const Row row = row_of(statement);
    const problem::Expected<Recorded> entry = recorded(store, row, false);
    if (entry && take(*entry)) continue;
    statement.end();
    if (!entry) return tl::unexpected(entry.error());
    return false;
  }
  if (store.fault()) return tl::unexpected(*store.fault());
  return true;
}

problem::Expected<std::vector<Recorded>> entries_of_day(Store& store, QDate day) {
  std::vector<Recorded> entries;
  const problem::Expected<bool> read = each_of_days(store, day, day, [&](const Recorded& entry) {
    entries.push_back(entry);
    return true;
  });
  if (!read) return tl::unexpected(read.error());
  std::stable_sort(entries.begin(), entries.end(),
                   [](const Recorded& a, const Recorded& b) { return a.entry.event.at < b.entry.event.at; });
  return entries;
}

problem::Expected<std::optional<Recorded>> entry_named(Store& store, const EntryId& id) {
  return only(store, store
                         .statement("SELECT seq, station, number, CAST(body AS BLOB) FROM event"
                                    " JOIN chain ON chain.id = event.chain WHERE station = ? AND number = ?")
                         .with(id.station)
                         .with(id.number));
}

problem::Expected<std::optional<Recorded>> entry_at(Store& store, qint64 seq) {
  return only(store, store
                         .statement("SELECT seq, station, number, CAST(body AS BLOB) FROM event"
                                    " JOIN chain ON chain.id = event.chain WHERE seq = ?")
                         .with(seq));
}

}  // namespace lardiner::ledger
