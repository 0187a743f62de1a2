// The critical tracking events among the entries: what came in, was transformed, left, arrived, came back, was thrown
// away, with the lots and amounts of each.
#include "ledger/tracked.h"

#include <algorithm>

#include "history/holders.h"
#include "ledger/entries.h"
#include "ledger/lineage.h"
#include "ledger/lot_before.h"

namespace lardiner::ledger {

using history::Event;
using history::Kind;
using problem::Error;
using What = Tracked::What;

namespace {

std::optional<What> what_of(const Event& event) {
  switch (event.kind) {
    case Kind::Received:
      return event.accepted ? What::Receiving : What::ReceivingRefused;
    case Kind::Made:
      return What::Transformation;
    case Kind::Dispatched:
      return What::Shipping;
    case Kind::Arrived:
      return event.accepted ? What::Arrival : What::ArrivalRefused;
    case Kind::Returned:
      return What::Return;
    case Kind::Discarded:
      return What::Discard;
    case Kind::Correction:
      return What::Correction;
    default:
      return std::nullopt;
  }
}

QString why_of(const Event& event) {
  return event.of.valid() ? QStringLiteral("of %1: %2").arg(event.of.text(), event.reason) : event.reason;
}

std::optional<measure::Quantity> made(const batch::Record& record) {
  if (record.quantity) return record.quantity;
  std::optional<measure::Quantity> sum;
  for (const batch::ContainerGroup& group : record.containers) {
    const measure::Quantity all = measure::scaled(group.holds, measure::Ratio(group.count, 1));
    if (sum && sum->dimension != all.dimension) return std::nullopt;
    sum = sum ? *sum + all : all;
  }
  if (sum && sum->amount == 0) return std::nullopt;  // containers whose size nobody wrote
  return sum;
}

bool is_away(const history::Holder& holder) {
  return holder.where == history::Where::Dispatched || holder.where == history::Where::AtSite;
}

// The package that an opened, thawed, cut or decanted ingredient came out of.
batch::Input package_of(const batch::Record& record) {
  batch::Input package;
  package.item = record.item;
  package.lot = record.supplier_lot;
  package.quantity = record.quantity;
  return package;
}

class Tracking {
 public:
  using Take = std::function<bool(const Tracked&)>;
  Tracking(Ledger& ledger, const ExportKitchen& kitchen, const Take& take)
      : ledger_(ledger), store_(ledger.store()), kitchen_(kitchen), take_(take) {}

  problem::Expected<bool> of_days(QDate from, QDate to) {
    from_ = from;
    to_ = to;
    const auto read = each_of_days(store_, from, to, [&](const Recorded& recorded) { return add(recorded); });
    if (error_) return tl::unexpected(*error_);
    return read;
  }

  problem::Expected<bool> of_lineage(qint64 lot) {
    std::vector<Tracked> all;
    const Take keep = [&](const Tracked& one) {
      all.push_back(one);
      return true;
    };
    Tracking every(ledger_, kitchen_, keep);
    const std::vector<LotName> lots = lineage(store_, lot).lots;
    if (store_.fault()) return tl::unexpected(*store_.fault());
    for (const LotName& name : lots) {
      const auto entries = entries_of_lot(store_, name.id);
      if (!entries) return tl::unexpected(entries.error());
      for (const Recorded& recorded : *entries)
        if (what_of(recorded.entry.event) && !every.tell(recorded, name)) return tl::unexpected(*every.error_);
    }
    const auto place = [](const Tracked& one) { return std::pair(one.at.date(), one.seq); };
    std::stable_sort(all.begin(), all.end(), [&](const Tracked& a, const Tracked& b) { return place(a) < place(b); });
    for (const Tracked& one : all)
      if (!take_(one)) return false;
    return true;
  }

 private:
  bool add(const Recorded& recorded) {
    const Event& event = recorded.entry.event;
    if (!what_of(event)) return true;
    const std::vector<LotName> lots = lots_of(recorded);
    if (lots.empty()) return tell(recorded, std::nullopt);
    return std::all_of(lots.begin(), lots.end(), [&](const LotName& lot) { return tell(recorded, lot); });
  }

