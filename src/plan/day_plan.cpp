// What to make, pull and buy for the orders, and when each making can start.
#include "plan/day_plan.h"

#include <algorithm>
#include <tuple>

#include "batch/use_by_limits.h"
#include "measure/text.h"
#include "plan/amounts_of.h"
#include "plan/day_plan_buying.h"
#include "plan/day_plan_explosion.h"
#include "plan/day_plan_order_of_work.h"

namespace lardiner::plan {

using measure::Quantity;

namespace {

Instant instant(const QDateTime& time) { return time.toMSecsSinceEpoch(); }

auto key_of(const Order& order) {
  const book::Length life = order.life.value_or(book::Length{});
  return std::tuple(instant(order.due), order.site, order.number, order.product, order.quantity.dimension,
                    order.quantity.amount, order.life.has_value(), life.unit, life.count);
}

auto key_of(const OnHand& lot) {
  return std::tuple(lot.item, lot.use_by ? instant(lot.use_by->end) : kForever, lot.lot, lot.container, lot.where,
                    lot.state, lot.quantity.dimension, lot.quantity.amount, lot.prepared ? instant(*lot.prepared) : 0,
                    lot.use_by && lot.use_by->kind == book::EndKind::BestBefore);
}

template <class Row>
void sort(std::vector<Row>& rows) {
  std::stable_sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) { return key_of(a) < key_of(b); });
}

QStringList wanted_products(const book::Book& book, const std::vector<Order>& orders) {
  QSet<QString> ids;
  for (const Order& order : orders) ids.insert(order.product);
  for (const book::Product& product : book.products)
    if (product.keep_on_hand) ids.insert(product.id);
  QStringList all(ids.begin(), ids.end());
  all.sort();
  return all;
}

class Planning {
 public:
  Planning(const book::Book& book, DayPlan& plan, const QDateTime& now)
      : plan_(plan),
        calendar_(book.kitchen.zone, now),
        keeping_(book, calendar_),
        items_(book, wanted_products(book, plan.orders), keeping_),
        safe_starts_(items_, keeping_, calendar_),
        on_hand_(on_hand_rows(items_, plan.on_hand, {book, plan.on_hand, keeping_, calendar_}, calendar_)) {}

  void run() {
    for (size_t i = 0; i < plan_.orders.size(); ++i) add_order(i);
    add_levels();
    explode();
    add_unmet();
    add_makings();
  }

 private:
  void add_order(size_t index) {
    const Order& order = plan_.orders[index];
    const std::optional<size_t> item = items_.made_index(order.product);
    const std::optional<Quantity> amount =
        item ? amount_of(items_.weighing, *items_.made[*item].product, order.quantity) : std::nullopt;
    if (!amount) {
      problem::Errors errors;
      if (item) errors = items_.made[*item].errors;
      plan_.unmet.push_back(
          {index, order.product, order.quantity, Unmet::Why::NoWeight, 0, order.product, std::move(errors)});
      return;
    }
    Root root;
    root.index = index;
    root.item = *item;
    root.amount = whole_pieces(*amount).amount;
    root.at = instant(order.due);
    root.frozen = items_.made[*item].put_up.frozen;
    root.ends = ends_of_order(until(order), root.at, root.frozen, calendar_);
    roots_.push_back(root);
  }

  static Quantity whole_pieces(Quantity amount) {
    if (amount.dimension != measure::Dimension::Count) return amount;
    return measure::rounded_up_to_step(amount, measure::one(measure::Unit::Piece));
  }

  // Without a life wanted it must still be good when it leaves.
  Instant until(const Order& order) const {
    if (!order.life) return instant(order.due) + 1;
    return instant(batch::make_limit({}, *order.life, order.due, calendar_.zone()).end);
  }

  // What is kept on hand is counted at the end of the last due day.
  void add_levels() {
    const Instant last = plan_.orders.empty() ? calendar_.now() : instant(plan_.orders.back().due);
    const Instant end = calendar_.end_of_day(last + 1);
    for (size_t item = 0; item < items_.made.size(); ++item) {
      const Made& made = items_.made[item];
      if (!made.product->keep_on_hand) continue;
      const std::optional<Quantity> level = amount_of(items_.weighing, *made.product, *made.product->keep_on_hand);
      if (!level) continue;
      Root root;
      root.kind = For::Kind::Level;
      root.index = root.item = item;
      root.amount = level->amount;
      root.at = std::max(end, calendar_.now() + made.seconds * kSecond);
      root.ends = ends_of_order(end, root.at, false, calendar_);
      roots_.push_back(root);
    }
  }

  // What fails deep in a making is tried again: alone first, then from what is on hand.
  void explode() {
    failures_.resize(roots_.size());
    const Kitchen kitchen{items_, keeping_, calendar_, safe_starts_, on_hand_};
    do {
      explosion_ = exploded(kitchen, roots_);
    } while (give_way());
  }

  bool give_way() {
    bool again = false;
    for (const Failure& failure : explosion_.failures) {
      for (const size_t root : failure.roots) {
        const bool shared = failure.roots.size() > 1;
        if (!shared) note(root, failure);
        if (failure.direct || roots_[root].leave == Leave::OnHandOnly) continue;
        if (shared && roots_[root].leave == Leave::Alone) continue;
        roots_[root].leave = shared ? Leave::Alone : Leave::OnHandOnly;
        again = true;
      }
    }
    return again;
  }

  // Of several reasons the one by the most.
  void note(size_t root, const Failure& failure) {
    std::optional<Failure>& known = failures_[root];
    if (!known || (failure.by > known->by && !known->direct)) known = failure;
  }

