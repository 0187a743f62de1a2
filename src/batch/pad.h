// A batch made ready before it is made: its lot and serials, and the rule by which a hand will date it.
#pragma once

#include "batch/batch.h"

namespace lardiner::batch {

/// What a pad's labels of one batch are made ready for.
struct PadPlan {
  const book::Product& product;
  QDate day;  ///< on which they are made ready: the lot's
  int number = 0;
  std::vector<ContainerGroup> containers;
};

/// The batch with its lot, GTIN and serials, which are those of the record that is entered later with this day as its
/// pad_day; declarations and readiness as the book has them, and no date: only a making has one. Errors: what would
/// refuse the label of any batch of the product (`book::label_gaps`, no lot code, no item number), a kind of container
/// that the book does not put it up in, and what `hand_rule` refuses. REQUIRES: a product of this book.
problem::ExpectedAll<Batch> pad_batch(const book::Book& book, const PadPlan& plan);

/// The rule that decides the date of a batch whose ingredients all keep at least as long: calendar days or months from
/// the day of its making. A cook later than that day would give it no less.
struct HandRule {
  book::Length length;  ///< never in seconds
  book::EndKind kind = book::EndKind::UseBy;
};

/// Errors (Conflict, at the product): a label for sale, whose ingredient statement follows the weights of the making;
/// containers kept frozen or hot, whose end is not counted in days from the making; a limit in hours; limits in days
/// and in months of which now one, now the other ends first.
problem::Expected<HandRule> hand_rule(const book::Book& book, const Batch& batch, const ContainerGroup& group);

/// The core temperature that a cook reading must show, nullptr where none is needed. The kitchen's own comes first: it
/// is at least the minimum.
const book::TimeAtTemperature* cook_by_hand(const book::Book& book, const book::Product& product);

/// The stages of which a cooled product's readings must show that they were met; empty where it is not cooled here.
std::vector<book::CoolingStage> cooling_by_hand(const book::Book& book, const book::Product& product);

}  // namespace lardiner::batch