  // Those that the entry reached, not those that would be reached by its words today: a second lot of the same code may
  // have come since, and what a note carried may have left again.
  std::vector<LotName> lots_of(const Recorded& recorded) {
    const Event& event = recorded.entry.event;
    if (event.kind == Kind::Arrived && event.lot.isEmpty()) return lots_of_note(recorded.seq);
    if (event.lot.isEmpty()) return {};
    std::vector<LotName> lots = ledger_.lots().named(event.lot);
    std::erase_if(lots, [&](const LotName& lot) { return !event.item.isEmpty() && lot.item != event.item; });
    if (lots.size() > 1) std::erase_if(lots, [&](const LotName& lot) { return !was_touched(lot.id, recorded.seq); });
    return lots;
  }

  bool was_touched(qint64 lot, qint64 seq) {
    Statement& row = store_.statement("SELECT 1 FROM touched WHERE lot = ? AND seq = ?").with(lot).with(seq);
    const bool was = row.one();
    row.end();
    return was;
  }

  std::vector<LotName> lots_of_note(qint64 seq) {
    if (!arrived_) arrived_ = arrivals();
    std::vector<LotName> lots;
    for (const qint64 id : arrived_->values(seq))
      if (const auto lot = ledger_.lots().named(id)) lots.push_back(*lot);
    std::sort(lots.begin(), lots.end(), [](const LotName& a, const LotName& b) { return a.id < b.id; });
    return lots;
  }

  // Entry -> the lots that it reached, of all arrivals of these days: `touched` is ordered by lot, so that asking for
  // one entry costs as much as asking for all.
  QMultiHash<qint64, qint64> arrivals() {
    QMultiHash<qint64, qint64> found;
    Statement& rows = store_.statement(
        "SELECT seq, lot FROM touched WHERE seq IN (SELECT seq FROM happened WHERE day BETWEEN ? AND ? AND kind = ?)");
    rows.with(from_.toJulianDay()).with(to_.toJulianDay()).with(static_cast<qint64>(Kind::Arrived));
    while (rows.next()) found.insert(rows.number(0), rows.number(1));
    return found;
  }

  bool failed(const Error& error) {
    error_ = error;
    return false;
  }

  bool tell(const Recorded& recorded, const std::optional<LotName>& lot) {
    const history::Entry& entry = recorded.entry;
    const Event& event = entry.event;
    Tracked one;
    one.what = *what_of(event);
    one.seq = recorded.seq;
    one.entry = entry.id;
    one.at = event.at.toTimeZone(QTimeZone(entry.zone.toLatin1()));
    one.recorded_at = entry.recorded_at;
    one.lot = lot ? tracked(*lot) : TrackedLot{event.lot, event.item, name_of(event.item, {}), {}};
    one.quantity = event.quantity;
    one.from = event.from;
    one.site = event.site;
    one.order = event.order;
    one.document = event.note;
    one.by = event.by;
    one.why = why_of(event);
    if (event.kind == Kind::Made && !add_making(recorded, one)) return false;
    if (moves(event.kind) && lot && !add_amount(recorded, *lot, one)) return false;
    return !error_ && take_(one);
  }

  static bool moves(Kind kind) {
    return kind == Kind::Dispatched || kind == Kind::Arrived || kind == Kind::Returned || kind == Kind::Discarded;
  }

  // What the containers that it befell held when it happened, and where they were.
  bool add_amount(const Recorded& recorded, const LotName& lot, Tracked& one) {
    auto before = lot_before(store_, lot.id, recorded.seq);
    if (!before) return failed(unreadable(lot, before.error()));
    const Event& event = recorded.entry.event;
    one.quantity.reset();
    bool known = true;  // of a container whose size nobody wrote it is not
    problem::Errors told_when_recorded;
    for (const history::Holder* holder : history::touched(*before, event, told_when_recorded)) {
      one.quantity = one.quantity ? *one.quantity + holder->left : holder->left;
      known = known && holder->holds.amount > 0;
      if (event.kind == Kind::Dispatched || !is_away(*holder)) continue;
      if (one.site.isEmpty()) one.site = holder->site;
      if (one.document.isEmpty()) one.document = holder->note;
    }
    if (!known) one.quantity.reset();
    return true;
  }

