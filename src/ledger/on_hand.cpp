// What stands in the kitchen, by lot, as a plan draws on it; and when each place was last counted.
#include "ledger/on_hand.h"

#include <QTimeZone>
#include <algorithm>

namespace lardiner::ledger {

using history::Holder;
using history::Lot;
using history::Where;

namespace {

book::State state_of(const Lot& lot, const Holder& holder) {
  if (holder.frozen) return book::State::Frozen;
  const bool ambient = lot.made ? !lot.made->tcs : lot.received && lot.received->state == QLatin1String("ambient");
  return ambient ? book::State::Ambient : book::State::Chilled;
}

std::optional<batch::StatedEnd> stated_end(const history::Good& good) {
  if (!good.end) return std::nullopt;
  batch::StatedEnd end;
  end.end = *good.end;
  end.is_date = !good.use_by || good.use_by->form != batch::UseBy::Form::Instant;
  if (good.use_by) end.kind = good.use_by->kind;
  return end;
}

bool alike(const plan::OnHand& a, const plan::OnHand& b) {
  return a.item == b.item && a.lot == b.lot && a.container == b.container && a.state == b.state && a.where == b.where &&
         a.use_by.has_value() == b.use_by.has_value() && (!a.use_by || a.use_by->end == b.use_by->end);
}

void add(std::vector<plan::OnHand>& all, plan::OnHand one) {
  for (plan::OnHand& other : all)
    if (alike(other, one)) {
      other.quantity = other.quantity + one.quantity;
      return;
    }
  all.push_back(std::move(one));
}

std::vector<plan::OnHand> of_lot(const Lot& lot, const QDateTime& now, const QTimeZone& zone) {
  std::vector<plan::OnHand> all;
  for (const Holder& holder : lot.holders) {
    if (holder.where != Where::Here || holder.left.amount <= 0) continue;
    const history::Good good = history::good(lot, holder, now);
    if (good.state != history::Good::State::Good) continue;
    plan::OnHand one;
    one.item = lot.item;
    one.lot = lot.code;
    one.container = holder.kind;
    one.quantity = holder.left;
    one.state = state_of(lot, holder);
    one.prepared = lot.began.toTimeZone(zone);
    one.use_by = stated_end(good);
    one.where = holder.place;
    add(all, std::move(one));
  }
  return all;
}

std::vector<qint64> lots_with_something(Store& store) {
  std::vector<qint64> lots;
  Statement& rows = store.statement(
      "SELECT DISTINCT holder.lot FROM holder JOIN lot ON lot.id = holder.lot WHERE whereabouts = 0 AND remains > 0"
      " AND held = 0 AND refused = 0 ORDER BY item, began, holder.lot");
  while (rows.next()) lots.push_back(rows.number(0));
  return lots;
}

}  // namespace

problem::Expected<std::vector<plan::OnHand>> on_hand(Ledger& ledger, const QDateTime& now, const QTimeZone& zone) {
  Store& store = ledger.store();
  store.forget_fault();
  ledger.lots().refresh();
  std::vector<plan::OnHand> all;
  for (const qint64 id : lots_with_something(store)) {
    const Lot* lot = ledger.lots().lot(id);
    if (!lot && ledger.lots().unreadable()) return tl::unexpected(*ledger.lots().unreadable());
    if (!lot) continue;
    for (plan::OnHand& one : of_lot(*lot, now, zone)) all.push_back(std::move(one));
  }
  if (store.fault()) return tl::unexpected(*store.fault());
  return all;
}

QStringList lots_there(Store& store, const QString& item, const QDateTime& from, const QDateTime& to) {
  QStringList codes;
  Statement& rows = store.statement(
      "SELECT code FROM lot WHERE item = ? AND code <> '' AND began <= ? AND EXISTS (SELECT 1 FROM holder WHERE lot = "
      "id"
      " AND ((whereabouts = 0 AND remains > 0) OR seen >= ?)) ORDER BY code");
  rows.with(item).with(to.toSecsSinceEpoch()).with(from.toSecsSinceEpoch());
  while (rows.next()) codes += rows.text(0);
  return codes;
}

std::vector<qint64> lots_here(Store& store) {
  std::vector<qint64> lots;
  Statement& rows = store.statement("SELECT DISTINCT lot FROM holder WHERE whereabouts = 0 ORDER BY lot");
  while (rows.next()) lots.push_back(rows.number(0));
  return lots;
}

std::vector<qint64> lots_in(Store& store, const QString& place) {
  std::vector<qint64> lots;
  Statement& rows = store.statement("SELECT DISTINCT lot FROM holder WHERE place = ? AND whereabouts = 0 ORDER BY lot");
  rows.with(place);
  while (rows.next()) lots.push_back(rows.number(0));
  return lots;
}

std::vector<Counted> counted(Store& store) {
  std::vector<Counted> places;
  Statement& rows = store.statement("SELECT place, at FROM counted ORDER BY place");
  while (rows.next()) places.push_back({rows.text(0), QDateTime::fromSecsSinceEpoch(rows.number(1), Qt::UTC)});
  return places;
}

}  // namespace lardiner::ledger
