// The plan of the orders as Today tells it.
#include "station/plan_part.h"

#include "facts/plan_sheet.h"
#include "facts/wording.h"
#include "plan/filling.h"
#include "station/page_words.h"

namespace lardiner::station {

namespace {

constexpr size_t kMostFaults = 5;  // the rest is counted: a wall has to show the plan too

class PlanTelling {
 public:
  PlanTelling(const PlanShown& shown, Desk& desk, const words::Language& language)
      : shown_(shown), desk_(desk), wording_{language, desk.book().kitchen.units} {}

  void add_faults(Part& section) const {
    for (size_t i = 0; i < shown_.faults.size() && i < kMostFaults; ++i) {
      const problem::Error& fault = shown_.faults[i];
      const QString whole = problem::text({fault.code, fault.what, fault.place, {}});
      section.add("FAULT").set("WHAT", whole.section(u'\n', 0, 0)).set("HINT", fault.hint);
    }
    if (shown_.faults.size() > kMostFaults)
      section.add("MORE").set("COUNT", QString::number(shown_.faults.size() - kMostFaults));
  }

  void add_unmet(Part& section) const {
    for (const plan::Unmet& open : shown_.plan.unmet) {
      Part& row = section.add("UNMET");
      add_product(row, open.product, open.quantity);
      row.set("WHY", facts::unmet_reason(wording_, name(open.item), open));
      row.set("DUE", open.order ? time(shown_.plan.orders[*open.order].due) : QString());
    }
  }

  void add_starts(Part& section, size_t most) const {
    bool is_next = true;  // what was made today is netted already: the first is open all the same
    const auto& makings = shown_.plan.makings;
    if (makings.size() > most) section.add("LATER").set("COUNT", QString::number(makings.size() - most));
    for (size_t i = 0; i < makings.size() && i < most; ++i) {
      const plan::PlannedMaking& making = makings[i];
      Part& row = section.add("START");
      row.set("MARK", is_next ? QStringLiteral("wait") : QStringLiteral("plain")).set("WHEN", window(making));
      add_product(row, making.product->id, plan::put_up(desk_.book().kitchen, *making.product, making.output));
      if (is_next) row.add("NEXT");
      for (const QString& lot : shown_.made_today.value(making.product->id)) row.add("MADE").set("LOT", lot);
      is_next = false;
    }
  }

 private:
  QString name(const QString& item) const { return name_of(desk_.book(), wording_.words, item); }

  void add_product(Part& row, const QString& product, measure::Quantity amount) const {
    row.set("PRODUCT", product).set("NAME", name(product)).set("AMOUNT", facts::both_systems(wording_, amount));
  }

  // Of another day with its date; the year is that of the orders.
  QString time(const QDateTime& at) const {
    const QTimeZone& zone = desk_.book().kitchen.zone;
    const QDateTime local = at.toTimeZone(zone);
    const bool today = local.date() == desk_.now().toTimeZone(zone).date();
    const QString hour = wording_.words.time(local.time());
    return today ? hour : wording_.words.day_month(local.date()) + u' ' + hour;
  }

  QString window(const plan::PlannedMaking& making) const {
    return making.any_time_before || making.earliest <= desk_.now()
               ? wording_.sentence("sheet.window_open", {time(making.latest)})
               : wording_.sentence("sheet.window", {time(making.earliest), time(making.latest)});
  }

  const PlanShown& shown_;
  Desk& desk_;
  const facts::Wording wording_;
};

}  // namespace

void add_plan(Part& page, Desk& desk, const words::Language& language, size_t most) {
  const std::shared_ptr<const PlanShown> shown = desk.plan();
  if (!shown) return;
  Part& section = page.add("PLAN").set("HEADING", language.word(QStringLiteral("sheet.windows")));
  section.set("CANNOT", language.word(QStringLiteral("sheet.unmet")));
  const PlanTelling telling(*shown, desk, language);
  telling.add_faults(section);
  telling.add_unmet(section);
  telling.add_starts(section, most);
  if (shown->past > 0) section.add("PAST").set("COUNT", QString::number(shown->past));
  if (shown->faults.empty() && shown->plan.makings.empty() && shown->plan.unmet.empty()) section.add("NONE");
}

}  // namespace lardiner::station
