// Seeded random books, orders and lots in several levels, for the properties of plans.
#pragma once

#include <random>

#include "plan_run.h"

namespace lardiner::plan::kitchen {

class Random {
 public:
  explicit Random(unsigned seed) : engine_(seed) {}
  int below(int n) { return static_cast<int>(engine_() % static_cast<unsigned>(n)); }
  bool one_in(int n) { return below(n) == 0; }
  std::mt19937& engine() { return engine_; }

 private:
  std::mt19937 engine_;
};

struct Kind {
  bool whole = false;  ///< multiples, levels, pieces and make-over; else amounts are what is needed and no more
  bool times = true;   ///< steps that take time
};

inline constexpr int kRandomLevels = 4;
inline constexpr int kInLevel = 3;
inline constexpr int kRandomGoods = 6;

inline QByteArray made_id(int n) { return "made-" + QByteArray::number(n); }
inline QByteArray goods_id(int n) { return "goods-" + QByteArray::number(n); }

inline QByteArray random_product(int n, Random& random, const Kind& kind) {
  QByteArray lines;
  int grams = 0;
  const auto add = [&](const QByteArray& item) {
    const int weight = 10 + random.below(900);
    grams += weight;
    lines += line(item, QByteArray::number(weight) + " g");
  };
  const int level = n / kInLevel;
  for (int i = 0; level + 1 < kRandomLevels && i < 2; ++i)
    add(made_id((level + 1) * kInLevel + random.below(kInLevel)));
  add(goods_id(random.below(kRandomGoods)));
  add(goods_id(random.below(kRandomGoods)));
  QByteArray more = "makes = \"" + QByteArray::number(grams) + " g\"\n";
  if (kind.whole && random.one_in(3)) more += "made_in = \"" + QByteArray::number(500 + random.below(2000)) + " g\"\n";
  if (kind.whole && random.one_in(4))
    more += "keep_on_hand = \"" + QByteArray::number(100 + random.below(3000)) + " g\"\n";
  if (kind.whole && level == 0 && n % 2 == 0)
    more = "makes = \"10 pieces\"\nunit_weight = \"" + QByteArray::number(grams / 10) + " g\"\nmake_over = \"3 %\"\n";
  if (kind.times && !random.one_in(3))
    more += "step = [{ kind = \"work\", text = \"work\", takes = \"" + QByteArray::number(5 + random.below(180)) +
            " min\" }]\n";
  const QByteArray code{"P", 1};
  return product(made_id(n), code + static_cast<char>('A' + n / 10) + static_cast<char>('A' + n % 10), "yes", lines,
                 more + life("chilled", QByteArray::number(2 + random.below(4)) + " days") + container());
}

inline book::Book random_book(Random& random, const Kind& kind) {
  QByteArray items;
  for (int i = 0; i < kRandomGoods; ++i)
    items += ingredient(goods_id(i), i % 2 ? "yes" : "no", "", i % 3 ? "\"none\"" : "[\"milk\"]",
                        "edible = \"" + QByteArray::number(50 + random.below(51)) + " %\"\n");
  for (int i = 0; i < kRandomLevels * kInLevel; ++i) items += random_product(i, random, kind);
  return read_kitchen(items);
}

inline std::vector<Order> random_orders(Random& random, const book::Book& book, int count) {
  std::vector<Order> orders;
  for (int i = 0; i < count; ++i) {
    Order order;
    order.product = QString::fromLatin1(made_id(random.below(2 * kInLevel)));
    order.number = QString::number(i);
    const bool pieces = book.product(order.product)->makes->dimension == measure::Dimension::Count;
    order.quantity = measure::quantity({1 + random.below(40), 1}, pieces ? measure::Unit::Piece : measure::Unit::Ounce);
    order.due = at(kNow).addSecs(60 * random.below(5 * 24 * 60));
    if (random.one_in(2)) order.life = book::Length{book::Length::Unit::Days, 1 + random.below(3), 1};
    orders.push_back(order);
  }
  return orders;
}

inline OnHand random_lot(Random& random, int number) {
  const bool made = random.one_in(2);
  OnHand lot;
  lot.item = QString::fromLatin1(made ? made_id(random.below(kRandomLevels * kInLevel))
                                      : goods_id(random.below(kRandomGoods)));
  lot.lot = QString::number(number);
  lot.quantity = measure::quantity({1 + random.below(2000), 1}, measure::Unit::Gram);
  const QDate last = QDate(2026, 10, 5).addDays(random.below(10));
  if (!random.one_in(8)) lot.use_by = batch::StatedEnd{batch::end_of(last, kZone), true, book::EndKind::UseBy};
  return lot;
}

inline std::vector<OnHand> random_lots(Random& random, int count) {
  std::vector<OnHand> lots;
  for (int i = 0; i < count; ++i) lots.push_back(random_lot(random, i));
  return lots;
}

/// One random case.
struct Case {
  explicit Case(unsigned seed, const Kind& kind = {}, int orders_count = 12, int lots_count = 20)
      : random(seed),
        book(random_book(random, kind)),
        orders(random_orders(random, book, orders_count)),
        lots(random_lots(random, lots_count)) {}
  DayPlan plan() const { return plan_of(orders, lots, book); }

  Random random;
  book::Book book;
  std::vector<Order> orders;
  std::vector<OnHand> lots;
};

}  // namespace lardiner::plan::kitchen
