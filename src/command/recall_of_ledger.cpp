// Everything that holds a lot, out of the ledger, for its recall sheet.
#include "command/recall_of_ledger.h"

#include <algorithm>

#include "command/sheet_ledger.h"
#include "command/traced.h"
#include "ledger/entries.h"
#include "ledger/lineage.h"

namespace lardiner::command {

namespace {

using facts::Certainty;
using history::Where;
using problem::Errors;

// How certain it is of each lot that it holds the one asked for.
class Holding {
 public:
  Holding(ledger::Ledger& ledger, qint64 of) : store_(ledger.store()), of_(of) {
    for (const ledger::LotName& lot : ledger::lots_reached(store_, of, ledger::Direction::Forward))
      all_.push_back(lot.id);
    for (const ledger::Edge& edge : ledger::lineage(store_, of).edges)
      if (!edge.assumed) certain_edges_.push_back(edge);
    follow(of);
    for (const qint64 id : ledger::perhaps_in(store_, ledger.lots(), of))
      if (std::find(all_.begin(), all_.end(), id) == all_.end()) unnamed_.push_back(id);
  }

  std::vector<qint64> lots() const {
    std::vector<qint64> all = all_;
    all.insert(all.end(), unnamed_.begin(), unnamed_.end());
    return all;
  }
  Certainty certainty(qint64 lot) const {
    if (has(certain_, lot)) return Certainty::Certain;
    return has(all_, lot) ? Certainty::Assumed : Certainty::NoLotNamed;
  }

 private:
  static bool has(const std::vector<qint64>& all, qint64 id) {
    return std::find(all.begin(), all.end(), id) != all.end();
  }

  void follow(qint64 from) {
    certain_.push_back(from);
    for (const ledger::Edge& edge : certain_edges_)
      if (edge.input == from && !has(certain_, edge.output)) follow(edge.output);
  }

  ledger::Store& store_;
  qint64 of_;
  std::vector<qint64> all_, certain_, unnamed_;
  std::vector<ledger::Edge> certain_edges_;
};

class Filling {
 public:
  Filling(const RecallFrom& from, qint64 of) : from_(from), ledger_(from.ledger), of_(of), holding_(from.ledger, of) {}

  problem::ExpectedAll<facts::Recall> fill() {
    const ledger::LotName name = *ledger_.lots().named(of_);
    recall_.item = name.item;
    recall_.lot = name.code;
    recall_.now = from_.now;
    if (const history::Lot* lot = ledger_.lots().lot(of_)) head(*lot);
    for (const qint64 id : holding_.lots()) {
      add_standings(id);
      add_uses(id);
    }
    if (ledger_.lots().unreadable()) return tl::unexpected(Errors{*ledger_.lots().unreadable()});
    if (ledger_.store().fault()) return tl::unexpected(Errors{*ledger_.store().fault()});
    return std::move(recall_);
  }

 private:
  void head(const history::Lot& lot) {
    if (lot.received) recall_.supplier = lot.received->from.isEmpty() ? lot.supplier_item : lot.received->from;
    recall_.balance = balance_of(ledger_, of_);
    for (const history::EntryId& id : lot.recalls) {
      const auto entry = ledger::entry_named(ledger_.store(), id);
      if (!entry || !*entry) continue;
      const history::Event& event = (*entry)->entry.event;
      recall_.reason = event.reason;
      recall_.opened_at = event.at;
      recall_.opened_by = event.by;
    }
  }

  void describe(facts::Reached& out, qint64 id, const ledger::Standing& standing) {
    const ledger::LotName name = *ledger_.lots().named(id);
    out.certainty = holding_.certainty(id);
    out.item = name.item;
    out.lot = name.code;
    out.amount = standing.left;
    if (const history::Lot* lot = ledger_.lots().lot(id)) out.containers = containers_of(*lot, standing.containers);
  }

  void add_standings(qint64 id) {
    for (const ledger::Standing& standing : ledger::standings(ledger_.store(), {id})) {
      if (standing.where == Where::Here) {
        facts::ReachedHere here;
        describe(here, id, standing);
        here.place = standing.place;
        recall_.here.push_back(std::move(here));
      } else if (standing.where == Where::Dispatched || standing.where == Where::AtSite) {
        facts::ReachedAway away;
        describe(away, id, standing);
        away.site = site_name(from_.book, from_.language, standing.site);
        away.note = standing.note;
        add_sending(id, standing, away);
        recall_.away.push_back(std::move(away));
      }
    }
  }

  // When the containers left, and for which order.
  void add_sending(qint64 id, const ledger::Standing& standing, facts::ReachedAway& away) {
    const history::Lot* lot = ledger_.lots().lot(id);
    for (const history::Holder& holder : lot->holders)
      if (holder.number == standing.containers.front()) away.order = holder.order;
    const auto entries = ledger::entries_of_lot(ledger_.store(), id);
    if (!entries) return;
    for (const ledger::Recorded& recorded : *entries) {
      const history::Event& event = recorded.entry.event;
      const auto& numbers = event.containers;
      if (event.kind == history::Kind::Dispatched &&
          std::find(numbers.begin(), numbers.end(), standing.containers.front()) != numbers.end())
        away.sent_at = event.at;
    }
  }

  void add_uses(qint64 id) {
    const QString from = ledger_.lots().named(id)->code;
    ledger::Statement& rows = ledger_.store().statement(
        "SELECT code, item, assumed, amount, input.dimension, id FROM input JOIN lot ON lot.id = output WHERE input = ?"
        " ORDER BY output");
    rows.with(id);
    while (rows.next()) {
      facts::UsedUp used;
      used.from_lot = from;
      used.lot = rows.text(0);
      used.item = rows.text(1);
      used.certainty = rows.number(2) != 0 ? Certainty::Assumed : holding_.certainty(id);
      if (!rows.absent(3))
        used.amount = measure::Quantity{static_cast<measure::Dimension>(rows.number(4)), rows.number(3)};
      recall_.used_up.push_back(std::move(used));
    }
  }

  const RecallFrom& from_;
  ledger::Ledger& ledger_;
  qint64 of_;
  Holding holding_;
  facts::Recall recall_;
};

}  // namespace

problem::ExpectedAll<facts::Recall> recall_of(const RecallFrom& from, qint64 lot) { return Filling(from, lot).fill(); }

}  // namespace lardiner::command
