// Which lots hold a lot, or are in it, through any depth.
#include "ledger/reach.h"

#include <algorithm>
#include <set>

namespace lardiner::ledger {

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

std::vector<qint64> perhaps_in(Store& store, qint64 lot) {
  Statement& rows = store.statement(
      "SELECT input.output FROM lot AS known JOIN lot AS unwritten ON unwritten.item = known.item AND unwritten.code = "
      "''"
      " JOIN input ON input.input = unwritten.id JOIN lot AS made ON made.id = input.output"
      " WHERE known.id = ? AND known.code <> '' AND (known.began IS NULL OR made.began >= known.began)");
  std::vector<qint64> first;
  rows.with(lot);
  while (rows.next()) first.push_back(rows.number(0));
  return first.empty() ? first : reach(store, first, Direction::Forward);
}

}  // namespace lardiner::ledger
