// Orders and what is on hand, from CSV or JSON Lines rows: every fault told at once, each at its cell.
#pragma once

#include <vector>

#include "plan/order.h"
#include "problem/error.h"
#include "reader/read.h"

namespace lardiner::plan {

struct ReadSettings {
  QDateTime now;               ///< nothing may be due before this, or prepared after it
  bool decimal_comma = false;  ///< CSV written with semicolons
};

/// What could be read; a faulty row is left out, with at least one error that names its place.
struct Orders {
  std::vector<Order> orders;
  problem::Errors errors;
};
struct OnHandLots {
  std::vector<OnHand> lots;
  problem::Errors errors;
};

/// Keys (ORDERS.md): `site`, `order`, `product`, `quantity`, `due`, `life`. Errors: an unknown product or site (with
/// the nearest), a due time in the past or without a time, less than one piece, a quantity that the product is not
/// made in.
Orders read_orders(const reader::Rows& rows, const book::Book& book, const ReadSettings& settings);

/// Keys (ORDERS.md): `product` (or `ingredient`), `lot`, `container`, `quantity`, `state`, `prepared`, `use_by` (or
/// `best_before`), `place`.
OnHandLots read_on_hand(const reader::Rows& rows, const book::Book& book, const ReadSettings& settings);

}  // namespace lardiner::plan
