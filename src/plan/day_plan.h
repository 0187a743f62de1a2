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
  size_t lot = 0;  ///< index into DayPlan::on_hand
  measure::Quantity quantity;
  For what;  ///< Order: it goes out as it is; Making: it goes in
};

/// One making of one product.
struct PlannedMaking {
  const book::Product* product = nullptr;
  measure::Ratio makings;        ///< of the formula as written
  measure::Quantity output;      ///< in the dimension in which the product is made
  std::vector<For> wanted_by;    ///< what it is for; the rest of a batch multiple is for nobody yet
  QDateTime earliest, latest;    ///< the start window; earliest is not before the time of the run
  bool any_time_before = false;  ///< no shelf life bounds it: `earliest` is the time of the run alone
  int seconds = 0;               ///< from start to ready: its steps, the most of each
  bool time_stated = true;       ///< false: a step, or the product, does not say how long it takes
  QDateTime start;               ///< in the window, not before that of the making that stands before it
  bool clean_down =
      false;  ///< before it: an allergen of what was made before is not in it, or raw came before ready-to-eat
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
  size_t order = 0;            ///< index into DayPlan::orders
  measure::Quantity quantity;  ///< of the order that stays open
  Why why = Why::TooLate;
  int seconds = 0;  ///< TooLate, LifeTooShort and NoWindow: by how much
  QString item;     ///< the product at fault: the ordered one or one in it
  problem::Errors errors;
};

/// Why a lot on hand was passed over.
struct PassedOver {
  enum class Why { PastDate, TooShort, NoDate, FrozenUnknown };
  size_t lot = 0;
  Why why = Why::PastDate;
};

struct DayPlan {
  std::vector<Order> orders;           ///< by due time, site, number and product: the order of the file decides nothing
  std::vector<OnHand> on_hand;         ///< by item, then the first to expire
  std::vector<PlannedMaking> makings;  ///< in the order of work
  std::vector<Take> takes;             ///< the pull list, in the order of work
  std::vector<Buy> buys;               ///< by ingredient
  std::vector<Unmet> unmet;
  std::vector<PassedOver> passed_over;
};

/// The plan. Needs go through sub-batches with yields and batch multiples; what is on hand is used first-expiring
/// first, and only where the finished item then still has the life that its order wants (an out-of-date lot never; a
/// cook ends the clocks of raw lots only). Needs of a product whose windows meet are one making. A making's latest
/// start is when it is needed less its steps (the most of each); its earliest, what its shelf life (of the book and of
/// the adopted rule set) and that of what is in it leaves. Within the windows the order runs ready-to-eat before raw,
/// from fewest allergens to most. Ovens, chillers and hands are not known to it. Deterministic, whatever the order of
/// orders and lots.
DayPlan day_plan(const book::Book& book, std::vector<Order> orders, std::vector<OnHand> on_hand, const QDateTime& now);

}  // namespace lardiner::plan
