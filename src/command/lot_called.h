// What a lot is called in reports.
#pragma once

#include "book/book.h"
#include "ledger/lots.h"

namespace lardiner::command {

/// The name that was recorded with it; of a supplier's lot, and of one that is only named, the book's in its first
/// language; the item's id where the book does not know it.
QString item_name(const book::Book& book, const ledger::LotName& lot);

/// "Unsalted butter, lot MB-5521"; "Salt, lot not written".
QString called(const book::Book& book, const ledger::LotName& lot);

/// The first dozen of a list, and how many more there are: parted by `between`.
QString first_of(const QStringList& lots, const QString& between);

}  // namespace lardiner::command
