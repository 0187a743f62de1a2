// Which keys a row of each kind of event may have, and which it must.
#pragma once

#include <QString>
#include <vector>

#include "history/event.h"

namespace lardiner::history {

/// A key of a row, `event`, `at` and `by` apart, which all have. Ends is `use_by` or `best_before`, Checked the `what`
/// of a check, in words of the kitchen.
enum class Key {
  Lot,
  Item,
  SupplierItem,
  Containers,
  Quantity,
  Left,
  Count,
  ContainerKind,
  Temperature,
  Held,
  Ends,
  State,
  Place,
  From,
  Site,
  Order,
  Note,
  Accepted,
  Reason,
  Of,
  Day,
  Adds,
  Action,
  What,
  Checked,
  InOrder
};

struct Wanted {
  Key key = Key::Lot;
  bool required = false;
};

/// In the order in which they are read: a lot and its item first. Empty for what is no row: made, printed, reprinted.
const std::vector<Wanted>& wanted(Kind kind);

/// The words that `event` may have, in the order of `Kind`.
QStringList written_words();

/// Where one of the three that the program writes itself stands in a row, what to do instead; else empty.
QString hint_of_unwritten(Kind kind);

}  // namespace lardiner::history
