// A computed making as the facts that a ledger keeps, and such facts as the source of a later making.
#include "batch/compute_fixed.h"

namespace lardiner::batch {

namespace {

QString name_of(const Making& making, const book::Book& book) {
  const book::LocalText& name = making.product ? making.product->name : making.ingredient->name;
  return name.in(book.kitchen.languages.value(0));
}

std::optional<CoolingLimits> cooling_of(const Making& making, const book::RuleSet& rules) {
  if (!making.product || !making.product->cooled) return std::nullopt;
  CoolingLimits limits;
  limits.from_ambient = making.product->cooled_from_ambient;
  limits.stages = limits.from_ambient ? rules.cooling_from_ambient : rules.cooling;
  if (!limits.from_ambient) limits.reheat = rules.reheat;
  limits.authority = rules.cooling_authority;
  return limits;
}

std::vector<int> question_of(const Making& making) {
  if (making.questions.empty()) return {};
  if (!making.batch.refused.empty()) return making.question_of;
  std::vector<int> questions;
  for (const Container& container : making.batch.containers) questions.push_back(container.use_by);
  return questions;
}

// What a later making asks of it.
Making making_of(const Fixed& fixed, const book::Book& book) {
  Making making;
  making.batch = fixed.batch;
  making.recorded_tcs = fixed.tcs;
  making.questions = fixed.questions;
  making.carried = fixed.carried;
  making.made_of = fixed.made_of;
  making.cooked_at = fixed.cooked_at;
  if (fixed.still.isEmpty()) return making;
  making.still = book.rules.cook_for(fixed.still);
  if (!making.still) making.still_unknown = fixed.still;
  return making;
}

QSet<QString> lots_named(const Run& run) {
  QSet<QString> lots;
  for (const Making& making : run.makings)
    for (const QString& lot : lots_named(making.batch.record)) lots.insert(lot);
  return lots;
}

}  // namespace

Fixed without_batch(const Making& making, const book::Book& book) {
  Fixed fixed;
  fixed.name = name_of(making, book);
  fixed.product = making.product != nullptr;
  fixed.tcs = making.tcs();
  fixed.questions = making.questions;
  fixed.withheld = making.withheld;
  fixed.question_of = question_of(making);
  fixed.carried = making.carried;
  fixed.made_of = making.made_of;
  if (making.still) fixed.still = making.still->food;
  fixed.cooked_at = making.cooked_at;
  if (fixed.tcs) fixed.when_opened = rule_when_opened(book.rules);
  fixed.cooling = cooling_of(making, book.rules);
  return fixed;
}

void add_earlier(Run& run, const std::vector<Fixed>& earlier) {
  if (earlier.empty()) return;
  const QSet<QString> named = lots_named(run);
  for (const Fixed& fixed : earlier) {
    const QString& lot = fixed.batch.lot;
    if (lot.isEmpty()) continue;
    run.lots_before.insert(lot);
    if (!named.contains(lot) || run.earlier_by_lot.contains(lot)) continue;
    run.earlier_by_lot.insert(lot, run.earlier.size());
    run.earlier.push_back(making_of(fixed, run.book));
  }
}

}  // namespace lardiner::batch
