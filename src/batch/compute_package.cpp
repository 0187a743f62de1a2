// A package of an ingredient that was opened, thawed, cut or decanted: the maker's date and the rules for its new
// state.
#include <algorithm>

#include "batch/clock.h"
#include "batch/compute_making.h"
#include "batch/phrases.h"
#include "book/gaps.h"
#include "reader/quote.h"

namespace lardiner::batch {

using book::State;
using problem::Code;
using reader::quoted;

namespace {

Kept kept_of(const Making& making) {
  return {making.ingredient->shelf_lives, making.tcs(), making.ingredient->must_be_cooked == false};
}

void take_declarations(Making& making, Run& run) {
  const book::SupplierItem* item = making.ingredient->supplier_item(making.batch.record.supplier_item);
  making.batch.declared = item ? item->declared : run.lookup.declared(making.ingredient->id);
  for (const problem::Error& gap : book::gaps_in_composition(*making.ingredient)) {
    const bool of_another =
        item && std::any_of(making.ingredient->supplier_items.begin(), making.ingredient->supplier_items.end(),
                            [&](const book::SupplierItem& other) {
                              return other.id != item->id && other.place == gap.place &&
                                     other.place != making.ingredient->place;
                            });
    if (of_another) continue;
    const bool allergens = gap.hint.contains(QLatin1String("contains"));
    const bool tcs = gap.hint.contains(QLatin1String("tcs"));
    refuse(making, allergens ? "missing.allergens" : tcs ? "missing.tcs" : "missing.cook_temperature", gap);
  }
}

Rule started(Rule rule, const QDateTime& at) {
  rule.starts_at = at;
  return rule;
}

// When the package was opened; all deeds but thawing open it.
std::optional<QDateTime> opened_at(const Record& record) {
  if (record.opened_at) return record.opened_at;
  return record.deed == Deed::Thawed ? std::nullopt : std::optional(record.made_at);
}

std::vector<Rule> rules_of(const Making& making, const Run& run) {
  const Record& record = making.batch.record;
  const Kept kept = kept_of(making);
  std::vector<Rule> rules;
  if (const std::optional<QDateTime> opened = opened_at(record))
    for (const Rule& rule : opened_rules(kept, run.book.rules)) rules.push_back(started(rule, *opened));
  for (const book::ShelfLife& life : kept.lives) {
    const Rule rule = rule_of(life);
    if (life.state == State::Opened || life.state == State::Ambient)
      continue;  // done above; ambient is of unopened ones
    if (life.state == State::Chilled) {
      if (record.deed == Deed::Cut) rules.push_back(started(rule, record.made_at));
    } else if (life.state == State::Thawed && record.deed == Deed::Thawed) {
      rules.push_back(started(rule, record.made_at));
    } else {
      rules.push_back(rule);
    }
  }
  const bool document = std::any_of(kept.lives.begin(), kept.lives.end(), [](const book::ShelfLife& life) {
    return life.state == State::Chilled && !life.document.isEmpty();
  });
  if (record.deed == Deed::Cut && kept.tcs && kept.ready && !document) {
    const book::LengthLimit& limit = run.book.rules.ready_to_eat_chilled;
    rules.push_back({QStringLiteral("chilled, ready to eat"), State::Chilled, limit.length, book::EndKind::UseBy,
                     limit.authority, record.made_at});
  }
  return rules;
}

std::vector<Cap> caps_of(Making& making) {
  const Record& record = making.batch.record;
  if (!record.stated) {
    if (making.tcs())
      refuse(making, "missing.input_date",
             {Code::Missing,
              QStringLiteral("%1 needs time and temperature control, and the date on its package is not written")
                  .arg(quoted(record.item)),
              {},
              QStringLiteral("write use_by, as it stands on its package or label")});
    return {};
  }
  const bool use_by = record.stated->kind == book::EndKind::UseBy;
  Cap cap;
  cap.item = record.item;
  cap.lot = record.supplier_lot;
  cap.why = use_by ? QStringLiteral("maker's use-by") : QStringLiteral("maker's best before");
  cap.kind = record.stated->kind;
  cap.end = record.stated->end;
  cap.is_date = record.stated->is_date;
  cap.absolute = true;
  cap.shelf_stable = !use_by && !making.tcs();
  return {cap};
}

QDateTime of_deed(const Record& record, const Run& run) {
  return record.time_known ? record.made_at : last_use(record, run);
}

void check_not_past(Making& making, const Run& run, const std::vector<Cap>& caps) {
  const Record& record = making.batch.record;
  const QDateTime at = of_deed(record, run);
  for (const Cap& cap : caps)
    if (cap.end <= at)
      refuse(making, "missing.past_its_date",
             {Code::Unsafe,
              QStringLiteral("%1 is past its date, %2")
                  .arg(quoted(record.item), cap.is_date ? day_text(local_day(cap.end.addMSecs(-1), run.zone()))
                                                        : instant_text(cap.end, run.zone())),
              {},
              QStringLiteral("discard it, or correct the date if it was written wrongly")});
}

}  // namespace

void compute_package(Making& making, Run& run) {
  Batch& batch = making.batch;
  batch.day_one = batch.record.made_at;
  batch.previously_frozen = batch.record.deed == Deed::Thawed;  // whether or not the book has a life for it
  batch.readiness = run.lookup.standing(making.ingredient->id).readiness;
  making.still = run.lookup.standing(making.ingredient->id).still;
  take_declarations(making, run);
  const std::vector<Cap> caps = caps_of(making);
  check_not_past(making, run, caps);
  for (const Cap& cap : caps) making.carried.push_back({cap, batch.readiness >= book::Readiness::CookedReadyToEat});
  date(making, run, rules_of(making, run), caps);
  check_not_over(making, run, of_deed(batch.record, run));
}

}  // namespace lardiner::batch
