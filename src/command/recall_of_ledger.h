// Everything that holds a lot, out of the ledger, for its recall sheet.
#pragma once

#include <QDateTime>

#include "book/book.h"
#include "facts/recall_sheet.h"
#include "ledger/ledger.h"

namespace lardiner::command {

struct RecallFrom {
  const book::Book& book;
  ledger::Ledger& ledger;
  QDateTime now;
  QString language;  ///< in which sites are named
};

/// REQUIRES: the lot is in the ledger. Errors: an entry that cannot be read, the store's.
problem::ExpectedAll<facts::Recall> recall_of(const RecallFrom& from, qint64 lot);

}  // namespace lardiner::command
