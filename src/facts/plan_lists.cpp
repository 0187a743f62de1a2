// The lists of a plan that are carried about: what to pull, what to buy, which lots are not used, the orders.
#include "facts/plan_lists.h"

#include <algorithm>
#include <map>

namespace lardiner::facts {

using measure::Quantity;

namespace {

const QString kBetween = QStringLiteral(" · ");

// What is pulled of a lot for makings, and to go out as it is.
struct Share {
  std::optional<Quantity> quantity;
  std::optional<QDateTime> thaw_by;
};
struct Pulled {
  Share in, out;
};

class CarriedLists {
 public:
  CarriedLists(const SheetPhrases& phrases, const plan::DayPlan& plan) : phrases_(phrases), plan_(plan) {}

  // By lot, whatever it goes into, in the order of the places where they stand.
  Table pull_list() const {
    std::map<size_t, Pulled> pulled;
    for (const plan::Take& take : plan_.takes) {
      const bool goes_out = take.what.kind == plan::For::Kind::Order;
      Share& share = goes_out ? pulled[take.lot].out : pulled[take.lot].in;
      share.quantity = share.quantity ? *share.quantity + take.quantity : take.quantity;
      if (take.thaw_by && (!share.thaw_by || *take.thaw_by < *share.thaw_by)) share.thaw_by = take.thaw_by;
    }
    std::vector<std::pair<size_t, Pulled>> rows(pulled.begin(), pulled.end());
    std::stable_sort(rows.begin(), rows.end(), [&](const auto& a, const auto& b) {
      const plan::OnHand &one = plan_.on_hand[a.first], &other = plan_.on_hand[b.first];
      if (one.where != other.where) return one.where < other.where;
      return phrases_.name(phrases_.first(), one.item) < phrases_.name(phrases_.first(), other.item);
    });
    Table table{phrases_.both("sheet.pull_list"),
                {{Column::Kind::Tick, {}, 1},
                 {Column::Kind::Text, phrases_.both("sheet.item"), 2},
                 {Column::Kind::Text, phrases_.both("sheet.lot"), 3},
                 {Column::Kind::Amount, phrases_.both("sheet.amount"), 1}},
                {},
                true};
    for (const auto& [index, amounts] : rows)
      for (const bool goes_out : {false, true})
        if (const Share& share = goes_out ? amounts.out : amounts.in; share.quantity)
          table.rows.push_back(pulled_row(plan_.on_hand[index], share, goes_out));
    return table;
  }

  Table buying() const {
    Table table{phrases_.both("sheet.buying"),
                {{Column::Kind::Tick, {}, 1},
                 {Column::Kind::Text, phrases_.both("sheet.item"), 3},
                 {Column::Kind::Amount, phrases_.both("sheet.need"), 1},
                 {Column::Kind::Text, phrases_.both("sheet.buy"), 2},
                 {Column::Kind::Text, phrases_.both("sheet.needed_by"), 2}},
                {},
                true};
    for (const plan::Buy& buy : plan_.buys) {
      Cell need{Cell::Kind::Text, phrases_.amount(buy.need), {}, false};
      table.rows.push_back({{tick(),
                             phrases_.name_cell(buy.ingredient->id),
                             need,
                             bought(buy),
                             {Cell::Kind::Text, phrases_.brief(phrases_.first(), buy.by), {}, false}},
                            false});
    }
    return table;
  }

  Table passed_over() const {
    Table table{phrases_.both("sheet.passed_over"),
                {{Column::Kind::Text, phrases_.both("sheet.item"), 2},
                 {Column::Kind::Text, phrases_.both("sheet.lot"), 2},
                 {Column::Kind::Text, phrases_.both("sheet.why"), 3}},
                {},
                true};
    for (const plan::PassedOver& passed : plan_.passed_over) {
      const plan::OnHand& lot = plan_.on_hand[passed.lot];
      const Cell why = phrases_.cell([&](const Wording& wording) { return wording.word(why_key(passed.why)); });
      table.rows.push_back({{phrases_.name_cell(lot.item), lot_cell_of(lot), why}, false});
    }
    return table;
  }

