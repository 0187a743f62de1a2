// Needs through sub-batches, from the orders down to what is bought, netted off what is on hand.
#include "plan/day_plan_explosion.h"

#include <algorithm>
#include <tuple>

#include "measure/text.h"
#include "measure/wide.h"
#include "plan/counted.h"
#include "plan/day_plan_merging.h"

namespace lardiner::plan {

using measure::Dimension;
using measure::Quantity;
using measure::Ratio;

namespace {

// What of an item stands on hand, and which of its rows could not serve a need that stayed open.
struct Stock {
  Shelf shelf;
  bool asked = false;
  std::array<bool, kRows> too_short{};
  std::optional<PassedOver::Why> frozen;  // why none of it that is frozen would do
};

// What is asked of the ends of lots.
struct Asked {
  LeastEnds least;
  std::optional<PassedOver::Why> frozen;  // why nothing frozen will do
};

class Running {
 public:
  Running(const Kitchen& kitchen, const std::vector<Root>& roots)
      : kitchen_(kitchen),
        items_(kitchen.items),
        roots_(roots),
        needs_(items_.made.size()),
        goods_needs_(items_.bought.size()),
        stock_(items_.made.size()),
        goods_stock_(items_.bought.size()),
        levels_(items_.made.size(), kNobody) {
    out_.open.resize(roots.size());
    for (size_t i = 0; i < roots.size(); ++i)
      if (roots[i].kind == For::Kind::Level) levels_[roots[i].item] = i;
  }

  Explosion run() {
    place_lots();
    for (size_t i = 0; i < roots_.size(); ++i)
      if (roots_[i].kind == For::Kind::Order) needs_[roots_[i].item].push_back(need_of(i));
    for (size_t item = items_.made.size(); item-- > 0;) make(item);
    for (size_t item = 0; item < items_.bought.size(); ++item) buy(item);
    pass_over();
    return std::move(out_);
  }

 private:
  void place_lots() {
    for (const HandLot& lot : kitchen_.on_hand.lots)
      (lot.made ? stock_ : goods_stock_)[lot.item].shelf.add(lot.row, lot.lot, lot.end, lot.amount);
    for (Stock& stock : stock_) stock.shelf.sort();
    for (Stock& stock : goods_stock_) stock.shelf.sort();
  }

  Need need_of(size_t root) const {
    const Root& of = roots_[root];
    Need need;
    need.kind = of.kind;
    need.index = root;
    need.amount = of.amount;
    need.at = of.at;
    need.ends = of.ends;
    need.frozen = of.frozen;
    set_window(need, of.item);
    if (of.leave != Leave::Merged || need.urgent()) need.root = root;
    return need;
  }

  void set_window(Need& need, size_t item) const {
    const Made& made = items_.made[item];
    const size_t way = need.kind == For::Kind::Order ? made.order_way : made.way;
    need.latest = need.at - made.seconds * kSecond;
    need.earliest = kitchen_.keeping.earliest(way, need.ends.until);
    need.safe_from = kitchen_.safe_starts.of(item, way, need.ends);
  }

  // The most urgent first, then by time; an order of their own makes them independent of the order of files.
  void make(size_t item) {
    std::vector<Need>& needs = needs_[item];
    std::sort(needs.begin(), needs.end(), [](const Need& a, const Need& b) {
      return std::tuple(!a.urgent(), a.at, a.kind, a.index) < std::tuple(!b.urgent(), b.at, b.kind, b.index);
    });
    for (Need& need : needs) net_made(need, item);
    add_level(item);
    std::erase_if(needs, [&](const Need& need) { return need.amount == 0 || !can_be_made(need, item); });
    for (const std::vector<Need>& group : merged(std::move(needs))) add_making(item, group);
  }

  void net_made(Need& need, size_t item) {
    const Made& made = items_.made[item];
    net(need, stock_[item], made.tcs, made.product->shelf_lives);
  }

