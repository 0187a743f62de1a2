// The date that holds for a container, whatever else is the matter with its lot.
#pragma once

#include "history/lot.h"

namespace lardiner::history {

struct Shown {
  std::optional<batch::UseBy> use_by;  ///< absent: none can be told
  std::optional<QDateTime> end;        ///< as Good::end
  QString why_none;                    ///< why none can be told
};

/// The earliest of what the fixed question says (or the package) and of the correction's date: nothing moves it later.
Shown shown(const Lot& lot, const Holder& holder);

}  // namespace lardiner::history
