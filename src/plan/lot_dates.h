// Until when a lot on hand is good, where the kitchen's own rules say less than its label.
#pragma once

#include <QHash>
#include <optional>
#include <vector>

#include "plan/day_plan_keeping.h"
#include "plan/order.h"

namespace lardiner::plan {

class LotDates {
 public:
  /// For `lots` and no others.
  LotDates(const book::Book& book, const std::vector<OnHand>& lots, Keeping& keeping, const Calendar& calendar);

  /// The date that counts: the stated one, but of a product that stands chilled or ambient no later than what it keeps
  /// from `prepared` on, by the book and the adopted rule set. None where none is known: without a stated one (of what
  /// needs no temperature control without either), and of thawed or opened food that needs it, or might, whose only
  /// date is a best-before, which is of the package as it was.
  std::optional<batch::StatedEnd> of(const OnHand& lot);

 private:
  std::optional<batch::StatedEnd> kept(const OnHand& lot);

  const book::Book& book_;
  Keeping& keeping_;
  const Calendar& calendar_;
  QHash<QString, size_t> ways_;  // of products, by id
};

}  // namespace lardiner::plan