  Asked asked_of(const Need& need, bool tcs, const std::vector<book::ShelfLife>& lives) const {
    const Instant used = need.at + 1;
    const Instant dated = std::max(used, need.ends.lot);
    if (need.kind == For::Kind::Order && need.frozen) return {{kNever, kNever, dated, dated, tcs ? kNever : 0}, {}};
    Asked out{{dated, std::max(used, need.ends.stable_lot), kNever, kNever, kNever}, {}};
    if (tcs && thawed_end(lives, need.at, need.thaws, kitchen_.calendar) < dated)
      out.frozen = PassedOver::Why::FrozenUnknown;
    else if (tcs && !time_to_thaw(need.at, need.thaws, kitchen_.calendar))
      out.frozen = PassedOver::Why::NoTimeToThaw;
    if (out.frozen) return out;
    out.least[static_cast<size_t>(Row::FrozenDated)] = dated;
    out.least[static_cast<size_t>(Row::FrozenQuality)] = used;
    out.least[static_cast<size_t>(Row::FrozenUndated)] = 0;
    return out;
  }

  void net(Need& need, Stock& stock, bool tcs, const std::vector<book::ShelfLife>& lives) {
    const auto& [least, frozen] = asked_of(need, tcs, lives);
    stock.asked = true;
    for (const Shelf::Taken& taken : stock.shelf.take(least, need.amount)) {
      if (taken.frozen && tcs) wait_for_thawing(need, lives);
      need.amount -= taken.amount;
      Take take;
      take.lot = taken.lot;
      take.quantity.amount = taken.amount;
      take.what = {need.kind, need.index, take.quantity};
      out_.takes.push_back(take);
    }
    if (need.amount == 0) return;
    for (size_t row = 0; row < kRows; ++row) stock.too_short[row] = stock.too_short[row] || least[row] != kNever;
    if (frozen) stock.frozen = frozen;
  }

  // Of what goes into a making: it begins when that is thawed, and not so soon that it is over too early.
  void wait_for_thawing(const Need& need, const std::vector<book::ShelfLife>& lives) {
    if (need.kind != For::Kind::Making) return;
    Instant& earliest = out_.makings[need.index].earliest;
    const Instant until = std::max(need.at + 1, need.ends.lot);
    earliest = std::max(earliest, first_thawed(lives, need.at, until, need.thaws, kitchen_.calendar));
  }

  // A level is made up to after all needs were netted.
  void add_level(size_t item) {
    if (levels_[item] == kNobody) return;
    const Made& made = items_.made[item];
    Need need = need_of(levels_[item]);
    const std::int64_t there = stock_[item].shelf.left(asked_of(need, made.tcs, made.product->shelf_lives).least);
    need.amount = std::max<std::int64_t>(0, need.amount - there);
    needs_[item].push_back(need);
  }

  bool can_be_made(const Need& need, size_t item) {
    const Made& made = items_.made[item];
    const bool direct = need.kind != For::Kind::Making;
    if (direct && roots_[need.index].leave == Leave::OnHandOnly) {
      out_.open[need.index] = need.amount;
      return false;
    }
    Failure failure;
    failure.item = item;
    failure.direct = direct;
    if (!made.errors.empty()) {
      failure.why = Unmet::Why::NoWeight;
    } else if (need.latest < kitchen_.calendar.now()) {
      failure.by = kitchen_.calendar.now() - need.latest;
    } else if (need.earliest > need.latest) {
      const size_t way = direct ? made.order_way : made.way;
      failure.why = direct ? Unmet::Why::LifeTooShort : Unmet::Why::NoWindow;
      failure.by = need.ends.until - kitchen_.keeping.end(way, need.latest);
    } else {
      return true;
    }
    if (direct) out_.open[need.index] = need.amount;
    add_roots(need.kind, need.index, failure.roots);
    out_.failures.push_back(std::move(failure));
    return false;
  }

  void add_roots(For::Kind kind, size_t index, std::vector<size_t>& roots) const {
    if (kind != For::Kind::Making) {
      if (std::find(roots.begin(), roots.end(), index) == roots.end()) roots.push_back(index);
      return;
    }
    const Making& making = out_.makings[index];
    if (making.root != kNobody) return add_roots(For::Kind::Order, making.root, roots);
    for (const For& of : making.wanted_by) add_roots(of.kind, of.index, roots);
  }

  void add_making(size_t item, const std::vector<Need>& group) {
    const Made& made = items_.made[item];
    Making making;
    making.item = item;
    making.latest = kNever;
    making.root = group.front().root;
    measure::Wide wanted = 0;
    for (const Need& need : group) {
      wanted += need.amount;
      making.earliest = std::max(making.earliest, need.earliest);
      making.latest = std::min(making.latest, need.latest);
      making.ends = later(making.ends, need.ends);
      making.wanted_by.push_back({need.kind, need.index, {made.one.dimension, need.amount}});
      if (need.kind == For::Kind::Making) out_.makings[need.index].subs.push_back(out_.makings.size());
    }
    making.output = output_for(made, measure::saturated(wanted));
    making.makings = measure::ratio({made.one.dimension, making.output}, made.one);
    out_.makings.push_back(making);
    need_parts(out_.makings.size() - 1);
  }

