// How long food keeps in a state, and who says so.
#pragma once

#include <QString>

#include "problem/error.h"

namespace lardiner::book {

/// The state in which a limit runs.
enum class State {
  Chilled,      ///< at the cold-holding limit or below
  Frozen,       ///< quality only: a best-before
  Thawed,       ///< chilled after leaving the freezer; runs beside what is left of the chilled days
  Ambient,      ///< shelf-stable, unopened
  Opened,       ///< from the opening of a package
  HotHeld,      ///< at the hot-holding limit or above
  TimeControl,  ///< without temperature control; terminal
  Finished      ///< after the final cook or reheat
};

enum class EndKind { UseBy, BestBefore };

/// A length of time as the trade says it.
struct Length {
  enum class Unit { Days, Seconds, Months };  // hours and minutes are Seconds: elapsed time
  Unit unit = Unit::Days;
  int count = 0;
  int first_day = 1;  ///< the number of the first calendar day: 1 (day of preparation counts) or 0; Days only

  friend bool operator==(const Length&, const Length&) = default;
};

/// Who says so: a figure of the adopted rule set (then `section` is its section), a named document, or the kitchen.
struct Authority {
  QString name;     ///< "FDA Food Code 2022", "Process study 14, 2026-02-03", "kitchen rule"
  QString section;  ///< "3-501.17(A)"; may be empty

  QString text() const { return section.isEmpty() ? name : name + QLatin1Char(' ') + section; }
  friend bool operator==(const Authority&, const Authority&) = default;
};

/// One shelf-life rule of an ingredient or a product.
struct ShelfLife {
  State state = State::Chilled;
  Length length;
  EndKind kind = EndKind::UseBy;
  Authority authority;
  QString figure;    ///< id of the rule-set figure cited as authority, or empty
  QString document;  ///< the named document that allows more than the figure (a variance, a study); may be empty
  problem::Place place;
};

}  // namespace lardiner::book
