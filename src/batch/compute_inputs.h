// What really went into a making: the record's inputs, and the lines of the formula that it may leave out.
#pragma once

#include "batch/compute_making.h"

namespace lardiner::batch {

/// One thing that went in, as it was at that moment.
struct Used {
  const Input* input = nullptr;  ///< nullptr: a line of the formula that the record does not list
  QString item;
  std::vector<const Making*> sources;  ///< a lot of the same run, or of an earlier one; all that it may have been
  bool by_book = false;                ///< (also) a thing of which the book alone knows what it is made of
  book::Readiness readiness = book::Readiness::Unknown;
  const book::CookMinimum* still = nullptr;
  book::Declared declared;
  bool rework = false;
  bool previously_frozen = false;
  std::vector<Cap> caps;        ///< its own dates at that moment
  std::vector<Carried> deeper;  ///< dates of what it was made of, at that moment
  bool holds_ready = false;     ///< it is raw, but ready-to-eat parts of unknown date are in it

  bool raw() const { return readiness < book::Readiness::CookedReadyToEat; }
};

/// What one input is whose lot nobody said: the union of all that it may have been, so that of each fact the least
/// favourable counts. REQUIRES: at least one, all of one item.
Used any_of(std::vector<Used> candidates);

/// What a thing that went in is made of: as its lot was recorded; else by the book. Of several lots that it may have
/// been all that any of them holds, as if they had been mixed.
void add_composition(Part& part, const Used& used, const book::Book& book);

/// The one that a cook must meet when both are in it; nullptr: none of both.
const book::CookMinimum* more_demanding(const book::CookMinimum* a, const book::CookMinimum* b);

/// In the order of the formula, further inputs behind it by item and lot. What is unknown, past its date, refused
/// itself or left out is refused in `making`.
std::vector<Used> what_went_in(Making& making, Run& run);

/// The dates of a lot of the run as they are when it goes into another: of all its containers the earliest, since
/// nobody says which one was taken; from the freezer, as if thawed then.
struct AtUse {
  std::vector<Cap> caps;
  std::vector<Carried> deeper;
  bool previously_frozen = false;
};
problem::ExpectedAll<AtUse> at_use(const Making& source, const Input& input, const Making& making, const Run& run);

/// The dates of a thing that was bought, or made in another run: what its package states, and what the rules say of its
/// opening and thawing.
problem::ExpectedAll<std::vector<Cap>> bought_caps(const Input& input, const Making& making, Run& run);

}  // namespace lardiner::batch
