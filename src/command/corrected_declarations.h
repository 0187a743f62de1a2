// What corrections of supplier items say of an input, as far as the book does not know better.
#pragma once

#include <QStringList>

#include "book/book.h"
#include "ledger/ledger.h"

namespace lardiner::command {

/// What went in, as far as somebody wrote it: without a supplier item or a lot it may be of any.
struct Bought {
  QString item, supplier_item, lot;
};

/// Substances that corrections add to it: to a lot that came by the ledger, or was made here, those that are of it; to
/// another, whose receipt or making is not recorded, those that stand beside what the book declares of it or, of a
/// product, of what it is made of. Of an entry that cannot be read the store's fault tells.
QStringList corrected_besides(ledger::Ledger& ledger, const book::Book& book, const Bought& bought);

/// Those of all that went into a batch, each once: of its inputs, of what its formula has besides, and of the package
/// that it came out of.
QStringList corrected_besides(ledger::Ledger& ledger, const book::Book& book, const batch::Record& record);

}  // namespace lardiner::command
