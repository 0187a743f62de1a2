// A lot whose date became known, or was corrected, and what had been made of it by then.
#pragma once

#include "history/lot.h"

namespace lardiner::history {

/// What went into a lot.
struct WentIn {
  QString item, lot;
  bool tcs = true;
};
WentIn went_in(const Lot& lot);

/// Whether `ends`, the date of `input` as its receipt or a correction has it, makes a date of `lot` earlier that was
/// made of it: of food that keeps the dates of what is in it (nothing cooked them away), or that was made when the
/// input was past its date. The latter must be discarded, and is past from then on. A best-before of what needs no
/// temperature control bounds nothing that does.
bool is_bounded(const Lot& lot, const WentIn& input, const batch::StatedEnd& ends);

/// Whether what was made of `lot` has that date from it, even where the lot's own is earlier by now: it may have been
/// used before that.
bool hands_on(const Lot& lot, const WentIn& input, const batch::StatedEnd& ends);

/// The date that a making, a receipt or a correction gives its lot, of a making the earliest of its containers; absent:
/// none, or it is another kind of event. REQUIRES: a making has its facts.
std::optional<batch::StatedEnd> end_given(const Event& event);

/// Whether the lot was reached through what it was made of: by a correction of a date, or by a making or a receipt that
/// was recorded after it.
bool came_through_input(const Lot& lot, const Event& event);

}  // namespace lardiner::history
