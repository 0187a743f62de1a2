// The day's plan as a sheet: the order of work, the start windows, what is pulled and bought, and what cannot be met.
#include "facts/plan_sheet.h"

#include <algorithm>
#include <map>

#include "facts/sheet_parts.h"
#include "facts/start_windows.h"

namespace lardiner::facts {

using measure::Quantity;
using plan::DayPlan;
using plan::Unmet;

namespace {

const QString kBetween = QStringLiteral(" · ");

class PlanSheet {
 public:
  PlanSheet(const SheetPhrases& phrases, const DayPlan& plan, const QStringList& lots, const QDateTime& now)
      : phrases_(phrases), plan_(plan), lots_(lots), now_(now) {}

  WorkSheet make() {
    const QString day = phrases_.day(now_.toTimeZone(phrases_.book().kitchen.zone).date());
    WorkSheet sheet;
    sheet.language = phrases_.language().tag();
    sheet.kind = phrases_.book().kitchen.name;
    sheet.title = phrases_.both("sheet.plan");
    sheet.head.push_back({day + kBetween + phrases_.time(now_), true});
    sheet.running = phrases_.first().word("sheet.plan") + kBetween + day;
    sheet.page_of = phrases_.first().word("sheet.page_of");
    add(sheet.parts, unmet());
    add(sheet.parts, work());
    if (!plan_.makings.empty()) sheet.parts.emplace_back(windows_of(phrases_, plan_, now_));
    add(sheet.parts, pull_list());
    add(sheet.parts, buying());
    add(sheet.parts, passed_over());
    add(sheet.parts, orders());
    phrases_.add_small(caution_, [](const Wording& wording) { return wording.word("sheet.caution_defer"); });
    for (const SmallLine& line : caution_) sheet.foot << line.text;
    return sheet;
  }

 private:
  static void add(std::vector<Part>& parts, const Table& table) {
    if (!table.rows.empty()) parts.emplace_back(table);
  }

  QString heading(const char* key) const { return phrases_.both(key); }

  Cell name_cell(const QString& item) const {
    return phrases_.cell([&](const Wording& wording) { return phrases_.name(wording, item); });
  }

  // "Harbour Street 118"; empty where the order names neither.
  QString whom(const plan::Order& order) const {
    const book::Site* site = phrases_.book().site(order.site);
    QStringList parts;
    if (site)
      parts << phrases_.text(phrases_.first(), site->name, QStringLiteral("the name of site \"%1\"").arg(order.site),
                             site->place);
    if (!order.number.isEmpty()) parts << order.number;
    return parts.join(u' ');
  }

  Table unmet() const {
    Table table{heading("sheet.unmet"),
                {{Column::Kind::Text, heading("sheet.product"), 2},
                 {Column::Kind::Amount, heading("sheet.amount"), 1},
                 {Column::Kind::Text, heading("sheet.why"), 3}},
                {}};
    for (const Unmet& open : plan_.unmet) {
      Cell product = name_cell(open.product);
      if (open.order) {
        const plan::Order& order = plan_.orders[*open.order];
        product.small.push_back({whom(order), false});
        product.small.push_back({phrases_.day_and_time(order.due), false});
      } else {
        phrases_.add_small(product.small, [](const Wording& wording) { return wording.word("sheet.on_hand_level"); });
      }
      std::erase_if(product.small, [](const SmallLine& line) { return line.text.isEmpty(); });
      const Cell why = phrases_.cell([&](const Wording& wording) { return reason(wording, open); });
      table.rows.push_back({{product, phrases_.amount_cell(open.quantity), why}, false});
    }
    return table;
  }

