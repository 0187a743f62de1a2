// The containers of a lot that are alike in place, state and date.
#pragma once

#include "history/lot.h"

namespace lardiner::history {

struct Group {
  std::vector<int> containers;
  Holder first;  ///< of them
  Good good;
};

/// By the first container of each; of `container` alone where it is named.
std::vector<Group> groups(const Lot& lot, const std::optional<int>& container, const QDateTime& now);

}  // namespace lardiner::history