  void add_unmet() {
    for (size_t i = 0; i < roots_.size(); ++i)
      if (explosion_.open[i] > 0 && failures_[i])
        plan_.unmet.push_back(unmet(roots_[i], *failures_[i], explosion_.open[i]));
    std::sort(plan_.unmet.begin(), plan_.unmet.end(), [](const Unmet& a, const Unmet& b) {
      return std::tuple(!a.order, a.order, a.product) < std::tuple(!b.order, b.order, b.product);
    });
  }

  Unmet unmet(const Root& root, const Failure& failure, std::int64_t open) const {
    const Made& wanted = items_.made[root.item];
    const Made& fault = items_.made[failure.item];
    Unmet out;
    out.product = wanted.product->id;
    out.quantity = {wanted.one.dimension, open};
    if (root.kind == For::Kind::Order) {
      out.order = root.index;
      out.quantity = measure::scaled(plan_.orders[root.index].quantity, {open, root.amount});
    }
    out.why = failure.why;
    out.item = fault.product->id;
    out.errors = fault.errors;
    if (failure.why == Unmet::Why::LifeTooShort || failure.why == Unmet::Why::NoWindow)
      out.errors = keeping_.errors(failure.direct && root.kind == For::Kind::Order ? fault.order_way : fault.way);
    if (out.errors.empty()) out.seconds = static_cast<int>((failure.by + kSecond - 1) / kSecond);
    return out;
  }

  void add_makings() {
    const std::vector<Begun> work = order_of_work(items_, explosion_.makings, calendar_);
    std::vector<Instant> starts(explosion_.makings.size());
    place_.resize(explosion_.makings.size());
    for (size_t i = 0; i < work.size(); ++i) {
      starts[work[i].making] = work[i].start;
      place_[work[i].making] = i;
    }
    for (const Begun& begun : work) plan_.makings.push_back(planned(begun));
    add_takes(starts);
    plan_.buys = buying(items_, explosion_.buys, starts, calendar_);
    plan_.passed_over = std::move(explosion_.passed_over);
  }

  PlannedMaking planned(const Begun& begun) const {
    const Making& making = explosion_.makings[begun.making];
    const Made& made = items_.made[making.item];
    PlannedMaking out;
    out.product = made.product;
    out.makings = making.makings;
    out.output = {made.one.dimension, making.output};
    for (const For& of : making.wanted_by) out.wanted_by.push_back(named(of, made.one.dimension));
    std::sort(out.wanted_by.begin(), out.wanted_by.end(),
              [](const For& a, const For& b) { return std::tie(a.kind, a.index) < std::tie(b.kind, b.index); });
    out.earliest = calendar_.time(making.earliest);
    out.latest = calendar_.time(making.latest);
    out.any_time_before = making.earliest == calendar_.now();
    out.seconds = made.seconds;
    out.time_stated = made.time_stated;
    out.start = calendar_.time(begun.start);
    out.clean_down = begun.clean_down;
    return out;
  }

  // As the plan names it, from what the explosion calls it.
  For named(For of, measure::Dimension dimension) const {
    of.quantity.dimension = dimension;
    if (of.kind == For::Kind::Order) of.index = roots_[of.index].index;
    if (of.kind == For::Kind::Making) of.index = place_[of.index];
    if (of.kind == For::Kind::Level) of.index = 0;
    return of;
  }

  void add_takes(const std::vector<Instant>& starts) {
    for (Take take : explosion_.takes) {
      take.thaw_by = thaw_by_of(take, starts);
      const std::optional<size_t> made = items_.made_index(plan_.on_hand[take.lot].item);
      const measure::Dimension dimension = made ? items_.made[*made].one.dimension : measure::Dimension::Mass;
      take.quantity.dimension = dimension;
      take.what = named(take.what, dimension);
      plan_.takes.push_back(take);
    }
    std::sort(plan_.takes.begin(), plan_.takes.end(), [](const Take& a, const Take& b) {
      const auto key = [](const Take& t) { return std::tuple(t.what.kind != For::Kind::Making, t.what.index, t.lot); };
      return key(a) < key(b);
    });
  }

  // Of a take that still names what it is for as the explosion does.
  std::optional<QDateTime> thaw_by_of(const Take& take, const std::vector<Instant>& starts) const {
    const OnHand& lot = plan_.on_hand[take.lot];
    if (lot.state != book::State::Frozen || !items_.needs_control(lot.item)) return std::nullopt;
    if (take.what.kind == For::Kind::Order) {
      const Root& order = roots_[take.what.index];
      return order.frozen ? std::nullopt : std::optional(calendar_.time(thaw_by(order.at)));
    }
    const Making& making = explosion_.makings[take.what.index];
    if (items_.made[making.item].thaws) return std::nullopt;
    return calendar_.time(thaw_by(starts[take.what.index]));
  }

  DayPlan& plan_;
  Calendar calendar_;
  Keeping keeping_;
  Items items_;
  SafeStarts safe_starts_;
  OnHandRows on_hand_;
  std::vector<Root> roots_;
  std::vector<std::optional<Failure>> failures_;
  Explosion explosion_;
  std::vector<size_t> place_;  // in the order of work, of each making
};

}  // namespace

DayPlan day_plan(const book::Book& book, std::vector<Order> orders, std::vector<OnHand> on_hand, const QDateTime& now) {
  DayPlan plan;
  plan.orders = std::move(orders);
  plan.on_hand = std::move(on_hand);
  sort(plan.orders);
  sort(plan.on_hand);
  Planning(book, plan, now).run();
  return plan;
}

}  // namespace lardiner::plan
