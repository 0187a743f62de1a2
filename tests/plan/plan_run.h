// Plans of the small kitchen, and short ways to write orders and lots.
#pragma once

#include <algorithm>

#include "plan/day_plan.h"
#include "plan_kitchen.h"

namespace lardiner::plan::kitchen {

inline Order order(const char* product, const char* quantity, const char* due, const char* life = nullptr) {
  Order out;
  out.product = QString::fromLatin1(product);
  out.quantity = amount(quantity);
  out.due = at(due);
  if (life) {
    const QString text = QString::fromLatin1(life);
    const int count = text.section(u' ', 0, 0).toInt();
    out.life = text.endsWith(u'h') ? book::Length{book::Length::Unit::Seconds, count * 3600, 1}
                                   : book::Length{book::Length::Unit::Days, count, 1};
  }
  return out;
}

/// `end`: the last good day, or a time; nullptr for none.
inline OnHand lot(const char* item, const char* quantity, const char* end, book::State state = book::State::Chilled,
                  book::EndKind kind = book::EndKind::UseBy) {
  OnHand out;
  out.item = QString::fromLatin1(item);
  out.quantity = amount(quantity);
  out.state = state;
  if (!end) return out;
  const reader::Written written = reader::parse_written(QString::fromLatin1(end)).value();
  const bool is_date = !written.seconds_of_day;
  out.use_by = batch::StatedEnd{is_date ? batch::end_of(written.date, kZone) : at(end), is_date, kind};
  return out;
}

inline DayPlan plan_of(std::vector<Order> orders, std::vector<OnHand> lots = {}, const book::Book& book = small(),
                       const char* now = kNow) {
  return day_plan(book, std::move(orders), std::move(lots), at(now));
}

/// The only making of a product.
inline const PlannedMaking& making(const DayPlan& plan, const char* product) {
  const auto is = [&](const PlannedMaking& m) { return m.product->id == QLatin1String(product); };
  REQUIRE(std::count_if(plan.makings.begin(), plan.makings.end(), is) == 1);
  return *std::find_if(plan.makings.begin(), plan.makings.end(), is);
}

inline bool makes(const DayPlan& plan, const char* product) {
  return std::any_of(plan.makings.begin(), plan.makings.end(),
                     [&](const PlannedMaking& m) { return m.product->id == QLatin1String(product); });
}

/// What is bought of an ingredient; nothing of it is nothing.
inline measure::Quantity bought(const DayPlan& plan, const char* ingredient) {
  for (const Buy& buy : plan.buys)
    if (buy.ingredient->id == QLatin1String(ingredient)) return buy.need;
  return {};
}

/// What is taken of all lots of an item.
inline measure::Quantity taken(const DayPlan& plan, const char* item) {
  measure::Quantity all{};
  bool any = false;
  for (const Take& take : plan.takes) {
    if (plan.on_hand[take.lot].item != QLatin1String(item)) continue;
    all = any ? all + take.quantity : take.quantity;
    any = true;
  }
  return all;
}

inline const Unmet& only_unmet(const DayPlan& plan) {
  REQUIRE(plan.unmet.size() == 1);
  return plan.unmet.front();
}

}  // namespace lardiner::plan::kitchen
