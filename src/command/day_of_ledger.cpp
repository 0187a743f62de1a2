// A day of the ledger as its record tells it.
#include "command/day_of_ledger.h"

#include <algorithm>

#include "book/standing.h"
#include "command/food_limits.h"
#include "ledger/entries.h"
#include "ledger/verify.h"

namespace lardiner::command {

namespace {

using history::Entry;
using history::Event;
using history::Kind;
using history::Lot;
using problem::Errors;

class Filling {
 public:
  Filling(SheetLedger& ledger, QDate day) : ledger_(ledger), store_(ledger.ledger.store()) {
    day_.day = day;
    day_.rules = ledger.run.book.rules.name;
    day_.rules_source = ledger.run.book.rules.id;
    day_.printed_at = ledger.run.now;
    for (const ledger::Head& head : ledger.ledger.heads()) day_.heads << ledger::text(head);
  }

  problem::ExpectedAll<facts::Day> fill() {
    const auto entries = ledger::entries_of_day(store_, day_.day);
    if (!entries) return tl::unexpected(Errors{entries.error()});
    day_.entries = static_cast<int>(entries->size());
    day_.unreviewed = unreviewed(*entries);
    if (const auto read = read_corrections(); !read) return tl::unexpected(Errors{read.error()});
    for (const ledger::Recorded& recorded : *entries)
      if (const auto added = add(recorded); !added) return tl::unexpected(Errors{added.error()});
    if (ledger_.ledger.lots().unreadable()) return tl::unexpected(Errors{*ledger_.ledger.lots().unreadable()});
    if (store_.fault()) return tl::unexpected(Errors{*store_.fault()});
    return std::move(day_);
  }

 private:
  static int unreviewed(const std::vector<ledger::Recorded>& entries) {
    const auto is_review = [](const ledger::Recorded& one) { return one.entry.event.kind == Kind::Review; };
    return static_cast<int>(std::count_if(entries.begin(), entries.end(), [&](const ledger::Recorded& entry) {
      return !is_review(entry) && std::none_of(entries.begin(), entries.end(), [&](const ledger::Recorded& other) {
        return is_review(other) && other.seq > entry.seq && other.entry.event.by != entry.entry.event.by;
      });
    }));
  }

  // Corrections of that day or later that name an entry.
  problem::Expected<bool> read_corrections() {
    std::vector<qint64> found;
    ledger::Statement& rows = store_.statement("SELECT seq FROM happened WHERE day >= ? AND kind = ? ORDER BY seq");
    rows.with(day_.day.toJulianDay()).with(static_cast<qint64>(Kind::Correction));
    while (rows.next()) found.push_back(rows.number(0));
    for (const qint64 seq : found) {
      const auto recorded = ledger::entry_at(store_, seq);
      if (!recorded) return tl::unexpected(recorded.error());
      if (*recorded && (*recorded)->entry.event.of.valid()) corrections_.push_back((*recorded)->entry);
    }
    return true;
  }

  const book::RuleSet& rules() const { return ledger_.run.book.rules; }

  facts::Entered entered(const Entry& entry) const {
    facts::Entered out{entry.id, entry.event.at, entry.recorded_at, entry.event.by, {}};
    for (const Entry& correction : corrections_)
      if (correction.event.of == entry.id)
        out.corrected.push_back({correction.id, correction.event.at, correction.event.by, correction.event.reason});
    return out;
  }

  // As the entry fixed them; of an older entry by the book as it is.
  facts::PlaceRead place_read(const Entry& entry) const {
    const Event& event = entry.event;
    facts::PlaceRead read{entered(entry), event.place, event.temperature, event.limits};
    const book::StoragePlace* place = ledger_.run.book.storage_place(event.place);
    read.not_in_the_book = !place;
    if (place && !read.limits.known()) read.limits = held_to(*place, rules());
    return read;
  }

  std::vector<facts::Containers> containers(const Event& event) {
    const Lot* lot = lot_of(ledger_.ledger, event.lot, event.item);
    return lot ? containers_of(*lot, event.containers) : std::vector<facts::Containers>();
  }

  QString item(const Event& event) {
    if (!event.item.isEmpty() || event.lot.isEmpty()) return event.item;
    const Lot* lot = lot_of(ledger_.ledger, event.lot, QString());
    return lot ? lot->item : QString();
  }

  problem::Expected<bool> add(const ledger::Recorded& recorded) {
    const Entry& entry = recorded.entry;
    const Event& event = entry.event;
    switch (event.kind) {
      case Kind::Made:
        return add_making(recorded);
      case Kind::PlaceTemperature:
        day_.places.push_back(place_read(entry));
        break;
      case Kind::Check:
        day_.checks.push_back({entered(entry), event.what, event.place, event.in_order, event.note});
        break;
      case Kind::Reading:
      case Kind::Reheated:
      case Kind::HotHeld:
      case Kind::TimeControl:
        day_.holding.push_back({entered(entry), item(event), event.lot,
                                event.what.isEmpty() ? history::word(event.kind) : event.what, event.temperature,
                                event.seconds, held_to(event, rules()), reheat_minimum(event, rules())});
        break;
      case Kind::Received:
        day_.receipts.push_back({entered(entry), event.from, event.item, event.lot, event.quantity, event.temperature,
                                 event.accepted, event.reason});
        break;
      case Kind::CorrectiveAction:
        act(entry, facts::Acted::Kind::Corrective);
        break;
      case Kind::Hold:
        act(entry, facts::Acted::Kind::Hold);
        break;
      case Kind::Correction:
        if (event.ends || !event.adds.isEmpty()) act(entry, facts::Acted::Kind::Correction);
        break;
      case Kind::Release:
        act(entry, facts::Acted::Kind::Release);
        break;
      case Kind::RecallOpened:
        act(entry, facts::Acted::Kind::RecallOpened);
        break;
      case Kind::RecallClosed:
        act(entry, facts::Acted::Kind::RecallClosed);
        break;
      case Kind::Discarded:
        day_.discards.push_back(
            {entered(entry), item(event), event.lot, containers(event), event.quantity, event.reason});
        break;
      case Kind::Dispatched:
        ship(entry, facts::Shipped::Kind::Dispatched);
        break;
      case Kind::Arrived:
        ship(entry, facts::Shipped::Kind::Arrived);
        break;
      case Kind::Returned:
        ship(entry, facts::Shipped::Kind::Returned);
        break;
      case Kind::Counted:
        day_.counts.push_back(
            {entered(entry), item(event), event.lot, containers(event), event.left_percent.value_or(100)});
        break;
      case Kind::Review:
        day_.reviews.push_back({entered(entry), event.note});
        break;
      default:
        break;
    }
    return true;
  }

