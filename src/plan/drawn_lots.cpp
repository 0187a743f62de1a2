// Which lots on hand a single making takes, where no plan of the day says it.
#include "plan/drawn_lots.h"

#include <algorithm>
#include <tuple>

#include "batch/clock.h"
#include "batch/compute_lookup.h"
#include "plan/amounts_of.h"
#include "plan/lot_dates.h"

namespace lardiner::plan {

using measure::Quantity;

namespace {

using Date = std::optional<batch::StatedEnd>;

bool may_be_taken(const book::Book& book, const OnHand& lot, const Date& date, QDate day) {
  if (batch::is_tcs(book, lot.item) && (!date || lot.state == book::State::Frozen)) return false;
  return !date || date->end >= batch::end_of(day, book.kitchen.zone);
}

std::optional<Quantity> weight_there(const book::Book& book, book::Weighing& weighing, const OnHand& lot) {
  if (const book::Ingredient* ingredient = book.ingredient(lot.item))
    return weight_of(weighing, *ingredient, lot.quantity);
  const book::Product* product = book.product(lot.item);
  if (!product || lot.quantity.dimension == measure::Dimension::Mass) return lot.quantity;
  return weighing.of_product(*product, lot.quantity);
}

auto key_of(const OnHand& lot, Instant end) {
  return std::tuple(end, lot.lot, lot.container, lot.where, lot.quantity.dimension, lot.quantity.amount);
}

// A lot that may be taken, and what is left of it.
struct Left {
  size_t lot = 0;
  Quantity weight;
  Instant end = kForever;
};

std::vector<Left> takeable(const book::Book& book, book::Weighing& weighing, const std::vector<OnHand>& lots,
                           QDate day) {
  const Calendar calendar(book.kitchen.zone, batch::start_of(day, book.kitchen.zone));
  Keeping keeping(book, calendar);
  LotDates dates(book, lots, keeping, calendar);
  std::vector<Left> out;
  for (size_t i = 0; i < lots.size(); ++i) {
    const std::optional<Quantity> weight = weight_there(book, weighing, lots[i]);
    const Date date = dates.of(lots[i]);
    if (weight && may_be_taken(book, lots[i], date, day))
      out.push_back({i, *weight, date ? date->end.toMSecsSinceEpoch() : kForever});
  }
  std::stable_sort(out.begin(), out.end(), [&lots](const Left& a, const Left& b) {
    return key_of(lots[a.lot], a.end) < key_of(lots[b.lot], b.end);
  });
  return out;
}

}  // namespace

std::vector<DrawnLot> drawn_lots(const book::Book& book, book::Weighing& weighing, const std::vector<Wanted>& wanted,
                                 const std::vector<OnHand>& lots, QDate day) {
  std::vector<Left> there = takeable(book, weighing, lots, day);
  std::vector<DrawnLot> out;
  for (const Wanted& want : wanted) {
    std::int64_t open = want.weight.amount;
    for (Left& left : there) {
      const std::int64_t taken = std::min(open, left.weight.amount);
      if (taken <= 0 || lots[left.lot].item != want.item) continue;
      out.push_back({left.lot, {measure::Dimension::Mass, taken}});
      left.weight.amount -= taken;
      open -= taken;
    }
  }
  return out;
}

}  // namespace lardiner::plan
