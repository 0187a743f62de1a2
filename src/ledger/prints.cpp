// Labels that a printer was asked for: which are not done, how each ended, and what each printer is loaded with.
#include "ledger/prints.h"

#include <algorithm>

#include "ledger/entries.h"

namespace lardiner::ledger {

using history::Entry;
using history::EntryId;
using history::Kind;

namespace {

constexpr int kHashBytes = 4;

// A number of the first row; nothing where there is none.
std::optional<qint64> number(Statement& row) {
  if (!row.one()) return std::nullopt;
  const qint64 value = row.number(0);
  row.end();
  return value;
}

QByteArray hash_of(Store& store, qint64 seq) {
  Statement& row = store.statement("SELECT hash FROM event WHERE seq = ?").with(seq);
  const QByteArray hash = row.one() ? row.bytes(0) : QByteArray();
  row.end();
  return hash;
}

// What became of it: the sending tells in which order the labels come, the end how many came.
std::optional<problem::Error> add_rest(Store& store, const Recorded& asked, Print& print) {
  const auto lot = number(store.statement("SELECT lot FROM touched WHERE seq = ?").with(asked.seq));
  if (!lot) return std::nullopt;
  const auto entries = entries_of_lot(store, *lot);
  if (!entries) return entries.error();
  for (const Recorded& one : *entries) {
    const history::Event& event = one.entry.event;
    if (!(event.of == asked.entry.id)) continue;
    if (event.kind == Kind::PrintSent) print.sent = true;
    if (event.kind == Kind::PrintSent) print.containers = event.containers;
    if (event.kind == Kind::PrintDone) print.done = one.entry;
  }
  return std::nullopt;
}

problem::Expected<Print> print_of(Store& store, const Recorded& asked) {
  const QByteArray hash = hash_of(store, asked.seq).left(kHashBytes).toHex();
  Print print{asked.entry, asked.entry.id.text() + u'-' + QString::fromLatin1(hash), false,
              asked.entry.event.containers, std::nullopt};
  if (const auto error = add_rest(store, asked, print)) return tl::unexpected(*error);
  return print;
}

template <class Found>
problem::Expected<Found> unless_faulty(const Store& store, Found found) {
  if (store.fault()) return tl::unexpected(*store.fault());
  return found;
}

}  // namespace

history::Event of_print(Kind kind, const Print& print) {
  history::Event event;
  event.kind = kind;
  event.lot = print.asked.event.lot;
  event.item = print.asked.event.item;
  return event;
}

problem::Expected<std::vector<Print>> open_prints(Store& store) {
  std::vector<qint64> open;
  Statement& rows = store.statement("SELECT seq FROM print ORDER BY seq");
  while (rows.next()) open.push_back(rows.number(0));
  std::vector<Print> prints;
  for (const qint64 seq : open) {
    const auto asked = entry_at(store, seq);
    if (!asked) return tl::unexpected(asked.error());
    if (!*asked) continue;
    const auto print = print_of(store, **asked);
    if (!print) return tl::unexpected(print.error());
    prints.push_back(*print);
  }
  return unless_faulty(store, std::move(prints));
}

problem::Expected<std::optional<Print>> print_named(Store& store, const EntryId& id) {
  const auto asked = entry_named(store, id);
  if (!asked) return tl::unexpected(asked.error());
  if (!*asked || (*asked)->entry.event.kind != Kind::PrintAsked) return std::optional<Print>();
  const auto print = print_of(store, **asked);
  if (!print) return tl::unexpected(print.error());
  return unless_faulty(store, std::optional(*print));
}

bool is_open_print(Store& store, const EntryId& id) {
  const auto found = number(store
                                .statement("SELECT print.seq FROM print JOIN event ON event.seq = print.seq"
                                           " JOIN chain ON chain.id = event.chain WHERE station = ? AND number = ?")
                                .with(id.station)
                                .with(id.number));
  return found || store.fault();
}

problem::Expected<std::optional<Entry>> loaded(Store& store, const QString& printer) {
  const auto seq = number(store.statement("SELECT seq FROM loaded WHERE printer = ?").with(printer));
  if (!seq) return unless_faulty(store, std::optional<Entry>());
  const auto found = entry_at(store, *seq);
  if (!found) return tl::unexpected(found.error());
  return *found ? std::optional((*found)->entry) : std::nullopt;
}

}  // namespace lardiner::ledger
