// The ledger: entries appended and never edited, and the state of every lot that follows from them.
#include "ledger/ledger.h"

#include <QFileInfo>
#include <algorithm>

#include "history/event_json.h"
#include "ledger/chain.h"
#include "ledger/project.h"
#include "ledger/schema.h"

namespace lardiner::ledger {

using history::Entry;
using history::Event;
using problem::Code;
using problem::Error;
using problem::Errors;

namespace {

constexpr size_t kMostErrors = 100;

// A chain while entries are appended to it.
struct Chain {
  qint64 id = 0;
  Head head;
};

Chain chain_of(Store& store, const QString& station) {
  Statement& row = store.statement("SELECT id, count, head FROM chain WHERE station = ?").with(station);
  if (row.one()) {
    const Chain chain{row.number(0), {station, row.number(1), row.bytes(2)}};
    row.end();
    return chain;
  }
  store.statement("INSERT INTO chain (station, count, head, recorded) VALUES (?, 0, ?, 0)")
      .with(station)
      .with(no_hash())
      .run();
  Statement& made = store.statement("SELECT last_insert_rowid()");
  const qint64 id = made.one() ? made.number(0) : 0;
  made.end();
  return {id, {station, 0, no_hash()}};
}

qint64 next_seq(Store& store) {
  Statement& row = store.statement("SELECT coalesce(max(seq), 0) + 1 FROM event");
  const qint64 seq = row.one() ? row.number(0) : 0;
  row.end();
  return seq;
}

void insert(Store& store, qint64 seq, Chain& chain, const Entry& entry) {
  const QByteArray body = history::body(entry);
  chain.head.hash = link(chain.head.hash, entry.id.station, entry.id.number, body);
  chain.head.count = entry.id.number;
  store.statement("INSERT INTO event (seq, chain, number, hash, body) VALUES (?, ?, ?, ?, CAST(? AS TEXT))")
      .with(seq)
      .with(chain.id)
      .with(entry.id.number)
      .with(chain.head.hash)
      .with(body)
      .run();
}

void keep_head(Store& store, const Chain& chain, const QDateTime& recorded) {
  store.statement("UPDATE chain SET count = ?, head = ?, recorded = ? WHERE id = ?")
      .with(chain.head.count)
      .with(chain.head.hash)
      .with(recorded.toSecsSinceEpoch())
      .with(chain.id)
      .run();
}

}  // namespace

Ledger::Ledger(std::unique_ptr<Store> store) : store_(std::move(store)), lots_(std::make_unique<Lots>(*store_)) {}

problem::Expected<Ledger> Ledger::open(const QString& path, Access access) {
  if (access == Access::Read && !QFileInfo::exists(path))
    return tl::unexpected(
        Error{Code::Missing, QStringLiteral("there is no ledger yet"), at_file(path),
              QStringLiteral("record something first (lardiner record), or name the file with --ledger")});
  problem::Expected<std::unique_ptr<Store>> store = Store::open(path, access);
  if (!store) return tl::unexpected(store.error());
  Ledger ledger(std::move(*store));
  const problem::Expected<bool> ready = access == Access::Write
                                            ? migrate(ledger.store(), [&] { return ledger.compute_anew(); })
                                            : check_version(ledger.store());
  if (!ready) return tl::unexpected(ready.error());
  return ledger;
}

// Whether what these events say may be otherwise by what was recorded since. A batch looks at many lots.
bool Ledger::outdated(const std::vector<Event>& events, qint64 read_to) {
  if (last() == read_to) return false;
  if (std::any_of(events.begin(), events.end(), [](const Event& event) { return event.made.has_value(); })) return true;
  Statement& row = store_->statement(
      "SELECT EXISTS (SELECT 1 FROM touched WHERE lot = ? AND seq > ?)"
      " OR EXISTS (SELECT 1 FROM concern WHERE lot = ? AND seq > ?)");
  const auto befallen = [&](const LotName& lot) {
    const bool is = row.with(lot.id).with(read_to).with(lot.id).with(read_to).one() && row.number(0) != 0;
    row.end();
    return is;
  };
  for (const Event& event : events) {
    const std::vector<LotName> named = lots_->named(event.lot);
    if (std::any_of(named.begin(), named.end(), befallen)) return true;
  }
  return false;
}

problem::ExpectedAll<std::vector<Entry>> Ledger::append(std::vector<Event> events, const Stamp& stamp) {
  store_->forget_fault();
  store_->begin();
  lots_->refresh();
  if (stamp.read_to && outdated(events, *stamp.read_to)) {
    store_->roll_back();
    return tl::unexpected(Errors{{Code::Conflict, QStringLiteral("something else was recorded meanwhile"),
                                  at_file(store_->path()), QStringLiteral("look again, and do it once more")}});
  }
  Errors errors;
  std::vector<Entry> entries;
  if (const std::optional<Error> behind = clock_behind(stamp.now)) errors.push_back(*behind);
  Chain chain = chain_of(*store_, stamp.station);
  qint64 seq = next_seq(*store_);
  for (Event& event : events) {
    if (store_->fault() || errors.size() >= kMostErrors) break;
    Entry entry{{stamp.station, chain.head.count + 1}, stamp.now.toUTC(), stamp.zone, std::move(event)};
    for (const Error& error : project(*store_, *lots_, seq, entry, true)) errors.push_back(error);
    insert(*store_, seq++, chain, entry);
    entries.push_back(std::move(entry));
  }
  keep_head(*store_, chain, stamp.now);
  lots_->appended();
  if (errors.empty() && !store_->fault()) store_->commit();
  if (errors.empty() && !store_->fault()) return entries;
  store_->roll_back();
  lots_->forget();
  if (store_->fault()) return tl::unexpected(Errors{*store_->fault()});  // what else was found follows from it
  problem::sort(errors);
  return tl::unexpected(errors);
}

qint64 Ledger::last() { return next_seq(*store_) - 1; }

QDateTime Ledger::last_recorded() {
  Statement& row = store_->statement("SELECT coalesce(max(recorded), 0) FROM chain");
  const qint64 last = row.one() ? row.number(0) : 0;
  row.end();
  return QDateTime::fromSecsSinceEpoch(last, Qt::UTC);
}

std::optional<Error> Ledger::clock_behind(const QDateTime& now) {
  const QDateTime last = last_recorded();
  if (last.toSecsSinceEpoch() <= now.toSecsSinceEpoch()) return std::nullopt;
  return Error{Code::Range,
               QStringLiteral("the clock stands at %1, but the last entry was recorded at %2")
                   .arg(now.toUTC().toString(Qt::ISODate), last.toString(Qt::ISODate)),
               at_file(store_->path()),
               QStringLiteral("set the clock right: nothing is recorded before what was recorded already")};
}

problem::ExpectedAll<bool> Ledger::rebuild() {
  store_->forget_fault();
  store_->begin();
  Errors errors = compute_anew();
  if (errors.empty() && !store_->fault()) store_->commit();
  if (errors.empty() && !store_->fault()) return true;
  store_->roll_back();
  lots_->forget();
  if (store_->fault()) errors.push_back(*store_->fault());
  return tl::unexpected(errors);
}

// In the transaction that is open.
Errors Ledger::compute_anew() {
  lots_->forget();
  clear_projections(*store_);
  Errors errors;
  qint64 last = 0;
  while (errors.empty() && !store_->fault()) {
    Statement& row = store_->statement(
        "SELECT seq, station, number, CAST(body AS BLOB) FROM event JOIN chain ON chain.id = event.chain WHERE seq > ?"
        " ORDER BY seq LIMIT 1");
    if (!row.with(last).one()) break;
    last = row.number(0);
    problem::Expected<Entry> entry = history::entry_of({row.text(1), row.number(2)}, row.bytes(3));
    row.end();
    if (!entry)
      errors.push_back(entry.error());
    else
      errors = project(*store_, *lots_, last, *entry, false);
  }
  return errors;
}

std::vector<Head> Ledger::heads() {
  std::vector<Head> heads;
  Statement& rows = store_->statement("SELECT station, count, head FROM chain ORDER BY station");
  while (rows.next()) heads.push_back({rows.text(0), rows.number(1), rows.bytes(2)});
  return heads;
}

}  // namespace lardiner::ledger
