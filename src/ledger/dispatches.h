// What ever left with a dispatch note, by the entries themselves: it may have come back, and left again with another.
#pragma once

#include <QString>
#include <vector>

#include "ledger/store.h"

namespace lardiner::ledger {

/// An entry that loaded containers of a lot.
struct Loading {
  qint64 seq = 0, lot = 0;
};

/// Those of a note's number, by lot, then entry; none: nothing ever left with it. Errors: the store's.
problem::Expected<std::vector<Loading>> loadings(Store& store, const QString& note);

}  // namespace lardiner::ledger
