// What an entry changes in the computed tables: run as it is appended, and again when they are rebuilt.
#include "ledger/project.h"

#include <algorithm>

#include "history/corrected_input.h"
#include "ledger/contradictions.h"
#include "ledger/further_allergens.h"
#include "ledger/nearest.h"
#include "ledger/on_hand.h"
#include "ledger/project_begin.h"
#include "ledger/project_lot.h"
#include "ledger/reach.h"

namespace lardiner::ledger {

using history::Entry;
using history::EntryId;
using history::Event;
using history::Kind;
using problem::Code;
using problem::Error;
using problem::Errors;

namespace {

Error unknown_entry(const Event& event) {
  return {Code::Unknown, QStringLiteral("there is no entry %1").arg(event.of.text()), event.source,
          QStringLiteral("write the entry as history shows it: A-123")};
}

Error only_named(const Event& event) {
  return {Code::Conflict, QStringLiteral("lot %1 is known only from what was made of it").arg(event.lot), event.source,
          QStringLiteral("record its receipt first")};
}

Error which_item(const Event& event, const std::vector<LotName>& found) {
  QStringList items;
  for (const LotName& lot : found) items += lot.item;
  return {Code::Conflict, QStringLiteral("lot %1 is of %2").arg(event.lot, items.join(QStringLiteral(" and of "))),
          event.source, QStringLiteral("write which item it is of")};
}

std::vector<qint64> ids(Statement& rows) {
  std::vector<qint64> ids;
  while (rows.next()) ids.push_back(rows.number(0));
  return ids;
}

std::optional<qint64> seq_of(Store& store, const EntryId& id) {
  Statement& row =
      store.statement("SELECT seq FROM event JOIN chain ON chain.id = event.chain WHERE station = ? AND number = ?")
          .with(id.station)
          .with(id.number);
  if (!row.one()) return std::nullopt;
  const qint64 seq = row.number(0);
  row.end();
  return seq;
}

class Projecting {
 public:
  Projecting(const Work& work, Entry& entry, bool resolve)
      : work_(work), store_(work.store), entry_(entry), event_(entry.event), resolve_(resolve) {}

  Errors run() {
    remember_day();
    act();
    return std::move(errors_);
  }

 private:
  void act() {
    switch (event_.kind) {
      case Kind::Received:
        return receive();
      case Kind::Made:
        return make();
      case Kind::RecallOpened:
        return open_recall();
      case Kind::Release:
      case Kind::RecallClosed:
        return close_concern();
      case Kind::Correction:
        return correct();
      case Kind::Hold:
        return hold();
      case Kind::Arrived:
        if (event_.lot.isEmpty()) return arrive();
        return one_lot();
      case Kind::Counted:
        one_lot();
        return remember_count();
      case Kind::PrintAsked:
        one_lot();
        return remember_print();
      case Kind::PrintSent:
      case Kind::PrintDone:
        one_lot();
        return go_on_with_print();
      case Kind::MediumLoaded:
        return remember_medium();
      case Kind::PlaceTemperature:
      case Kind::Check:
      case Kind::Review:
        return;
      case Kind::Reading:
      case Kind::CorrectiveAction:
        if (!event_.lot.isEmpty()) one_lot();
        return;
      default:
        one_lot();
    }
  }

  void add(const Errors& errors) { errors_.insert(errors_.end(), errors.begin(), errors.end()); }

  // The calendar day in the kitchen's zone on which it happened; of a review the day that was reviewed.
  void remember_day() {
    store_.statement("INSERT INTO happened (day, seq, kind) VALUES (?, ?, ?)")
        .with(event_.day.value_or(history::local_day(entry_)).toJulianDay())
        .with(work_.seq)
        .with(static_cast<qint64>(event_.kind))
        .run();
  }

  Error unknown() {
    return unknown_lot(store_, event_.lot, event_.source, QStringLiteral("record its making or its receipt first"));
  }

  // The lot that the event names: one, for its item tells two suppliers' apart.
  std::optional<LotName> named() {
    if (!event_.item.isEmpty()) {
      std::optional<LotName> lot = work_.lots.named(event_.lot, event_.item);
      if (!lot) errors_.push_back(unknown());
      return lot;
    }
    const std::vector<LotName> found = work_.lots.named(event_.lot);
    if (found.size() == 1) return found.front();
    errors_.push_back(found.empty() ? unknown() : which_item(event_, found));
    return std::nullopt;
  }

  void one_lot() {
    const std::optional<LotName> lot = named();
    if (!lot) return;
    if (lot->kind == LotKind::Named) return errors_.push_back(only_named(event_));
    if (resolve_) resolve_containers(work_, lot->id, event_);
    compare({lot->id});
    if (errors_.empty()) add(befall(work_, lot->id, entry_));
  }