  Table orders() const {
    Table table{phrases_.both("sheet.orders"),
                {{Column::Kind::Text, phrases_.both("sheet.due"), 2},
                 {Column::Kind::Text, phrases_.both("sheet.product"), 3},
                 {Column::Kind::Amount, phrases_.both("sheet.amount"), 1}},
                {},
                true};
    for (const plan::Order& order : plan_.orders) {
      Cell product = phrases_.name_cell(order.product);
      if (const QString site = whom(phrases_, order); !site.isEmpty()) product.small.push_back({site, false});
      table.rows.push_back({{{Cell::Kind::Text, phrases_.brief(phrases_.first(), order.due), {}, false},
                             product,
                             phrases_.amount_cell(order.quantity)},
                            false});
    }
    return table;
  }

 private:
  Row pulled_row(const plan::OnHand& lot, const Share& share, bool goes_out) const {
    Cell item = phrases_.name_cell(lot.item);
    if (share.thaw_by)
      phrases_.add_small(
          item.small,
          [&](const Wording& wording) {
            return wording.sentence("sheet.thaw_by", {phrases_.brief(wording, *share.thaw_by)});
          },
          true);
    if (goes_out)
      phrases_.add_small(
          item.small, [](const Wording& wording) { return wording.word("sheet.goes_out"); }, true);
    return {{tick(), item, lot_cell_of(lot), phrases_.amount_cell(*share.quantity)}, false};
  }

  // The lot, where it stands, and until when it is good.
  Cell lot_cell_of(const plan::OnHand& lot) const {
    Cell cell = lot.lot.isEmpty() ? blank() : Cell{Cell::Kind::Text, lot.lot, {}, false};
    phrases_.add_small(cell.small, [&](const Wording& wording) {
      QStringList parts;
      if (!lot.where.isEmpty()) parts << lot.where;
      if (lot.use_by) {
        const char* key = lot.use_by->kind == book::EndKind::UseBy ? "use_by" : "best_before";
        parts << wording.word(key) + u' ' + end(wording, *lot.use_by);
      }
      return parts.join(kBetween);
    });
    return cell;
  }

  // A date is past at the start of the day after.
  QString end(const Wording& wording, const batch::StatedEnd& stated) const {
    return stated.is_date ? wording.words.date(local(stated.end).date().addDays(-1))
                          : wording.words.date_time(local(stated.end));
  }

  // "3 × 25 lb", "sack" beneath; without a buying unit the weight.
  Cell bought(const plan::Buy& buy) const {
    if (!buy.units) return phrases_.amount_cell(buy.buy);
    const book::Ingredient& ingredient = *buy.ingredient;
    Cell cell{Cell::Kind::Text,
              QString::number(*buy.units) + QStringLiteral(" × ") + phrases_.exact_amount(*ingredient.bought_by),
              {},
              true};
    if (!ingredient.bought_as.empty())
      phrases_.add_small(cell.small, [&](const Wording& wording) {
        return phrases_.text(wording, ingredient.bought_as,
                             QStringLiteral("bought_as of ingredient \"%1\"").arg(ingredient.id), ingredient.place);
      });
    return cell;
  }

  static const char* why_key(plan::PassedOver::Why why) {
    switch (why) {
      case plan::PassedOver::Why::PastDate:
        return "sheet.past_date";
      case plan::PassedOver::Why::TooShort:
        return "sheet.too_short";
      case plan::PassedOver::Why::NoDate:
        return "sheet.no_date";
      case plan::PassedOver::Why::FrozenUnknown:
        return "sheet.frozen_unknown";
      case plan::PassedOver::Why::NoTimeToThaw:
        break;
    }
    return "sheet.no_time_to_thaw";
  }

  QDateTime local(const QDateTime& instant) const { return instant.toTimeZone(phrases_.book().kitchen.zone); }

  const SheetPhrases& phrases_;
  const plan::DayPlan& plan_;
};

}  // namespace

QString whom(const SheetPhrases& phrases, const plan::Order& order) {
  const book::Site* site = phrases.book().site(order.site);
  QStringList parts;
  if (site)
    parts << phrases.text(phrases.first(), site->name, QStringLiteral("the name of site \"%1\"").arg(order.site),
                          site->place);
  if (!order.number.isEmpty()) parts << order.number;
  return parts.join(u' ');
}

std::vector<Table> carried_lists(const SheetPhrases& phrases, const plan::DayPlan& plan) {
  const CarriedLists lists(phrases, plan);
  return {lists.pull_list(), lists.buying(), lists.passed_over(), lists.orders()};
}

}  // namespace lardiner::facts
