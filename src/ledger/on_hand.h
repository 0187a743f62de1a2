// What stands in the kitchen, by lot, as a plan draws on it; and when each place was last counted.
#pragma once

#include <QDateTime>
#include <vector>

#include "ledger/ledger.h"
#include "plan/order.h"

namespace lardiner::ledger {

/// What is here, released, not held and in no recall, still good at `now`, with something left: a line for the
/// containers of a lot that share place and end. Errors: the store's, an entry that cannot be read.
problem::Expected<std::vector<plan::OnHand>> on_hand(Ledger& ledger, const QDateTime& now, const QTimeZone& zone);

/// The lots of an item that were in the kitchen at some time from `from` to `to`: what an input of a making may have
/// been, where nobody said. One that was emptied or left meanwhile is among them.
QStringList lots_there(Store& store, const QString& item, const QDateTime& from, const QDateTime& to);

/// The lots of which something stands in a place of the kitchen, or anywhere in it, by id.
std::vector<qint64> lots_in(Store& store, const QString& place);
std::vector<qint64> lots_here(Store& store);

struct Counted {
  QString place;
  QDateTime at;
};
/// The places that were ever counted, by name.
std::vector<Counted> counted(Store& store);

}  // namespace lardiner::ledger
