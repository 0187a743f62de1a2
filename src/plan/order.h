// What is asked for, and what is there: the two things a plan is made from.
#pragma once

#include <QDateTime>
#include <QString>
#include <optional>

#include "batch/record.h"
#include "book/book.h"
#include "measure/quantity.h"

namespace lardiner::plan {

/// One line of an order.
struct Order {
  QString site;     ///< id; may be empty
  QString number;   ///< as the kitchen names the order; may be empty
  QString product;  ///< id
  measure::Quantity quantity;
  QDateTime due;                     ///< when it leaves the kitchen's door
  std::optional<book::Length> life;  ///< that it must still have then; absent: its last good day may be the due day
  problem::Place place;
};

/// A lot, or a part of one, that stands in the kitchen.
struct OnHand {
  QString item;  ///< ingredient (as purchased) or product
  QString lot;
  QString container;  ///< "tub"; may be empty
  measure::Quantity quantity;
  book::State state = book::State::Chilled;
  std::optional<QDateTime> prepared;
  std::optional<batch::StatedEnd> use_by;
  QString where;  ///< "walk-in 1"; may be empty
  problem::Place place;
};

}  // namespace lardiner::plan
