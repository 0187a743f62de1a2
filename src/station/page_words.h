// The words that pages choose: what is the matter with a lot, and what an item is called.
#pragma once

#include <QString>

#include "book/book.h"
#include "history/lot.h"
#include "ledger/lots.h"
#include "words/words.h"

namespace lardiner::station {

/// "page.good", "page.on_hold": the key of what is said in large letters.
QString verdict_key(history::Good::State state);

/// How a page marks it, for its style alone: "good", "wait" (not yet), "stop". Never the only sign of it.
QString mark(history::Good::State state);

/// A product or an ingredient as the book calls it in the language; else as its lot was called when it was recorded,
/// else its id.
QString name_of(const book::Book& book, const words::Language& language, const ledger::LotName& lot);
QString name_of(const book::Book& book, const words::Language& language, const QString& item);

}  // namespace lardiner::station
