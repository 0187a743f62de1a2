// Which lots on hand a single making takes, where no plan of the day says it.
#pragma once

#include <QDate>
#include <vector>

#include "book/weighing.h"
#include "plan/order.h"

namespace lardiner::plan {

/// So much of an item: of an ingredient as purchased.
struct Wanted {
  QString item;
  measure::Quantity weight;
};

/// What is taken of a lot.
struct DrawnLot {
  size_t lot = 0;  ///< index into the lots on hand
  measure::Quantity weight;
};

/// In the order of what is wanted, the first to expire first; what is not there is left open. Only lots that are good
/// until the end of `day`, by LotDates: what needs temperature control, or might, is taken neither without a date nor
/// frozen (how long it keeps once thawed only a plan can say); what needs none is taken without a date too, after the
/// others. A lot whose amount the book cannot weigh stays where it is. Deterministic, whatever the order of lots.
std::vector<DrawnLot> drawn_lots(const book::Book& book, book::Weighing& weighing, const std::vector<Wanted>& wanted,
                                 const std::vector<OnHand>& lots, QDate day);

}  // namespace lardiner::plan
