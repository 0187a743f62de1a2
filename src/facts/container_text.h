// Containers of a lot, and their date, as sheets name them.
#pragma once

#include <QTimeZone>
#include <vector>

#include "batch/use_by.h"
#include "facts/wording.h"

namespace lardiner::facts {

/// Containers of one kind of one lot.
struct Containers {
  QString kind;              ///< "tub"; empty or the kitchen's own: a pack
  std::vector<int> numbers;  ///< from 1
  int count = 0;             ///< of containers without a number, as a supplier's packages
};

/// "24 tubs"; a kind of the kitchen's own is a pack.
QString counted_containers(const Wording& wording, const QString& kind, int count);

/// "3 trays (1–3), 2 tubs (4, 7)". Nothing of none.
QString containers_text(const Wording& wording, const std::vector<Containers>& containers);

/// "USE BY TUE 01 DEC 2026", with its time where it has one; "FROZEN THU 26 NOV 2026 · 3 days left: the thaw day is
/// day 1" and what limits it; that none is needed.
QString good_until(const Wording& wording, const batch::UseBy& use_by, const QTimeZone& zone);

}  // namespace lardiner::facts
