// What a scanned or typed text is: a label of ours, a lot, a supplier's code, or nothing that is known here.
#pragma once

#include <QString>
#include <optional>

#include "command/ledger_run.h"

namespace lardiner::command {

struct Scanned {
  QString text;                             ///< as it was read
  QString what;                             ///< "a label of lot A26329CLB01K, container 3", "an item number (GTIN) …"
  std::optional<ledger::LotName> lot = {};  ///< that it opens
  std::optional<int> container = {};
  QString label_end = {};  ///< of a label of ours: the date that it shows, as its attribute: "17=261201"; empty: none
  bool unknown = false;    ///< it should be a lot of ours and is none: `what` says what may be wrong
  std::optional<problem::Error> several =
      {};  ///< it is a lot of several items, and nothing tells of which: which they are
};

/// An address of the kitchen's own is a label of ours; another GS1 Digital Link, an item number with its check digit,
/// or a GS1 element string is named as what it is, and its lot looked up. Anything else is a lot typed by hand, in
/// capitals or not: a slip is caught by the check character, and the lots that are near are offered. Of a lot that
/// several items have, `item` tells of which; a label of ours tells it by its item number.
Scanned scanned(LedgerRun& run, const QString& text, const QString& item);

/// The date attribute of a Digital Link's attributes, as Scanned::label_end; empty: none.
QString label_end(const QString& uri);

}  // namespace lardiner::command