  QString reason(const Wording& wording, const Unmet& open) const {
    const QString item = phrases_.name(wording, open.item);
    if (open.seconds == 0)
      return wording.sentence(open.why == Unmet::Why::NoWeight ? "sheet.no_weight" : "sheet.no_life", {item});
    const QString by = lasting(wording, open.seconds);
    switch (open.why) {
      case Unmet::Why::TooLate:
        return wording.sentence("sheet.too_late", {item, by});
      case Unmet::Why::LifeTooShort:
        return wording.sentence("sheet.life_too_short", {item, by});
      case Unmet::Why::NoWindow:
        return wording.sentence("sheet.no_window", {item, by});
      case Unmet::Why::NoWeight:
        break;
    }
    return wording.sentence("sheet.no_weight", {item});
  }

  // A day's makings stand beneath its date; where allergens or raw food are left behind it is cleaned down.
  Table work() const {
    Table table{heading("sheet.work"),
                {{Column::Kind::Tick, {}, 1},
                 {Column::Kind::Text, heading("sheet.start"), 1},
                 {Column::Kind::Text, heading("sheet.making"), 4},
                 {Column::Kind::Amount, heading("sheet.amount"), 1},
                 {Column::Kind::Blank, heading("sheet.by"), 1}},
                {}};
    QDate day = local(now_).date();
    for (size_t i = 0; i < plan_.makings.size(); ++i) {
      const plan::PlannedMaking& making = plan_.makings[i];
      if (local(making.start).date() != day) {
        day = local(making.start).date();
        table.rows.push_back({{{Cell::Kind::Text, phrases_.day(day), {}, false}}, true});
      }
      if (making.clean_down)
        table.rows.push_back(
            {{{Cell::Kind::Text, heading("sheet.clean_down"), {}, true}, blank(heading("sheet.by"))}, true});
      table.rows.push_back(row_of(making, lots_.value(static_cast<qsizetype>(i))));
    }
    return table;
  }

  QDateTime local(const QDateTime& instant) const { return instant.toTimeZone(phrases_.book().kitchen.zone); }

  Row row_of(const plan::PlannedMaking& making, const QString& lot) const {
    Cell product = name_cell(making.product->id);
    if (!lot.isEmpty()) product.small.push_back({lot, true});
    phrases_.add_small(product.small, [&](const Wording& wording) { return window(wording, making); });
    phrases_.add_small(product.small, [&](const Wording& wording) { return wanted_by(wording, making); });
    return {{tick(),
             {Cell::Kind::Text, phrases_.time(making.start), {}, true},
             product,
             phrases_.amount_cell(making.output),
             blank()},
            false};
  }

  // "between 06:00 and 09:30, ready 11:00"; with the day where it is not that of the start.
  QString window(const Wording& wording, const plan::PlannedMaking& making) const {
    const auto at = [&](const QDateTime& instant) {
      const bool same_day = local(instant).date() == local(making.start).date();
      return same_day ? wording.words.time(local(instant).time()) : phrases_.brief(wording, instant);
    };
    const QString start = making.any_time_before
                              ? wording.sentence("sheet.window_open", {at(making.latest)})
                              : wording.sentence("sheet.window", {at(making.earliest), at(making.latest)});
    const QString end = making.time_stated
                            ? wording.sentence("sheet.ready_at", {at(making.start.addSecs(making.seconds))})
                            : wording.word("sheet.time_not_said");
    return wording.words.clauses({start, end});
  }

  QString wanted_by(const Wording& wording, const plan::PlannedMaking& making) const {
    QStringList whom_for, clauses;
    for (const plan::For& wanted : making.wanted_by) {
      if (wanted.kind == plan::For::Kind::Level) continue;
      const QString one = wanted.kind == plan::For::Kind::Order
                              ? whom(plan_.orders[wanted.index])
                              : phrases_.name(wording, plan_.makings[wanted.index].product->id);
      if (!one.isEmpty() && !whom_for.contains(one)) whom_for << one;
    }
    if (!whom_for.isEmpty()) clauses << wording.sentence("sheet.for_whom", {SheetPhrases::few(wording, whom_for)});
    const auto for_level = [](const plan::For& wanted) { return wanted.kind == plan::For::Kind::Level; };
    if (std::any_of(making.wanted_by.begin(), making.wanted_by.end(), for_level))
      clauses << wording.word("sheet.on_hand_level");
    return wording.words.clauses(clauses);
  }

