// Whether the entries are those that were recorded: the chains walked, each hash computed anew.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "ledger/ledger.h"

namespace lardiner::ledger {

/// The first entry of a chain that is not as it was recorded.
struct Broken {
  QString station;  ///< empty: entries that are of no chain
  qint64 number = 0;
  QString what;  ///< "its hash is not that of its body and the entry before"
};

struct Verified {
  std::vector<Head> heads;     ///< of the chains as far as they hold
  std::vector<Broken> broken;  ///< at most one a chain, and one of all that are of none
  qint64 entries = 0;
};

/// The entry that is broken, and how, in a sentence.
QString text(const Broken& broken);

/// Walks every chain from its first entry, in which the entries stand in the file in the order of their numbers: in
/// that order everything is computed from them. With `known` (a head from a day record or a backup) the chain of that
/// station must have had that hash at that count: so that a tail cut off, or all of it written anew, is found. Errors:
/// the store's; a damaged file.
problem::Expected<Verified> verify(Store& store, const std::optional<Head>& known);

/// "A-123-9f86d081…": station, count and the hash in hexadecimal, as a day record prints it; and back.
QString text(const Head& head);
std::optional<Head> head_of(const QString& text);

}  // namespace lardiner::ledger