  void compare(const std::vector<qint64>& lots) {
    if (resolve_) add(contradictions(work_, event_, lots));
  }

  void each(const std::vector<qint64>& lots) {
    for (const qint64 id : lots) add(befall(work_, id, entry_));
  }

  void concern(const std::vector<qint64>& lots) {
    for (const qint64 id : lots)
      store_.statement("INSERT OR IGNORE INTO concern (seq, lot, kind) VALUES (?, ?, ?)")
          .with(work_.seq)
          .with(id)
          .with(static_cast<qint64>(event_.kind))
          .run();
    each(lots);
  }

  void hold() {
    if (!event_.lot.isEmpty()) {
      if (const std::optional<LotName> lot = named()) concern({lot->id});
      return;
    }
    concern(lots_in(store_, event_.place));
  }

  // What is still on its way: the rest of it has arrived by itself, was refused, or came back.
  std::vector<qint64> of_note() {
    std::vector<qint64> found =
        ids(store_.statement("SELECT DISTINCT lot FROM holder WHERE note = ? AND note <> '' ORDER BY lot")
                .with(event_.note));
    std::erase_if(found, [&](qint64 id) {
      const history::Lot* lot = work_.lots.lot(id);
      return lot && std::none_of(lot->holders.begin(), lot->holders.end(), [&](const history::Holder& holder) {
               return holder.where == history::Where::Dispatched && holder.note == event_.note && !holder.not_taken;
             });
    });
    if (found.empty())
      errors_.push_back({Code::Unknown, QStringLiteral("nothing is on its way with the note %1").arg(event_.note),
                         event_.source, QStringLiteral("write the number that stands on the dispatch note")});
    return found;
  }

  // So may a making that is recorded after what was made of its lot.
  void make() {
    const std::optional<LotName> known = work_.lots.named(event_.lot, event_.item);
    add(begin_lot(work_, entry_));
    if (known && errors_.empty()) shorten(known->id);
  }

  void shorten(qint64 lot) {
    if (const std::optional<batch::StatedEnd> end = history::end_given(event_)) concern(bounded_by(lot, *end));
  }

  // A receipt that is recorded after what was made of it may tell an earlier date than was believed.
  void receive() {
    if (const auto id = resolve_ ? work_.lots.id(event_.lot, event_.item) : std::nullopt) compare({*id});
    add(begin_lot(work_, entry_));
    const auto id = errors_.empty() ? work_.lots.id(event_.lot, event_.item) : std::nullopt;
    if (id) shorten(*id);
  }

  void arrive() {
    const std::vector<qint64> lots = of_note();
    compare(lots);
    if (errors_.empty()) each(lots);
  }

  void remember_print() {
    store_.statement("INSERT INTO print (seq, printer, sent) VALUES (?, ?, 0)")
        .with(work_.seq)
        .with(event_.printer)
        .run();
  }

  // A print is sent once and ends once, whoever asks for it at the same time.
  void go_on_with_print() {
    const std::optional<qint64> of = seq_of(store_, event_.of);
    if (!of) return errors_.push_back(unknown_entry(event_));
    Statement& row = store_.statement("SELECT sent FROM print WHERE seq = ?").with(*of);
    const bool open = row.one();
    const bool sent = open && row.number(0) != 0;
    row.end();
    if (!open || (sent && event_.kind == Kind::PrintSent))
      return errors_.push_back({Code::Conflict,
                                QStringLiteral("print %1 is %2 already")
                                    .arg(event_.of.text(), open ? QStringLiteral("sent") : QStringLiteral("over")),
                                event_.source, QStringLiteral("look at how it stands now")});
    const bool over = event_.kind == Kind::PrintDone;
    store_.statement(over ? "DELETE FROM print WHERE seq = ?" : "UPDATE print SET sent = 1 WHERE seq = ?")
        .with(*of)
        .run();
  }

  void remember_medium() {
    store_.statement("INSERT OR REPLACE INTO loaded (printer, seq) VALUES (?, ?)")
        .with(event_.printer)
        .with(work_.seq)
        .run();
  }

  void open_recall() {
    work_.lots.recalled();
    std::vector<qint64> from;
    for (const LotName& lot : work_.lots.named(event_.lot))
      if (event_.item.isEmpty() || lot.item == event_.item) from.push_back(lot.id);
    if (from.empty()) return errors_.push_back(unknown());
    std::vector<qint64> all = reach(store_, from, Direction::Forward);
    for (const qint64 lot : from)
      for (const qint64 id : perhaps_in(store_, work_.lots, lot)) all.push_back(id);
    concern(all);
  }

