// Lots as the entries leave them: found by code, read from the entries once, and kept while nobody else writes.
#include "ledger/lots.h"

#include <algorithm>

#include "history/event_json.h"
#include "ledger/entries.h"

namespace lardiner::ledger {

using history::Entry;
using history::Kind;
using history::Lot;

namespace {

constexpr size_t kMostKept = 4096;
constexpr qint64 kMostFollowed = 100;  // entries, each read for itself

// What batches took from its containers does not stand in its own entries.
void add_taken(Lot& lot, const std::vector<HolderRow>& rows) {
  for (size_t at = 0; at < std::min(rows.size(), lot.holders.size()); ++at) {
    history::Holder& holder = lot.holders[at];
    holder.where = static_cast<history::Where>(rows[at].whereabouts);
    holder.left.amount = rows[at].remains;
    holder.holds.amount = rows[at].holds;
    holder.superseded = rows[at].superseded != 0;
    holder.seen = QDateTime::fromSecsSinceEpoch(rows[at].seen, Qt::UTC);
  }
}

qint64 last_entry(Store& store) {
  Statement& row = store.statement("SELECT coalesce(max(seq), 0) FROM event");
  const qint64 last = row.one() ? row.number(0) : 0;
  row.end();
  return last;
}

// Not what is made of others, what comes in, or what reaches further lots by a place, a note or what they hold.
bool befalls_one_lot(Kind kind) {
  constexpr Kind kAll[] = {Kind::Moved,     Kind::Cooled,  Kind::Frozen,    Kind::Thawed,
                           Kind::Opened,    Kind::HotHeld, Kind::Finished,  Kind::TimeControl,
                           Kind::Reheated,  Kind::Split,   Kind::Used,      Kind::Counted,
                           Kind::Discarded, Kind::Printed, Kind::Reprinted, Kind::Voided};
  return std::find(std::begin(kAll), std::end(kAll), kind) != std::end(kAll);
}

}  // namespace

LotName lot_name(const Statement& row) {
  LotName name{row.number(0), row.text(1), row.text(2), row.text(3), static_cast<LotKind>(row.number(4)), std::nullopt};
  if (!row.absent(5)) name.began = row.number(5);
  return name;
}

QHash<QString, qint64> lots_of_items(Store& store, LotKind kind) {
  QHash<QString, qint64> counts;
  Statement& rows = store.statement("SELECT item, count(*) FROM lot WHERE kind = ? GROUP BY item");
  rows.with(static_cast<qint64>(kind));
  while (rows.next()) counts.insert(rows.text(0), rows.number(1));
  return counts;
}

std::vector<LotName> Lots::named(const QString& code) {
  const auto known = names_.constFind(code);
  if (known != names_.constEnd()) return *known;
  if (static_cast<size_t>(names_.size()) >= kMostKept) names_.clear();
  std::vector<LotName> found;
  Statement& rows =
      store_.statement("SELECT id, code, item, name, kind, began FROM lot WHERE code = ? ORDER BY item").with(code);
  while (rows.next()) found.push_back(lot_name(rows));
  return *names_.insert(code, std::move(found));
}

std::optional<LotName> Lots::named(const QString& code, const QString& item) {
  const std::vector<LotName> found = named(code);
  const auto lot = std::find_if(found.begin(), found.end(), [&](const LotName& one) { return one.item == item; });
  return lot == found.end() ? std::nullopt : std::optional(*lot);
}

std::optional<LotName> Lots::named(qint64 id) {
  Statement& row = store_.statement("SELECT id, code, item, name, kind, began FROM lot WHERE id = ?").with(id);
  if (!row.one()) return std::nullopt;
  const LotName name = lot_name(row);
  row.end();
  return name;
}

std::optional<qint64> Lots::id(const QString& code, const QString& item) {
  const std::optional<LotName> lot = named(code, item);
  return lot ? std::optional(lot->id) : std::nullopt;
}

bool Lots::any_recalled() {
  if (any_recalled_) return *any_recalled_;
  Statement& row = store_.statement("SELECT EXISTS (SELECT 1 FROM concern WHERE kind = ?)");
  const bool some = row.with(static_cast<qint64>(Kind::RecallOpened)).one() && row.number(0) != 0;
  row.end();
  any_recalled_ = some;
  return some;
}

bool Lots::any_additions() {
  if (any_additions_) return *any_additions_;
  Statement& row = store_.statement("SELECT EXISTS (SELECT 1 FROM declares_besides)");
  const bool some = row.one() && row.number(0) != 0;
  row.end();
  any_additions_ = some;
  return some;
}

Lot* Lots::lot(qint64 id) {
  const auto found = kept_.constFind(id);
  if (found != kept_.constEnd()) {
    recent_.splice(recent_.begin(), recent_, (*found)->used);
    return &(*found)->lot;
  }
  std::optional<Lot> lot = read(id);
  if (!lot) return nullptr;
  std::vector<HolderRow> rows = holder_rows(store_, id);
  add_taken(*lot, rows);
  Lot& kept = keep(id, std::move(*lot));
  kept_[id]->rows = std::move(rows);
  return &kept;
}

Lot& Lots::keep(qint64 id, Lot lot) {
  if (recent_.size() >= kMostKept) {
    kept_.remove(recent_.back());
    recent_.pop_back();
  }
  recent_.push_front(id);
  const auto kept = std::make_shared<Kept>(Kept{std::move(lot), {}, recent_.begin(), ++readings_});
  kept_.insert(id, kept);
  return kept->lot;
}

std::vector<HolderRow>& Lots::rows(qint64 id) { return kept_[id]->rows; }

void Lots::refresh() {
  Statement& asked = store_.statement("PRAGMA data_version");
  const qint64 now = asked.one() ? asked.number(0) : -1;
  asked.end();
  if (now == version_ && !unreadable_) return;
  ++refreshed_;
  const qint64 last = last_entry(store_);  // what comes after it is seen to at the next call
  if (version_ < 0 || unreadable_ || !forget_named_alone(last)) forget();
  version_ = now;
  seen_ = last;
}

// Where each new entry befell the lot that it names and nothing else, what was read of the others is still so.
bool Lots::forget_named_alone(qint64 last) {
  if (last <= seen_ || last - seen_ > kMostFollowed) return false;
  for (qint64 seq = seen_ + 1; seq <= last; ++seq) {
    const auto entry = entry_at(store_, seq);
    if (!entry || !*entry || !befalls_one_lot((*entry)->entry.event.kind)) return false;
    for (const LotName& name : named((*entry)->entry.event.lot)) {
      const std::shared_ptr<Kept> kept = kept_.take(name.id);
      if (kept) recent_.erase(kept->used);
    }
  }
  return true;
}

void Lots::forget() {
  kept_.clear();
  recent_.clear();
  names_.clear();
  any_recalled_.reset();
  any_additions_.reset();
  unreadable_.reset();
}

// The entry that began it, then those that befell it in the order in which they were recorded.
std::optional<Lot> Lots::read(qint64 id) {
  std::optional<Lot> lot;
  const tl::expected<std::vector<Recorded>, problem::Error> entries = entries_of_lot(store_, id);
  if (!entries) {
    unreadable_ = entries.error();
    return std::nullopt;
  }
  for (const Recorded& recorded : *entries) {
    if (!lot) {
      const problem::Expected<Lot> begun = history::begin(recorded.entry);
      if (!begun) {
        unreadable_ = begun.error();
        return std::nullopt;
      }
      lot = *begun;
      continue;
    }
    const problem::Errors errors = history::happen(*lot, recorded.entry);
    if (errors.empty()) continue;
    unreadable_ = errors.front();
    return std::nullopt;
  }
  if (!lot) return std::nullopt;
  add_concerns(id, *lot);
  return lot;
}

void Lots::add_concerns(qint64 id, Lot& lot) {
  lot.recalls.clear();
  Statement& rows = store_.statement(
      "SELECT chain.station, event.number FROM concern JOIN event USING (seq) JOIN chain ON chain.id = event.chain"
      " WHERE concern.lot = ? AND concern.kind = ? ORDER BY seq");
  rows.with(id).with(static_cast<qint64>(Kind::RecallOpened));
  while (rows.next()) lot.recalls.push_back({rows.text(0), rows.number(1)});
}

}  // namespace lardiner::ledger
