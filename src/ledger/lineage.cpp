// What a lot was made of and what was made of it, with where its containers went.
#include "ledger/lineage.h"

#include <algorithm>

namespace lardiner::ledger {

namespace {

void add_edges(Store& store, qint64 output, std::vector<Edge>& edges) {
  Statement& rows =
      store.statement("SELECT input, assumed, amount, dimension FROM input WHERE output = ? ORDER BY input")
          .with(output);
  while (rows.next()) {
    Edge edge{output, rows.number(0), rows.number(1) != 0, std::nullopt};
    if (!rows.absent(2))
      edge.amount = measure::Quantity{static_cast<measure::Dimension>(rows.number(3)), rows.number(2)};
    edges.push_back(edge);
  }
}

bool alike(const Standing& a, const Standing& b) {
  return a.lot == b.lot && a.where == b.where && a.place == b.place && a.site == b.site && a.note == b.note &&
         a.kind == b.kind && a.frozen == b.frozen && a.ends == b.ends;
}

void gather(std::vector<Standing>& all, Standing one) {
  const auto same = std::find_if(all.rbegin(), all.rend(), [&](const Standing& other) { return alike(other, one); });
  if (same == all.rend()) {
    all.push_back(std::move(one));
    return;
  }
  same->containers.push_back(one.containers.front());
  same->left = same->left + one.left;
}

}  // namespace

std::vector<LotName> lots_reached(Store& store, qint64 lot, Direction direction) {
  std::vector<LotName> lots;
  Statement& rows =
      store.statement(with_found(direction) +
                      "SELECT lot.id, code, item, name, kind, began FROM found CROSS JOIN lot ON lot.id = found.id");
  rows.with(lot);
  while (rows.next()) lots.push_back(lot_name(rows));
  std::sort(lots.begin(), lots.end(), [](const LotName& a, const LotName& b) { return a.id < b.id; });
  return lots;
}

std::vector<LotName> lots_concerned(Store& store, const history::EntryId& entry) {
  std::vector<LotName> lots;
  Statement& rows = store.statement(
      "SELECT lot.id, code, item, name, lot.kind, began FROM event JOIN chain ON chain.id = event.chain"
      " JOIN concern ON concern.seq = event.seq JOIN lot ON lot.id = concern.lot WHERE station = ? AND number = ?"
      " ORDER BY lot.id");
  rows.with(entry.station).with(entry.number);
  while (rows.next()) lots.push_back(lot_name(rows));
  return lots;
}

Lineage lineage(Store& store, qint64 lot) {
  Lineage found{lot, lots_reached(store, lot, Direction::Backward), {}};
  for (const LotName& name : found.lots) add_edges(store, name.id, found.edges);
  for (const LotName& name : lots_reached(store, lot, Direction::Forward)) {
    if (name.id == lot) continue;
    found.lots.push_back(name);
    add_edges(store, name.id, found.edges);
  }
  std::sort(found.lots.begin(), found.lots.end(), [](const LotName& a, const LotName& b) { return a.id < b.id; });
  const auto shown = [&](qint64 id) {
    return std::binary_search(found.lots.begin(), found.lots.end(), LotName{id, {}, {}, {}, {}, {}},
                              [](const LotName& a, const LotName& b) { return a.id < b.id; });
  };
  std::erase_if(found.edges, [&](const Edge& edge) { return !shown(edge.input); });
  std::sort(found.edges.begin(), found.edges.end(),
            [](const Edge& a, const Edge& b) { return std::pair(a.output, a.input) < std::pair(b.output, b.input); });
  return found;
}

measure::Quantity drawn(Store& store, qint64 lot, measure::Dimension dimension) {
  Statement& row = store.statement("SELECT coalesce(sum(amount), 0) FROM input WHERE input = ? AND dimension = ?");
  row.with(lot).with(static_cast<qint64>(dimension));
  const qint64 amount = row.one() ? row.number(0) : 0;
  row.end();
  return {dimension, amount};
}

int drawn_unsaid(Store& store, qint64 lot, measure::Dimension dimension) {
  Statement& row =
      store.statement("SELECT count(*) FROM input WHERE input = ? AND (amount IS NULL OR dimension IS NOT ?)");
  row.with(lot).with(static_cast<qint64>(dimension));
  const qint64 count = row.one() ? row.number(0) : 0;
  row.end();
  return static_cast<int>(count);
}

std::vector<Standing> standings(Store& store, const std::vector<qint64>& lots) {
  std::vector<Standing> all;
  for (const qint64 lot : lots) {
    std::vector<Standing> of_lot;
    Statement& rows = store.statement(
        "SELECT number, whereabouts, place, site, note, holder.kind, remains, frozen, ends, dimension FROM holder"
        " JOIN lot ON lot.id = holder.lot WHERE lot = ? ORDER BY number");
    rows.with(lot);
    while (rows.next()) {
      Standing one{lot,
                   static_cast<history::Where>(rows.number(1)),
                   rows.text(2),
                   rows.text(3),
                   rows.text(4),
                   rows.text(5),
                   {static_cast<int>(rows.number(0))},
                   {static_cast<measure::Dimension>(rows.number(9)), rows.number(6)},
                   rows.number(7) != 0,
                   std::nullopt};
      if (!rows.absent(8)) one.ends = rows.number(8);
      gather(of_lot, std::move(one));
    }
    all.insert(all.end(), of_lot.begin(), of_lot.end());
  }
  return all;
}

}  // namespace lardiner::ledger