  // What is pulled of a lot for makings, and to go out as it is.
  struct Share {
    std::optional<Quantity> quantity;
    std::optional<QDateTime> thaw_by;
  };
  struct Pulled {
    Share in, out;
  };

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
    Table table{heading("sheet.pull_list"),
                {{Column::Kind::Tick, {}, 1},
                 {Column::Kind::Text, heading("sheet.item"), 2},
                 {Column::Kind::Text, heading("sheet.lot"), 3},
                 {Column::Kind::Amount, heading("sheet.amount"), 1}},
                {},
                true};
    for (const auto& [index, amounts] : rows)
      for (const bool goes_out : {false, true})
        if (const Share& share = goes_out ? amounts.out : amounts.in; share.quantity)
          table.rows.push_back(pulled_row(plan_.on_hand[index], share, goes_out));
    return table;
  }

  Row pulled_row(const plan::OnHand& lot, const Share& share, bool goes_out) const {
    Cell item = name_cell(lot.item);
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

  Table buying() const {
    Table table{heading("sheet.buying"),
                {{Column::Kind::Tick, {}, 1},
                 {Column::Kind::Text, heading("sheet.item"), 3},
                 {Column::Kind::Amount, heading("sheet.need"), 1},
                 {Column::Kind::Text, heading("sheet.buy"), 2},
                 {Column::Kind::Text, heading("sheet.needed_by"), 2}},
                {},
                true};
    for (const plan::Buy& buy : plan_.buys) {
      Cell need{Cell::Kind::Text, phrases_.amount(buy.need), {}, false};
      table.rows.push_back({{tick(),
                             name_cell(buy.ingredient->id),
                             need,
                             bought(buy),
                             {Cell::Kind::Text, phrases_.brief(phrases_.first(), buy.by), {}, false}},
                            false});
    }
    return table;
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

  Table passed_over() const {
    Table table{heading("sheet.passed_over"),
                {{Column::Kind::Text, heading("sheet.item"), 2},
                 {Column::Kind::Text, heading("sheet.lot"), 2},
                 {Column::Kind::Text, heading("sheet.why"), 3}},
                {},
                true};
    for (const plan::PassedOver& passed : plan_.passed_over) {
      const plan::OnHand& lot = plan_.on_hand[passed.lot];
      const Cell why = phrases_.cell([&](const Wording& wording) { return wording.word(why_key(passed.why)); });
      table.rows.push_back({{name_cell(lot.item), lot_cell_of(lot), why}, false});
    }
    return table;
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

  Table orders() const {
    Table table{heading("sheet.orders"),
                {{Column::Kind::Text, heading("sheet.due"), 2},
                 {Column::Kind::Text, heading("sheet.product"), 3},
                 {Column::Kind::Amount, heading("sheet.amount"), 1}},
                {},
                true};
    for (const plan::Order& order : plan_.orders) {
      Cell product = name_cell(order.product);
      if (const QString site = whom(order); !site.isEmpty()) product.small.push_back({site, false});
      table.rows.push_back({{{Cell::Kind::Text, phrases_.brief(phrases_.first(), order.due), {}, false},
                             product,
                             phrases_.amount_cell(order.quantity)},
                            false});
    }
    return table;
  }

  const SheetPhrases& phrases_;
  const DayPlan& plan_;
  const QStringList& lots_;
  const QDateTime& now_;
  std::vector<SmallLine> caution_;
};

}  // namespace

problem::ExpectedAll<WorkSheet> plan_sheet(const SheetSetting& setting, const DayPlan& plan, const QStringList& lots,
                                           const QDateTime& now) {
  problem::Errors errors;
  const SheetPhrases phrases(setting, errors);
  WorkSheet sheet = PlanSheet(phrases, plan, lots, now).make();
  if (errors.empty()) return sheet;
  problem::sort(errors);
  return tl::unexpected(errors);
}

}  // namespace lardiner::facts
