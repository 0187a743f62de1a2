// The day's plan as a sheet: what cannot be met, the order of work and the start windows; then the lists.
#include "facts/plan_sheet.h"

#include <algorithm>

#include "facts/plan_lists.h"
#include "facts/start_windows.h"

namespace lardiner::facts {

using plan::DayPlan;
using plan::Unmet;

namespace {

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
    sheet.head.push_back({day + QStringLiteral(" · ") + phrases_.time(now_), true});
    sheet.running = phrases_.first().word("sheet.plan") + QStringLiteral(" · ") + day;
    sheet.page_of = phrases_.first().word("sheet.page_of");
    add(sheet.parts, unmet());
    add(sheet.parts, work());
    if (!plan_.makings.empty()) sheet.parts.emplace_back(windows_of(phrases_, plan_, now_));
    for (const Table& list : carried_lists(phrases_, plan_)) add(sheet.parts, list);
    std::vector<SmallLine> cautions;
    phrases_.add_small(cautions, [](const Wording& wording) { return wording.word("sheet.caution_defer"); });
    for (const SmallLine& line : cautions) sheet.foot << line.text;
    return sheet;
  }

 private:
  static void add(std::vector<Part>& parts, const Table& table) {
    if (!table.rows.empty()) parts.emplace_back(table);
  }

  QString heading(const char* key) const { return phrases_.both(key); }

  Table unmet() const {
    Table table{heading("sheet.unmet"),
                {{Column::Kind::Text, heading("sheet.product"), 2},
                 {Column::Kind::Amount, heading("sheet.amount"), 1},
                 {Column::Kind::Text, heading("sheet.why"), 3}},
                {}};
    for (const Unmet& open : plan_.unmet) {
      Cell product = phrases_.name_cell(open.product);
      if (open.order) {
        const plan::Order& order = plan_.orders[*open.order];
        product.small.push_back({whom(phrases_, order), false});
        product.small.push_back({phrases_.day_and_time(order.due), false});
      } else {
        phrases_.add_small(product.small, [](const Wording& wording) { return wording.word("sheet.on_hand_level"); });
      }
      std::erase_if(product.small, [](const SmallLine& line) { return line.text.isEmpty(); });
      const Cell why = phrases_.cell(
          [&](const Wording& wording) { return unmet_reason(wording, phrases_.name(wording, open.item), open); });
      table.rows.push_back({{product, phrases_.amount_cell(open.quantity), why}, false});
    }
    return table;
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
    Cell product = phrases_.name_cell(making.product->id);
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
                              ? whom(phrases_, plan_.orders[wanted.index])
                              : phrases_.name(wording, plan_.makings[wanted.index].product->id);
      if (!one.isEmpty() && !whom_for.contains(one)) whom_for << one;
    }
    if (!whom_for.isEmpty()) clauses << wording.sentence("sheet.for_whom", {SheetPhrases::few(wording, whom_for)});
    const auto for_level = [](const plan::For& wanted) { return wanted.kind == plan::For::Kind::Level; };
    if (std::any_of(making.wanted_by.begin(), making.wanted_by.end(), for_level))
      clauses << wording.word("sheet.on_hand_level");
    return wording.words.clauses(clauses);
  }

  const SheetPhrases& phrases_;
  const DayPlan& plan_;
  const QStringList& lots_;
  const QDateTime& now_;
};

}  // namespace

QString unmet_reason(const Wording& wording, const QString& item, const plan::Unmet& open) {
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
