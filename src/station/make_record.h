// The record of a batch that the form of Make wrote down.
#pragma once

#include "reader/value.h"
#include "station/visit.h"

namespace lardiner::station {

/// What went in for a line of the formula, as far as somebody said.
struct WentIn {
  QString item;  ///< the line's, or what replaced it
  QString line;  ///< the formula's item
  QString lot;   ///< tapped, or of the code; empty: not known, and kept as assumed
  QString code;  ///< as scanned or typed; empty: none
  bool instead() const { return item != line; }
};

/// A code opens its lot; where that is of another item, or another is named, it replaces the line's. What is typed and
/// is no label or lot of the ledger stands as the lot's name.
WentIn went_in(const Visit& visit, const book::FormulaLine& line);

/// The record as a line of JSON Lines would say it, by who is signed in.
reader::Value made_row(const Visit& visit, const book::Product& product);

}  // namespace lardiner::station
