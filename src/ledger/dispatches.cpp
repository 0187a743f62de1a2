// What ever left with a dispatch note, by the entries themselves.
#include "ledger/dispatches.h"

#include "history/event.h"

namespace lardiner::ledger {

problem::Expected<std::vector<Loading>> loadings(Store& store, const QString& note) {
  std::vector<Loading> found;
  Statement& rows = store.statement(
      "SELECT event.seq, lot.id FROM happened JOIN event ON event.seq = happened.seq"
      " JOIN lot ON lot.code = json_extract(body, '$.lot')"
      " JOIN touched ON touched.lot = lot.id AND touched.seq = event.seq"
      " WHERE happened.kind = ? AND json_extract(body, '$.note') = ? ORDER BY lot.id, event.seq");
  rows.with(static_cast<qint64>(history::Kind::Dispatched)).with(note);
  while (rows.next()) found.push_back({rows.number(0), rows.number(1)});
  if (store.fault()) return tl::unexpected(*store.fault());
  return found;
}

}  // namespace lardiner::ledger
