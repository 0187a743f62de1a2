// Which dates the lots on hand must show, and why one is passed over; for day_plan.cpp and its parts.
#pragma once

#include <vector>

#include "plan/day_plan.h"
#include "plan/day_plan_items.h"
#include "plan/day_plan_shelf.h"
#include "plan/lot_dates.h"

namespace lardiner::plan {

/// A lot that may be used, with the item that it is of.
struct HandLot {
  size_t lot = 0;  ///< index into DayPlan::on_hand
  bool made = false;
  size_t item = 0;  ///< index into Items::made or ::bought
  Row row = Row::Dated;
  Instant end = kForever;
  std::int64_t amount = 0;  ///< of a product in its planned dimension (whole pieces); of an ingredient its weight
};

struct OnHandRows {
  std::vector<HandLot> lots;
  std::vector<PassedOver> past;  ///< past its date: whether it is asked for or not
  std::vector<HandLot> undated;  ///< in no freezer, and unknown is not safe: passed over where its item is asked for
};

/// Lots of items that the plan does not touch are left out, unless they are past their date. `dates`: of these lots.
OnHandRows on_hand_rows(Items& items, const std::vector<OnHand>& on_hand, LotDates dates, const Calendar& calendar);

/// How long food keeps that is taken from the freezer for something needed at `at`. `thaws`: its thawing is a step of
/// that; else it leaves the freezer a day before. 0 where the book does not say.
Instant thawed_end(const std::vector<book::ShelfLife>& lives, Instant at, bool thaws, const Calendar& calendar);

/// The first instant, from now on, at which it can be needed so that it is thawed by then and keeps until `until`;
/// nothing before `at` may do, then it is `at`. REQUIRES: needed at `at` it is thawed and keeps so long.
Instant first_thawed(const std::vector<book::ShelfLife>& lives, Instant at, Instant until, bool thaws,
                     const Calendar& calendar);

/// When it leaves the freezer at the latest to be thawed at `at`.
Instant thaw_by(Instant at);

/// Whether what is needed at `at` can still be thawed for it.
bool time_to_thaw(Instant at, bool thaws, const Calendar& calendar);

}  // namespace lardiner::plan
