// What the page of a lot says.
#include "station/lot_page.h"

#include <algorithm>

#include "facts/allergen_text.h"
#include "facts/container_text.h"
#include "facts/label_facts.h"
#include "history/for_use.h"
#include "history/groups.h"
#include "station/page_words.h"

namespace lardiner::station {

using facts::FactId;
using history::Good;
using history::Group;
using history::Lot;

namespace {

// What a label says besides name and date, in the order in which a cook asks for it.
constexpr FactId kSaid[] = {FactId::Readiness,
                            FactId::TimeControl,
                            FactId::Contains,
                            FactId::MayContain,
                            FactId::Ingredients,
                            FactId::DaysLeft,
                            FactId::FrozenLimits,
                            FactId::KeepAt,
                            FactId::Finishing,
                            FactId::HoldFinished,
                            FactId::PreviouslyFrozen,
                            FactId::ReducedOxygen,
                            FactId::SafeHandling,
                            FactId::Count,
                            FactId::Net,
                            FactId::Made,
                            FactId::UsedFor};

bool is_said_large(FactId id) { return id == FactId::Readiness || id == FactId::Contains || id == FactId::TimeControl; }

QString text(const facts::Paragraph& paragraph) {
  QString out;
  for (const facts::Run& run : paragraph) out += run.text;
  return out.replace(QChar(0x2060), QString());
}

class Telling {
 public:
  Telling(Desk& desk, const LotAsked& asked, const words::Language& language, bool signed_in)
      : desk_(desk), asked_(asked), wording_{language, desk.book().kitchen.units}, signed_in_(signed_in) {}

  Part tell(const Lot* lot) {
    page_.set("LOT", asked_.name.code)
        .set("ITEM", asked_.name.item)
        .set("NAME", name_of(desk_.book(), wording_.words, asked_.name));
    page_.set("CONTAINER", asked_.container ? QString::number(*asked_.container) : QString());
    if (!asked_.superseded.isEmpty()) page_.add("SUPERSEDED").set("WHY", signed_in_ ? asked_.superseded : QString());
    if (!lot) {
      page_.add("NAMED");
      return std::move(page_);
    }
    std::vector<Group> groups = history::groups(*lot, asked_.container, desk_.now());
    std::stable_partition(groups.begin(), groups.end(), [](const Group& group) { return !is_gone(group); });
    for (const Group& group : groups) add_group(group);
    lot->made ? add_label(*lot) : add_package(*lot);
    if (signed_in_) add_holds(*lot, page_.add("SIGNED"));
    return std::move(page_);
  }

 private:
  // Where it is said by whom it was held, and why, only who is signed in reads it.
  void add_group(const Group& group) {
    const Good& good = group.good;
    Part& part = page_.add("GROUP");
    part.set("MARK", mark(good.state)).set("VERDICT", wording_.words.word(verdict_key(good.state)));
    part.set("UNTIL", good.use_by && good.state != Good::State::Gone
                          ? facts::good_until(wording_, *good.use_by, desk_.book().kitchen.zone)
                          : QString());
    facts::Containers containers{group.first.kind, group.containers, 0};
    part.set("CONTAINERS", facts::containers_text(wording_, {containers}));
    part.set("PLACE", signed_in_ ? place(group.first) : QString());
    if (signed_in_ && !good.why.isEmpty() && good.why != place(group.first)) part.add("WHY").set("TEXT", good.why);
    if (group.first.superseded && group.first.where == history::Where::Here && good.state != Good::State::Gone)
      part.add("RELABEL");
  }

  // Each is ended by itself: one of a whole place for this lot alone.
  void add_holds(const Lot& lot, Part& signed_part) const {
    for (const history::HoldOn& hold : lot.holds)
      signed_part.add("HELD")
          .set("HOLD", hold.entry.text())
          .set("REASON_OF", hold.reason)
          .set("PLACE_OF", hold.place)
          .set("BY", hold.by)
          .set("SINCE", wording_.words.date_time(hold.since.toTimeZone(desk_.book().kitchen.zone)));
  }

  static bool is_gone(const Group& group) { return group.good.state == Good::State::Gone; }

