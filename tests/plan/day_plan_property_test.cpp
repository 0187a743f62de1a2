// What holds of every plan: of seeded random books, orders and lots.
#include <map>

#include "book/weighing.h"
#include "plan/amounts_of.h"
#include "random_kitchen.h"

using namespace lardiner;
using namespace lardiner::plan;
using namespace lardiner::plan::kitchen;
using measure::Quantity;

namespace {

constexpr unsigned kSeeds = 40;

const Kind kKinds[] = {{false, true}, {true, true}};

// All of a plan as text.
QString shown(const DayPlan& plan) {
  QString text;
  const auto add = [&](const auto&... values) {
    ((text += QStringLiteral("%1 ").arg(values)), ...);
    text += u'\n';
  };
  const auto add_for = [&](const For& of) { add(static_cast<int>(of.kind), of.index, of.quantity.amount); };
  for (const PlannedMaking& m : plan.makings) {
    add(m.product->id, m.makings.num(), m.makings.den(), m.output.amount, m.earliest.toString(Qt::ISODate),
        m.latest.toString(Qt::ISODate), m.start.toString(Qt::ISODate), m.clean_down);
    for (const For& of : m.wanted_by) add_for(of);
  }
  for (const Take& t : plan.takes) {
    add(plan.on_hand[t.lot].item, plan.on_hand[t.lot].lot, t.quantity.amount);
    add_for(t.what);
  }
  for (const Buy& b : plan.buys) add(b.ingredient->id, b.need.amount, b.buy.amount, b.by.toString(Qt::ISODate));
  for (const Unmet& u : plan.unmet)
    add(u.product, u.order ? plan.orders[*u.order].number : QString(), u.quantity.amount, static_cast<int>(u.why),
        u.seconds, u.item);
  for (const PassedOver& p : plan.passed_over) add(plan.on_hand[p.lot].lot, static_cast<int>(p.why));
  return text;
}

const std::vector<Case>& cases() {
  static const std::vector<Case> all = [] {
    std::vector<Case> made;
    for (const Kind& kind : kKinds)
      for (unsigned seed = 1; seed <= kSeeds; ++seed) made.emplace_back(seed, kind);
    return made;
  }();
  return all;
}

// The seeds with needs and no more, then those with whole multiples.
template <class Check>
void each_case(const Check& check) {
  for (size_t i = 0; i < cases().size(); ++i) {
    INFO("case " << i);
    check(cases()[i]);
  }
}

// Within what rounding to the smallest unit leaves of so many amounts.
bool near(std::int64_t a, std::int64_t b, std::int64_t within = 1000) { return std::abs(a - b) <= within; }

}  // namespace

TEST_CASE("what goes in is what comes out: takes, makings and what is bought add up", "[plan][day_plan][property]") {
  each_case([](const Case& of) {
    const DayPlan plan = of.plan();
    book::Weighing weighing(of.book);
    std::map<std::pair<size_t, QString>, std::int64_t> in;  // by making and item
    std::map<QString, std::int64_t> lacks;                  // of ingredients, by all makings
    for (size_t i = 0; i < plan.makings.size(); ++i)
      for (const For& of_making : plan.makings[i].wanted_by)
        if (of_making.kind == For::Kind::Making)
          in[{of_making.index, plan.makings[i].product->id}] += of_making.quantity.amount;
    for (const Take& take : plan.takes)
      if (take.what.kind == For::Kind::Making)
        in[{take.what.index, plan.on_hand[take.lot].item}] += take.quantity.amount;
    for (size_t i = 0; i < plan.makings.size(); ++i) {
      const book::Product& product = *plan.makings[i].product;
      std::map<QString, std::int64_t> wanted;
      for (size_t l = 0; l < product.formula.size(); ++l) {
        const QString& item = product.formula[l].item;
        const book::Ingredient* goods = of.book.ingredient(item);
        const Quantity edible = scaled((*weighing.lines(product))[l], plan.makings[i].makings);
        wanted[item] += goods ? scaled(edible, measure::Ratio(1, 1) / goods->edible).amount : edible.amount;
      }
      for (const auto& [item, amount] : wanted) {
        INFO(product.id.toStdString() << ": " << item.toStdString());
        if (of.book.product(item))
          CHECK(near(in[{i, item}], amount));
        else
          lacks[item] += amount - in[{i, item}];
      }
    }
    for (const auto& [item, amount] : lacks) CHECK(near(bought(plan, item.toLatin1().constData()).amount, amount));
  });
}

TEST_CASE("each order is met from the shelf, by a making, or told as unmet, and no more",
          "[plan][day_plan][property]") {
  each_case([](const Case& of) {
    const DayPlan plan = of.plan();
    std::vector<std::int64_t> met(plan.orders.size());
    for (const Take& take : plan.takes)
      if (take.what.kind == For::Kind::Order) met[take.what.index] += take.quantity.amount;
    for (const PlannedMaking& m : plan.makings)
      for (const For& what : m.wanted_by)
        if (what.kind == For::Kind::Order) met[what.index] += what.quantity.amount;
    for (const Unmet& unmet : plan.unmet)
      if (unmet.order) met[*unmet.order] += unmet.quantity.amount;
    for (size_t i = 0; i < met.size(); ++i) CHECK(met[i] == plan.orders[i].quantity.amount);
  });
}