  // Whole pieces with what the count loses, and whole multiples where the book states one.
  static std::int64_t output_for(const Made& made, std::int64_t wanted) {
    Quantity output{made.one.dimension, wanted};
    if (output.dimension == Dimension::Count) {
      const Ratio pieces = measure::in_unit(output, measure::Unit::Piece);
      output = measure::quantity({units_to_make(*made.product, pieces), 1}, measure::Unit::Piece);
    }
    if (made.made_in && made.made_in->amount > 0) output = measure::rounded_up_to_step(output, *made.made_in);
    return output.amount;
  }

  void need_parts(size_t index) {
    const Making making = out_.makings[index];
    const Made& made = items_.made[making.item];
    const Consumer consumer{made, making.ends, making.latest};
    for (const Part& part : made.parts) {
      Need need;
      need.kind = For::Kind::Making;
      need.index = index;
      need.at = making.latest;
      need.thaws = made.thaws;
      need.root = making.root;
      const Quantity weight = measure::scaled(part.weight, making.makings);
      if (!part.made) {
        need.amount = weight.amount;
        need.ends = ends_of_input(consumer, {items_.bought[part.item].raw, false, false});
        goods_needs_[part.item].push_back(need);
        continue;
      }
      const Made& sub = items_.made[part.item];
      need.amount = in_planned_dimension(sub, weight);
      need.ends = ends_of_input(consumer, {sub.raw, sub.quality_only, sub.holds_ready});
      set_window(need, part.item);
      needs_[part.item].push_back(need);
    }
  }

  static std::int64_t in_planned_dimension(const Made& made, Quantity weight) {
    if (made.one.dimension == Dimension::Mass || made.one_weight.amount == 0) return weight.amount;
    return measure::scaled(made.one, measure::ratio(weight, made.one_weight)).amount;
  }

  void buy(size_t item) {
    const Bought& bought = items_.bought[item];
    std::vector<Need>& needs = goods_needs_[item];
    std::sort(needs.begin(), needs.end(),
              [](const Need& a, const Need& b) { return std::tie(a.at, a.index) < std::tie(b.at, b.index); });
    for (Need& need : needs) {
      net(need, goods_stock_[item], bought.tcs, bought.ingredient->shelf_lives);
      if (need.amount > 0) out_.buys.push_back({item, need.index, need.amount});
    }
  }

  void pass_over() {
    out_.passed_over = kitchen_.on_hand.past;
    for (const HandLot& lot : kitchen_.on_hand.undated)
      if ((lot.made ? stock_ : goods_stock_)[lot.item].asked)
        out_.passed_over.push_back({lot.lot, PassedOver::Why::NoDate});
    for (const Stock& stock : stock_) pass_over(stock);
    for (const Stock& stock : goods_stock_) pass_over(stock);
    std::sort(out_.passed_over.begin(), out_.passed_over.end(),
              [](const PassedOver& a, const PassedOver& b) { return a.lot < b.lot; });
  }

  void pass_over(const Stock& stock) {
    for (size_t row = 0; row < kRows; ++row) {
      const bool no_thawing = row >= static_cast<size_t>(Row::FrozenDated) && stock.frozen;
      if (!no_thawing && !stock.too_short[row]) continue;
      for (const size_t lot : stock.shelf.untouched(static_cast<Row>(row)))
        out_.passed_over.push_back({lot, no_thawing ? *stock.frozen : PassedOver::Why::TooShort});
    }
  }

  const Kitchen& kitchen_;
  const Items& items_;
  const std::vector<Root>& roots_;
  std::vector<std::vector<Need>> needs_, goods_needs_;
  std::vector<Stock> stock_, goods_stock_;
  std::vector<size_t> levels_;  // the root of each product's level
  Explosion out_;
};

}  // namespace

Explosion exploded(const Kitchen& kitchen, const std::vector<Root>& roots) { return Running(kitchen, roots).run(); }

}  // namespace lardiner::plan
