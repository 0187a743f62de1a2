// What a lot was made of and what was made of it, with where its containers went.
#pragma once

#include <vector>

#include "ledger/lots.h"
#include "ledger/reach.h"

namespace lardiner::ledger {

/// `input` went into `output`.
struct Edge {
  qint64 output = 0, input = 0;
  bool assumed = false;  ///< nobody confirmed which lot it was
  std::optional<measure::Quantity> amount;
  friend bool operator==(const Edge&, const Edge&) = default;
};

struct Lineage {
  qint64 of = 0;
  std::vector<LotName> lots;  ///< by id, the lot itself among them
  std::vector<Edge> edges;    ///< among them, by output, then input
};

/// The lots that `lot` leads to, named, without what lies between them: the fast way to all that holds a lot.
std::vector<LotName> lots_reached(Store& store, qint64 lot, Direction direction);

/// Both ways, with what lies between.
Lineage lineage(Store& store, qint64 lot);

/// The lots that an open hold, recall or correction of a declaration concerns, by id; none once it is released.
std::vector<LotName> lots_concerned(Store& store, const history::EntryId& entry);

/// What batches are recorded as having taken from a lot, in `dimension`; assumed inputs have no amount.
measure::Quantity drawn(Store& store, qint64 lot, measure::Dimension dimension);

/// How many batches took some of a lot, or may have, of which that says nothing.
int drawn_unsaid(Store& store, qint64 lot, measure::Dimension dimension);

/// Containers of one lot that are in the same state: "4 tubs in walk-in 1, 2 kg".
struct Standing {
  qint64 lot = 0;
  history::Where where = history::Where::Here;
  QString place, site, note, kind;
  std::vector<int> containers;
  measure::Quantity left;
  bool frozen = false;
  std::optional<qint64> ends;
};

/// Of each lot its containers, by lot, then state.
std::vector<Standing> standings(Store& store, const std::vector<qint64>& lots);

}  // namespace lardiner::ledger