  static QString place(const history::Holder& holder) {
    if (holder.where == history::Where::Here) return holder.place;
    return holder.site.isEmpty() ? history::word(holder.where) : holder.site;
  }

  void say(const QString& text, bool large) {
    if (text.isEmpty()) return;
    Part& fact = page_.add("FACT");
    fact.set("TEXT", text).set("SIZE", large ? QStringLiteral("large") : QStringLiteral("plain"));
  }

  // What its label says now; where there is none, its allergens. That may change with time alone while a cooling runs.
  void add_label(const Lot& lot) {
    const bool settled = lot.made->batch.cooling.state != batch::Cooling::State::Pending;
    const int container = asked_.container.value_or(0);
    const qint64 state = desk_.ledger().lots().age(asked_.name.id);
    const SaidBefore::Lines* before = settled ? desk_.said.find(asked_.name.id, container, state) : nullptr;
    const SaidBefore::Lines lines = before ? *before : label_lines(lot);
    if (settled && !before) desk_.said.keep(asked_.name.id, container, state, lines);
    if (lines.empty()) return add_contains(history::facts_for_use(lot, desk_.book().law).batch.declared);
    for (const Said& line : lines) say(line.text, line.large);
  }

  SaidBefore::Lines label_lines(const Lot& lot) const {
    SaidBefore::Lines lines;
    facts::LabelWish wish;
    wish.to_be_read = true;
    const auto runs = facts::label_runs(desk_.book(), label_batch(lot), desk_.languages(), wish);
    if (!runs || runs->empty()) return lines;
    const facts::LabelRun& run = run_of(*runs);
    for (const FactId id : kSaid)
      for (const facts::Fact& fact : run.facts)
        if (fact.id == id)
          for (const facts::Paragraph& paragraph : fact.paragraphs)
            if (QString line = text(paragraph); !line.isEmpty()) lines.push_back({std::move(line), is_said_large(id)});
    return lines;
  }

  batch::Batch label_batch(const Lot& lot) const {
    Lot judged = lot;
    batch::judge_at(*judged.made, desk_.now());
    return history::facts_for_use(judged, desk_.book().law).batch;
  }

  const facts::LabelRun& run_of(const std::vector<facts::LabelRun>& runs) const {
    const auto holds = [&](const facts::LabelRun& run) {
      return asked_.container && std::any_of(run.containers.begin(), run.containers.end(),
                                             [&](const auto& one) { return one.number == *asked_.container; });
    };
    const auto found = std::find_if(runs.begin(), runs.end(), holds);
    return found == runs.end() ? runs.front() : *found;
  }

  void add_contains(const book::Declared& declared) {
    const book::AllergenList* list = desk_.book().law.list(desk_.book().kitchen.allergen_list);
    if (!list || !declared.stated) return say(wording_.word("note.allergens_unknown"), true);
    say(facts::contains_text(wording_, declared, *list), true);
    say(facts::may_contain_text(wording_, declared, *list), false);
  }

  // A supplier's: what its item declares, and what corrections add.
  void add_package(const Lot& lot) {
    const book::Ingredient* ingredient = desk_.book().ingredient(lot.item);
    const book::SupplierItem* item = ingredient ? ingredient->supplier_item(lot.supplier_item) : nullptr;
    book::Declared declared = item ? item->declared : book::Declared();
    if (item) history::declare_besides(declared, lot.further_allergens, desk_.book().law);
    add_contains(declared);
  }

  Desk& desk_;
  const LotAsked& asked_;
  facts::Wording wording_;
  bool signed_in_;
  Part page_;
};

}  // namespace

problem::Expected<Part> lot_page(Desk& desk, const LotAsked& asked, const words::Language& language, bool signed_in) {
  ledger::Lots& lots = desk.ledger().lots();
  const Lot* lot = lots.lot(asked.name.id);
  if (lots.unreadable()) return tl::unexpected(*lots.unreadable());
  Part page = Telling(desk, asked, language, signed_in).tell(lot);
  if (desk.ledger().store().fault()) return tl::unexpected(*desk.ledger().store().fault());
  return page;
}

}  // namespace lardiner::station