  bool add_making(const Recorded& recorded, Tracked& one) {
    const auto whole = entry_at(store_, recorded.seq);
    if (!whole) return failed(whole.error());
    if (!*whole || !(*whole)->entry.event.made) return true;
    const batch::Batch& batch = (*whole)->entry.event.made->batch;
    if (batch.record.made_to) one.at = batch.record.made_to->toTimeZone(one.at.timeZone());
    one.quantity = made(batch.record);
    one.lot.gtin = batch.gtin;
    for (const batch::Input& input : batch.record.inputs) add_input(input, one.inputs);
    if (batch.record.deed != batch::Deed::Made) add_input(package_of(batch.record), one.inputs);
    return true;
  }

  void add_input(const batch::Input& input, std::vector<TrackedInput>& inputs) {
    using Sure = TrackedInput::Sure;
    if (!input.lot.isEmpty()) return inputs.push_back({tracked(input.lot, input.item), input.quantity, Sure::Recorded});
    for (const QString& candidate : input.candidates)
      inputs.push_back({tracked(candidate, input.item), std::nullopt, Sure::OneOfThese});
    if (input.candidates.isEmpty())
      inputs.push_back({tracked(QString(), input.item), input.quantity, Sure::NotWritten});
  }

  TrackedLot tracked(const QString& code, const QString& item) {
    const std::optional<qint64> id = code.isEmpty() ? std::nullopt : ledger_.lots().id(code, item);
    const std::optional<LotName> lot = id ? ledger_.lots().named(*id) : std::nullopt;
    return lot ? tracked(*lot) : TrackedLot{code, item, name_of(item, {}), kitchen_.gtins.value(item)};
  }

  // One that is only named bears the number that its product has now.
  TrackedLot tracked(const LotName& name) {
    TrackedLot lot{name.code, name.item, name_of(name.item, name.name), kitchen_.gtins.value(name.item)};
    if (name.kind != LotKind::Made) return lot;
    const history::Lot* whole = ledger_.lots().lot(name.id);
    if (whole && whole->made)
      lot.gtin = whole->made->batch.gtin;
    else if (!error_)  // its number is not known: it would get an address that no label of it bears
      error_ = unreadable(name, store_.fault() ? store_.fault() : ledger_.lots().unreadable());
    return lot;
  }

  Error unreadable(const LotName& name, const std::optional<Error>& why) const {
    const QString what = QStringLiteral("lot %1 of %2 cannot be read: ").arg(name.code, name.item);
    return {problem::Code::Machine, what + (why ? why->what : QStringLiteral("the entry of its making is not there")),
            at_file(store_.path()),
            QStringLiteral("lardiner verify tells whether it was changed; restore a backup that verifies")};
  }

  QString name_of(const QString& item, const QString& recorded) const {
    return recorded.isEmpty() ? kitchen_.items.value(item, item) : recorded;
  }

  Ledger& ledger_;
  Store& store_;
  const ExportKitchen& kitchen_;
  const Take& take_;
  QDate from_, to_;
  std::optional<QMultiHash<qint64, qint64>> arrived_;
  std::optional<Error> error_;  // the first
};

}  // namespace

QString word(What what) {
  switch (what) {
    case What::Receiving:
      return QStringLiteral("receiving");
    case What::ReceivingRefused:
      return QStringLiteral("receiving refused");
    case What::Transformation:
      return QStringLiteral("transformation");
    case What::Shipping:
      return QStringLiteral("shipping");
    case What::Arrival:
      return QStringLiteral("arrival");
    case What::ArrivalRefused:
      return QStringLiteral("arrival refused");
    case What::Return:
      return QStringLiteral("return");
    case What::Discard:
      return QStringLiteral("discard");
    case What::Correction:
      return QStringLiteral("correction");
  }
  return {};
}

problem::Expected<bool> each_tracked(Ledger& ledger, const ExportScope& scope, const ExportKitchen& kitchen,
                                     const std::function<bool(const Tracked&)>& take) {
  ledger.lots().refresh();
  Tracking tracking(ledger, kitchen, take);
  return scope.lot ? tracking.of_lineage(*scope.lot) : tracking.of_days(scope.from, scope.to);
}

}  // namespace lardiner::ledger
