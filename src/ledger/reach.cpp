// Which lots hold a lot, or are in it, through any depth.
#include "ledger/reach.h"

#include <algorithm>

#include "batch/read_records_parts.h"

namespace lardiner::ledger {

namespace {

constexpr qint64 kLongestMaking = 31 * 24 * 3600;  // seconds, that are looked back over

// Whether a making was not over at an instant, in seconds since 1970.
bool went_on_at(const history::Lot* made, qint64 instant) {
  return made && made->made && batch::latest_use(made->made->batch.record, made->zone).toSecsSinceEpoch() >= instant;
}

}  // namespace

QByteArray with_found(Direction direction) {
  const QByteArray next = direction == Direction::Forward ? "input.output FROM found JOIN input ON input.input"
                                                          : "input.input FROM found JOIN input ON input.output";
  return "WITH RECURSIVE found(id) AS (SELECT ? UNION SELECT " + next + " = found.id) ";
}

std::vector<qint64> reach(Store& store, const std::vector<qint64>& from, Direction direction) {
  Statement& rows = store.statement(with_found(direction) + "SELECT id FROM found");
  std::vector<qint64> all;
  for (const qint64 start : from) {
    rows.with(start);
    while (rows.next()) all.push_back(rows.number(0));
  }
  std::sort(all.begin(), all.end());
  all.erase(std::unique(all.begin(), all.end()), all.end());
  return all;
}

std::vector<qint64> perhaps_in(Store& store, Lots& lots, qint64 lot) {
  const std::optional<LotName> known = lots.named(lot);
  if (!known || known->code.isEmpty()) return {};
  Statement& rows = store.statement(
      "SELECT input.output, made.began FROM lot AS unwritten JOIN input ON input.input = unwritten.id"
      " JOIN lot AS made ON made.id = input.output WHERE unwritten.item = ? AND unwritten.code = ''"
      " AND made.began >= ?");
  const qint64 came = known->began.value_or(kLongestMaking);
  rows.with(known->item).with(came - kLongestMaking);
  std::vector<qint64> first, before;  // it came
  while (rows.next()) (known->began && rows.number(1) < came ? before : first).push_back(rows.number(0));
  for (const qint64 id : before)
    if (went_on_at(lots.lot(id), came)) first.push_back(id);
  return first.empty() ? first : reach(store, first, Direction::Forward);
}

}  // namespace lardiner::ledger