  // What is released, closed or corrected as the entry says that it is of, where it does not say so itself.
  Event with_its_subject(Event event) {
    if (!event.lot.isEmpty() || !event.place.isEmpty() || !event.of.valid()) return event;
    const auto of = ledger::entry_named(ledger_.ledger.store(), event.of);
    if (!of || !*of) return event;
    event.lot = (*of)->entry.event.lot;
    event.item = (*of)->entry.event.item;
    event.place = (*of)->entry.event.place;
    return event;
  }

  void act(const Entry& entry, facts::Acted::Kind kind) {
    const Event event = with_its_subject(entry.event);
    day_.actions.push_back({entered(entry), kind, item(event), event.lot, event.place, event.reason, event.action,
                            event.ends, event.adds});
  }

  void ship(const Entry& entry, facts::Shipped::Kind kind) {
    const Event& event = entry.event;
    day_.shipped.push_back({entered(entry), kind, site_name(ledger_.run, event.site), event.order, event.note,
                            item(event), event.lot, containers(event), event.temperature, event.accepted,
                            event.reason});
  }

  // A batch with its cook, and its cooling as it stands by now.
  problem::Expected<bool> add_making(const ledger::Recorded& recorded) {
    const auto whole = ledger::entry_at(store_, recorded.seq);
    if (!whole) return tl::unexpected(whole.error());
    if (!*whole || !(*whole)->entry.event.made) return true;
    const Entry& entry = (*whole)->entry;
    const batch::Fixed& made = *entry.event.made;
    day_.made.push_back({entered(entry), entry.event.item, entry.event.lot, made.batch.record.quantity});
    for (const batch::CookReading& reading : made.batch.record.cooked) add_cook(entry, reading);
    const Lot* lot = lot_of(ledger_.ledger, entry.event.lot, entry.event.item);
    if (!lot || !lot->made || !lot->made->cooling) return true;
    const auto takers = who_cooled(entry.event.lot, entry.event.item);
    if (!takers) return tl::unexpected(takers.error());
    add_cooling(entry, *lot->made, *takers);
    return true;
  }

  void add_cook(const Entry& entry, const batch::CookReading& reading) {
    facts::Cooked cook{entered(entry), entry.event.item, entry.event.lot, reading.core, reading.seconds, {},
                       std::nullopt};
    cook.entered.at = reading.at;
    const book::Product* product = ledger_.run.book.product(entry.event.item);
    const book::Reach reached = product ? book::reach(ledger_.run.book, QStringList{product->id}) : book::Reach{};
    const book::Standing standing =
        product ? book::Standings(ledger_.run.book, reached).of(*product) : book::Standing{};
    if (standing.before) cook.minimum = standing.before->any_of;
    // Nothing in it must be cooked: no minimum is asked of it.
    if (product && !standing.before && standing.readiness != book::Readiness::Unknown) cook.met = true;
    if (standing.before) cook.met = batch::cooked_enough({reading}, *standing.before, ledger_.run.book.rules);
    day_.cooks.push_back(std::move(cook));
  }

  // Those of the batch's own record were taken by who recorded it; the others by whom their entries say.
  problem::Expected<QHash<QDateTime, QString>> who_cooled(const QString& lot, const QString& item) {
    QHash<QDateTime, QString> takers;
    const auto id = ledger_.ledger.lots().id(lot, item);
    const auto entries = id ? ledger::entries_of_lot(store_, *id) : problem::Expected<std::vector<ledger::Recorded>>();
    if (!entries) return tl::unexpected(entries.error());
    for (const ledger::Recorded& one : *entries)
      if (one.entry.event.kind == Kind::Cooled) takers.insert(one.entry.event.at, one.entry.event.by);
    return takers;
  }

  void add_cooling(const Entry& entry, batch::Fixed made, const QHash<QDateTime, QString>& takers) {
    batch::judge_at(made, ledger_.run.now);
    facts::Cooled cooled{entered(entry),       entry.event.item,  entry.event.lot, {},
                         made.cooling->stages, made.batch.cooling};
    for (const batch::CoolReading& reading : made.batch.record.cooled)
      cooled.readings.push_back({reading.at, reading.core, takers.value(reading.at, entry.event.by)});
    if (!cooled.readings.empty()) cooled.entered.at = cooled.readings.front().at;
    day_.coolings.push_back(std::move(cooled));
  }

  SheetLedger& ledger_;
  ledger::Store& store_;
  std::vector<Entry> corrections_;
  facts::Day day_;
};

}  // namespace

problem::ExpectedAll<facts::Day> day_of_ledger(SheetLedger& ledger, QDate day) { return Filling(ledger, day).fill(); }

}  // namespace lardiner::command
