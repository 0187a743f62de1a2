// A lot as its entries leave it: containers with state and place, holds, labels, dates. Pure: the same entries in the
// same order always give the same lot.
#pragma once

#include <QDateTime>
#include <QString>
#include <QTimeZone>
#include <optional>
#include <vector>

#include "batch/fixed.h"
#include "history/event.h"

namespace lardiner::history {

enum class Where { Here, Used, Dispatched, AtSite, Discarded, Missing };
/// "here", "used up", "dispatched", "at its site", "discarded", "missing"
QString word(Where where);

/// One container (tub, tray, package) of a lot.
struct Holder {
  int number = 0;
  QString serial;  ///< of ours
  QString kind;    ///< "tub"
  measure::Quantity holds, left;
  Where where = Where::Here;
  QString place;           ///< of the kitchen, while it is here
  QString site, order;     ///< once it was dispatched
  QString note;            ///< of the dispatch
  QDateTime dispatched;    ///< when it last left
  QDateTime arrived;       ///< when it last was accepted at its site
  bool not_taken = false;  ///< its site refused it: it arrives only where its number is named
  bool frozen = false;
  bool thawed = false;  ///< it has left a freezer
  bool opened = false;
  QDateTime seen;           ///< when something last happened to it, or it was counted
  EntryId label;            ///< the entry that printed the label that is on it; invalid: none
  QString label_end;        ///< the date that this label shows, as its code's attribute
  bool superseded = false;  ///< what has happened since makes that label untrue: it needs a new one
  bool held_alone = false;  ///< superseded by a hold and nothing else: true again once that is over
  bool hold_label = false;  ///< the label on it says HOLD
};

struct HoldOn {
  EntryId entry;
  QDateTime since;
  QString reason;
  QString by;
  QString place;  ///< of a whole place; empty: of the lot
};

struct Lot {
  QString code;
  QString item;
  QString supplier_item;
  EntryId entry;                              ///< that began it: Made or Received
  QDateTime began;                            ///< made at, received at
  QTimeZone zone;                             ///< the kitchen's, when it began
  std::optional<batch::Fixed> made;           ///< of ours, with all that has happened to it
  std::optional<Event> received;              ///< of a supplier's
  measure::Quantity quantity;                 ///< made, or received altogether, in the dimension of its containers
  measure::Quantity used;                     ///< that Used entries took, whether or not it was there
  std::vector<Holder> holders;                ///< numbered from 1
  std::vector<HoldOn> holds;                  ///< that are not released
  std::vector<EntryId> recalls;               ///< open ones that name it or what is in it
  std::optional<batch::StatedEnd> not_after;  ///< the earliest date that a correction gave it
  QStringList further_allergens;              ///< substances that corrections of what is in it added
};

/// A lot after its first entry. A delivery that was not accepted has no containers. Errors: the entry is neither Made
/// nor Received; its zone is none.
problem::Expected<Lot> begin(const Entry& entry);

/// `lot` as `entry` leaves it, whose `lot` names it (or whose place, note, recall or correction reaches it: the caller
/// says so by calling this). "Now" is `entry.recorded_at`. Errors, and the lot then stays as it was: a container that
/// there is not, or that is used up, discarded or away; what happened before the lot began; an amount in another
/// dimension; what `batch::happen` refuses, and of a supplier's lot what only a record of its own can date (hot held,
/// time control, finished, reheated); a release of what is not held, or while cooling is not shown; a correction that
/// makes no date earlier; the same labels again where they are superseded. None is an empty list.
///
/// A correction of the date of what went into a lot (the caller says so: is_bounded) bounds the lot's own.
///
/// After Frozen, Thawed, Opened, Split, HotHeld, TimeControl, Finished, Reheated, Hold and Correction of its date or
/// allergens, the containers it touches are `superseded`, whether or not a label of theirs is on record: one that was
/// printed without a ledger is as untrue. Printed puts a true one on. Once nothing holds the lot any more (a hold, a
/// recall, a cooling that is not shown), what was superseded by a hold alone is so no longer, and a HOLD label is. A
/// hold holds the whole lot, wherever its containers stand. A further Received adds packages. Fast: every entry that is
/// appended passes here.
problem::Errors happen(Lot& lot, const Entry& entry);

/// How much of a lot went into a batch: taken from its containers (none: all that are here), those that were opened or
/// begun first, then by number. What is emptied is Used. Returns what could not be taken from any. A package of unknown
/// size (it holds nothing) gives what is asked of it. REQUIRES: the lot's dimension.
measure::Quantity take(Lot& lot, measure::Quantity quantity, const std::vector<int>& containers, const QDateTime& at);

/// The date that holds for a container now: the fixed question's on the whole timeline, never later than a
/// correction's; of a supplier's lot the one on its package, which is no longer known once it was opened, or once it
/// left a freezer.
struct Good {
  /// What is said where several hold, gravest first: Gone, Recalled, Held, NotReleased, Past, NoDate, Good. A recall
  /// outweighs a hold, since it says what to do; both outweigh what time may mend (cooling) or has ended.
  enum class State { Good, Past, NotReleased, Held, Recalled, NoDate, Gone };
  State state = State::NoDate;
  std::optional<batch::UseBy> use_by;  ///< absent: none can be told; with a correction's date where that is earlier
  std::optional<QDateTime> end;  ///< first instant past; absent: it needs none, is frozen without a limit, or none
                                 ///< can be told. Of frozen food the earlier of its frozen best before and of the
                                 ///< date that no freezing stretches
  QString why;  ///< in English: "cooling is not shown yet: …"; of what is Good what a correction adds
};
Good good(const Lot& lot, const Holder& holder, const QDateTime& now);

/// made = used + dispatched + discarded + missing + on hand + difference, exactly. Shapes: all of the lot's dimension.
struct Balance {
  measure::Quantity made, used, dispatched, discarded, missing, on_hand;
  measure::Quantity
      difference;  ///< made less all the others: what nobody accounts for; below nothing: more went than was there
  int unsaid =
      0;  ///< batches that took some of it, or may have, of which nobody wrote how much: it is not balanced then
};

/// `drawn` is what batches are recorded as having taken from it, whether or not it was there. What is at a site counts
/// as dispatched. REQUIRES: the lot's dimension.
Balance balance(const Lot& lot, measure::Quantity drawn);

}  // namespace lardiner::history