TEST_CASE("a making is what it is wanted for, made over and in whole multiples", "[plan][day_plan][property]") {
  each_case([](const Case& of) {
    for (const PlannedMaking& m : of.plan().makings) {
      std::int64_t wanted = 0;
      for (const For& what : m.wanted_by) wanted += what.quantity.amount;
      const bool pieces = m.output.dimension == measure::Dimension::Count;
      const Quantity over = scaled({m.output.dimension, wanted}, measure::Ratio(1, 1) + m.product->make_over);
      const std::int64_t step = m.product->made_in ? m.product->made_in->amount : pieces ? 1'000'000 : 1;
      CHECK(m.output.amount >= over.amount);
      CHECK(m.output.amount < over.amount + step);
      CHECK(m.output.amount % step == 0);
      CHECK(m.makings == measure::ratio(m.output, *m.product->makes));
    }
  });
}

TEST_CASE("the order of orders and of lots in their files decides nothing", "[plan][day_plan][property]") {
  each_case([](const Case& of) {
    Case shuffled = of;
    std::shuffle(shuffled.orders.begin(), shuffled.orders.end(), shuffled.random.engine());
    std::shuffle(shuffled.lots.begin(), shuffled.lots.end(), shuffled.random.engine());
    CHECK(shown(of.plan()) == shown(shuffled.plan()));
  });
}

TEST_CASE("no gram of a lot is taken twice, and none of a lot past its date or without one",
          "[plan][day_plan][property]") {
  each_case([](const Case& of) {
    const DayPlan plan = of.plan();
    book::Weighing weighing(of.book);
    std::vector<std::int64_t> taken(plan.on_hand.size());
    for (const Take& take : plan.takes) {
      const OnHand& lot = plan.on_hand[take.lot];
      const book::Ingredient* goods = of.book.ingredient(lot.item);
      taken[take.lot] += take.quantity.amount;
      CHECK((!lot.use_by || lot.use_by->end > at(kNow)));
      CHECK((lot.use_by || (goods && goods->tcs.is == book::TcsStatement::Is::No)));
    }
    for (size_t i = 0; i < taken.size(); ++i) {
      const OnHand& lot = plan.on_hand[i];
      const book::Product* product = of.book.product(lot.item);
      CHECK(taken[i] <= (product ? amount_of(weighing, *product, lot.quantity)->amount : lot.quantity.amount));
    }
  });
}

TEST_CASE("every start lies in its window, none before the last, and what goes in is ready",
          "[plan][day_plan][property]") {
  each_case([](const Case& of) {
    const DayPlan plan = of.plan();
    QDateTime last = at(kNow);
    for (const PlannedMaking& m : plan.makings) {
      CHECK(m.earliest >= at(kNow));
      CHECK(m.earliest <= m.start);
      CHECK(m.start <= m.latest);
      CHECK(m.start >= last);
      last = m.start;
      for (const For& what : m.wanted_by) {
        const QDateTime ready = m.start.addSecs(m.seconds);
        if (what.kind == For::Kind::Making) CHECK(ready <= plan.makings[what.index].start);
        if (what.kind == For::Kind::Order) CHECK(ready <= plan.orders[what.index].due);
      }
    }
  });
}

// Every product of these books keeps so many days, the day of its start being the first, and nothing is cooked: counted
// here by the calendar alone.
TEST_CASE("what is made, and every lot in it, keeps as long as its orders want", "[plan][day_plan][property]") {
  each_case([](const Case& of) {
    const DayPlan plan = of.plan();
    std::vector<QDate> until(plan.makings.size());
    const auto wanted = [&](const For& what) {
      if (what.kind == For::Kind::Level) return QDate();
      if (what.kind == For::Kind::Making) return until[what.index];
      const Order& order = plan.orders[what.index];
      return order.due.date().addDays(order.life ? order.life->count - 1 : 0);
    };
    for (size_t i = plan.makings.size(); i-- > 0;) {
      const PlannedMaking& m = plan.makings[i];
      for (const For& what : m.wanted_by)
        if (wanted(what).isValid()) until[i] = until[i].isValid() ? std::max(until[i], wanted(what)) : wanted(what);
      const int days = m.product->shelf_life(book::State::Chilled)->length.count;
      if (until[i].isValid()) CHECK(m.start.date().addDays(days - 1) >= until[i]);
    }
    for (const Take& take : plan.takes) {
      const OnHand& lot = plan.on_hand[take.lot];
      if (lot.use_by && wanted(take.what).isValid()) CHECK(lot.use_by->end > batch::start_of(wanted(take.what), kZone));
    }
  });
}

TEST_CASE("a plan that meets all orders still meets them when more is on hand", "[plan][day_plan][property]") {
  int met = 0;
  each_case([&](const Case& of) {
    Case more = of;
    if (!of.plan().unmet.empty()) {  // the orders that were met at least
      std::vector<Order> kept;
      const DayPlan plan = of.plan();
      for (size_t i = 0; i < plan.orders.size(); ++i)
        if (std::none_of(plan.unmet.begin(), plan.unmet.end(), [&](const Unmet& u) { return u.order == i; }))
          kept.push_back(plan.orders[i]);
      more.orders = kept;
    }
    if (!more.plan().unmet.empty()) return;
    ++met;
    for (int i = 0; i < 6; ++i) {
      more.lots.push_back(random_lot(more.random, 100 + i));
      CHECK(more.plan().unmet.empty());
    }
  });
  CHECK(met > static_cast<int>(kSeeds));
}

TEST_CASE("twice the orders without a shelf are twice the makings", "[plan][day_plan][property]") {
  for (unsigned seed = 1; seed <= kSeeds; ++seed) {
    Case once(seed, {false, false}, 6, 0);
    Case twice = once;
    for (Order& order : twice.orders) order.quantity = scaled(order.quantity, {2, 1});
    const DayPlan a = once.plan(), b = twice.plan();
    REQUIRE(a.makings.size() == b.makings.size());
    for (size_t i = 0; i < a.makings.size(); ++i)
      CHECK(near(2 * a.makings[i].output.amount, b.makings[i].output.amount));
  }
}