  void close_concern() {
    const std::optional<qint64> of = seq_of(store_, event_.of);
    if (!of) return errors_.push_back(unknown_entry(event_));
    std::vector<qint64> lots = ids(store_.statement("SELECT lot FROM concern WHERE seq = ? ORDER BY lot").with(*of));
    if (!event_.lot.isEmpty()) {
      const std::optional<LotName> only = named();
      std::erase_if(lots, [&](qint64 id) { return !only || id != only->id; });
    }
    if (lots.empty() && errors_.empty())
      errors_.push_back({Code::Conflict, QStringLiteral("entry %1 holds nothing any more").arg(event_.of.text()),
                         event_.source, QStringLiteral("write the entry that opened the hold or the recall")});
    compare(lots);
    each(lots);
    for (const qint64 id : lots)
      store_.statement("DELETE FROM concern WHERE seq = ? AND lot = ?").with(*of).with(id).run();
  }

  void correct() {
    if (!event_.adds.isEmpty()) return correct_declaration();
    if (event_.of.valid() && event_.lot.isEmpty()) {
      const std::optional<qint64> of = seq_of(store_, event_.of);
      if (!of) return errors_.push_back(unknown_entry(event_));
      return each(ids(store_.statement("SELECT lot FROM touched WHERE seq = ? ORDER BY lot").with(*of)));
    }
    if (event_.ends) return correct_date();
    one_lot();
  }

  // Lots that come later take it on: see begin_lot.
  void correct_declaration() {
    work_.lots.added();
    remember_addition(store_, work_.seq, entry_);
    concern(of_supplier());
  }

  void correct_date() {
    const std::optional<LotName> lot = named();
    if (!lot) return;
    if (lot->kind == LotKind::Named) return errors_.push_back(only_named(event_));
    concern({lot->id});
    if (errors_.empty()) concern(bounded_by(lot->id, *event_.ends));
  }

  // What had been made of it, through any depth, and cannot keep its date either.
  std::vector<qint64> bounded_by(qint64 lot_of_date, const batch::StatedEnd& end) {
    std::vector<qint64> from{lot_of_date}, bounded;
    for (size_t at = 0; at < from.size(); ++at) {
      const history::Lot* source = work_.lots.lot(from[at]);
      if (!source) continue;
      const history::WentIn input = history::went_in(*source);
      for (const qint64 id : ids(store_.statement("SELECT output FROM input WHERE input = ?").with(from[at]))) {
        const history::Lot* lot = work_.lots.lot(id);
        if (!lot || !history::hands_on(*lot, input, end)) continue;
        if (std::find(from.begin(), from.end(), id) != from.end()) continue;
        from.push_back(id);
        if (history::is_bounded(*lot, input, end)) bounded.push_back(id);
      }
    }
    std::sort(bounded.begin(), bounded.end());
    return bounded;
  }

  // Everything that may hold the supplier's item: its lots, those of which nobody wrote whose they are, and what was
  // made of them.
  std::vector<qint64> of_supplier() {
    std::vector<qint64> from;
    Statement& rows =
        store_.statement("SELECT id, code, supplier_item FROM lot WHERE item = ? ORDER BY id").with(event_.item);
    while (rows.next()) {
      const bool ours = event_.supplier_item.isEmpty();  // one lot of a product
      const bool its = ours || rows.text(2).isEmpty() || rows.text(2) == event_.supplier_item;
      const bool unwritten = !ours && rows.text(1).isEmpty();
      const bool lot = event_.lot.isEmpty() || unwritten || rows.text(1) == event_.lot;
      if (its && lot) from.push_back(rows.number(0));
    }
    return reach(store_, from, Direction::Forward);
  }

  void remember_count() {
    const auto id = errors_.empty() ? work_.lots.id(event_.lot, event_.item) : std::nullopt;
    const QString place = event_.place;
    if (place.isEmpty() && !id) return;
    store_
        .statement(
            "INSERT INTO counted (place, at) VALUES (?, ?) ON CONFLICT(place) DO UPDATE SET at = max(at, excluded.at)")
        .with(place)
        .with(event_.at.toSecsSinceEpoch())
        .run();
  }

  Work work_;
  Store& store_;
  Entry& entry_;
  Event& event_;
  bool resolve_;
  Errors errors_;
};

}  // namespace

Errors project(Store& store, Lots& lots, qint64 seq, Entry& entry, bool resolve) {
  return Projecting({store, lots, seq}, entry, resolve).run();
}

}  // namespace lardiner::ledger
