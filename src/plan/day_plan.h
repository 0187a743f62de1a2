// What to make, pull and buy for the orders, and when each making can start.
#pragma once

#include <QDateTime>
#include <optional>
#include <vector>

#include "plan/order.h"
#include "plan/scaling.h"

namespace lardiner::plan {

/// What a making is for: an order, another making, or the level that is kept on hand.
struct For {
  enum class Kind { Order, Making, Level };
  Kind kind = Kind::Order;
  size_t index = 0;  ///< of DayPlan::orders or ::makings; not of a level
  measure::Quantity quantity;
};

/// A lot to take from where it stands.
struct Take {
  size_t lot = 0;              ///< index into DayPlan::on_hand
  measure::Quantity quantity;  ///< in what the product is made in; of an ingredient its weight, as purchased
  For what;                    ///< Order: it goes out as it is; Making: it goes in
  /// Of a frozen lot that must be thawed for a making, or for an order that does not leave frozen: when it leaves the
  /// freezer at the latest, a day before the planned start, or the due time (common practice, no source). Absent where
  /// thawing is a step of the making, it goes out frozen, or the item needs no temperature control.
  std::optional<QDateTime> thaw_by;
};

/// One making of one product.
struct PlannedMaking {
  const book::Product* product = nullptr;
  measure::Ratio makings;        ///< of the formula as written
  measure::Quantity output;      ///< in the dimension in which the product is made
  std::vector<For> wanted_by;    ///< what it is for; the rest of a batch multiple is for nobody yet
  QDateTime earliest, latest;    ///< the start window; earliest is not before the time of the run
  bool any_time_before = false;  ///< nothing bounds it from before: `earliest` is the time of the run
  int seconds = 0;               ///< from start to ready: its steps, the most of each, whatever the size of the making
  bool time_stated = true;       ///< false: a step, or the product, does not say how long it takes
  QDateTime start;               ///< in the window, not before that of the making that stands before it
  /// Before it: an allergen or a class of raw animal food of what was made before is not in it, or is not known there,
  /// or raw came before ready-to-eat.
  bool clean_down = false;
};

/// An ingredient to buy.
struct Buy {
  const book::Ingredient* ingredient = nullptr;
  measure::Quantity need;             ///< as purchased, beyond what is on hand
  measure::Quantity buy;              ///< in whole buying units where the book states one
  std::optional<std::int64_t> units;  ///< of these
  QDateTime by;                       ///< the first making that needs it
};

/// What cannot be met.
struct Unmet {
  enum class Why {
    TooLate,       ///< its start, or that of something in it, would lie in the past
    LifeTooShort,  ///< even made at the last moment it does not keep as long as is wanted
    NoWindow,      ///< what it is made of is not good for as long as it must be
    NoWeight       ///< the formula cannot be scaled: the book's errors say why
  };
  std::optional<size_t> order;  ///< index into DayPlan::orders; absent: the level that is kept of `product`
  QString product;              ///< that is wanted
  measure::Quantity quantity;   ///< of it that stays open
  Why why = Why::TooLate;
  int seconds = 0;         ///< TooLate, LifeTooShort and NoWindow: by how much; 0 where `errors` say why
  QString item;            ///< the product at fault: the wanted one or one in it
  problem::Errors errors;  ///< what the book lacks: a weight, a shelf life
};

/// Why a lot on hand was passed over, wholly.
struct PassedOver {
  enum class Why {
    PastDate,       ///< told of every lot, whether it is asked for or not
    TooShort,       ///< it is over before what comes of it need be
    NoDate,         ///< it needs temperature control, and unknown is not safe
    FrozenUnknown,  ///< the book states no life once thawed that is long enough
    NoTimeToThaw    ///< it would have had to be taken out of the freezer before now
  };
  size_t lot = 0;
  Why why = Why::PastDate;
};

struct DayPlan {
  std::vector<Order> orders;           ///< by due time, site, number and product: the order of the file decides nothing
  std::vector<OnHand> on_hand;         ///< by item, then the first to expire
  std::vector<PlannedMaking> makings;  ///< in the order of work
  std::vector<Take> takes;             ///< the pull list, in the order of work, then what goes out as it is
  std::vector<Buy> buys;               ///< by ingredient
  std::vector<Unmet> unmet;
  std::vector<PassedOver> passed_over;
};

/// The plan. Needs go through sub-batches with yields and batch multiples; what is on hand is used first-expiring
/// first, and only where the finished item then still has the life that its order wants (an out-of-date lot never; a
/// cook ends the clocks of raw lots only). Needs of a product whose windows meet are one making. A making's latest
/// start is when it is needed less its steps (the most of each, and of what is cooled without a timed step the time
/// that the adopted code allows); its earliest, what its shelf life (of the book and of the adopted rule set) leaves,
/// and what is made for it. The order runs by the day (a later one begins at the hour of the run, where the
/// window leaves the time), and within the windows ready-to-eat before raw, from fewest allergens to most. An order
/// that no making can meet gets what is on hand; a level that is kept is made up last, counted at the end of the last
/// due day. Ovens, chillers, hands and opening hours are not known to it: time is the calendar's. Deterministic,
/// whatever the order of orders and lots.
DayPlan day_plan(const book::Book& book, std::vector<Order> orders, std::vector<OnHand> on_hand, const QDateTime& now);

}  // namespace lardiner::plan
