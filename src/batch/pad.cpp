// A batch made ready before it is made: its lot and serials, and the rule by which a hand will date it.
#include "batch/pad.h"

#include <algorithm>

#include "batch/clock.h"
#include "batch/compute_making.h"
#include "batch/read_records_parts.h"
#include "reader/quote.h"

namespace lardiner::batch {

using book::Length;
using book::State;
using problem::Code;
using problem::Error;
using problem::Errors;

namespace {

constexpr int kShortestMonth = 28;
constexpr int kLongestMonth = 31;

Making making_of(const PadPlan& plan, const book::Book& book) {
  Making making;
  Record& record = making.batch.record;
  record.item = plan.product.id;
  record.number = plan.number;
  record.made_at = start_of(plan.day, book.kitchen.zone);
  record.time_known = false;
  record.pad_day = plan.day;
  record.containers = plan.containers;
  record.place = plan.product.place;
  making.product = &plan.product;
  making.batch.readiness = book::readiness(book, plan.product.id);
  making.batch.declared = book::declared(book, plan.product.id);
  return making;
}

Error refused(const book::Product& product, const QString& why, const QString& hint) {
  return {Code::Conflict, QStringLiteral("no pad of %1: %2").arg(reader::quoted(product.id), why), product.place, hint};
}

// Days after the day of making, at the least and at the most.
std::pair<int, int> reach_of(const Length& length) {
  if (length.unit == Length::Unit::Days) return {length.count - length.first_day, length.count - length.first_day};
  return {kShortestMonth * length.count, kLongestMonth * length.count};
}

bool never_later(const Rule& one, const Rule& other) {
  return one.length == other.length || reach_of(one.length).second <= reach_of(other.length).first;
}

// The rules whose clocks start at the making.
std::vector<Rule> rules_from_making(const book::Book& book, const Batch& batch, const ContainerGroup& group) {
  Making making;
  making.batch.record = batch.record;
  making.product = book.product(batch.record.item);
  const bool ready = batch.readiness >= book::Readiness::CookedReadyToEat;
  std::vector<Rule> rules = rules_for({making.product->shelf_lives, making.tcs(), ready}, book.rules);
  if (making.tcs() && making.product->reduced_oxygen(group.kind, group.holds))
    add_reduced_oxygen(rules, making, {}, book.rules);
  std::erase_if(rules, [&](const Rule& rule) {
    return rule.state != State::Chilled && (rule.state != State::Ambient || making.tcs());
  });
  return rules;
}

std::optional<Error> refused_container(const book::Product& product, const ContainerGroup& group) {
  const book::ContainerSpec* spec = product.container(group.kind, group.holds);
  if (!spec) return std::nullopt;
  if (spec->purpose == book::Purpose::Sale)
    return refused(product, QStringLiteral("its %1 is for sale, with what really went in by weight").arg(spec->kind),
                   QStringLiteral("hold it back until its record is entered"));
  if (spec->kept == State::Frozen)
    return refused(product, QStringLiteral("its %1 is kept frozen, and its label says the days left").arg(spec->kind),
                   QStringLiteral("make the pad for a container that is kept chilled"));
  if (spec->kept == State::HotHeld)
    return refused(product, QStringLiteral("its %1 is held hot, for hours that count from then").arg(spec->kind),
                   QStringLiteral("make the pad for a container that is kept chilled"));
  return std::nullopt;
}

}  // namespace

problem::Expected<HandRule> hand_rule(const book::Book& book, const Batch& batch, const ContainerGroup& group) {
  const book::Product& product = *book.product(batch.record.item);
  if (const auto error = refused_container(product, group)) return tl::unexpected(*error);
  const std::vector<Rule> rules = rules_from_making(book, batch, group);
  if (rules.empty())
    return tl::unexpected(refused(product, QStringLiteral("no shelf life counts from its making"),
                                  QStringLiteral("add a [[product.shelf_life]] for chilled or ambient food")));
  for (const Rule& rule : rules)
    if (rule.length.unit == Length::Unit::Seconds)
      return tl::unexpected(refused(product, QStringLiteral("it keeps for hours, and its label has a day to write"),
                                    QStringLiteral("label it when its record is entered")));
  const auto first = std::find_if(rules.begin(), rules.end(), [&](const Rule& one) {
    return std::all_of(rules.begin(), rules.end(), [&](const Rule& other) { return never_later(one, other); });
  });
  if (first == rules.end())
    return tl::unexpected(refused(product, QStringLiteral("of its limits in days and in months, either may end first"),
                                  QStringLiteral("state the shorter of them in days")));
  const bool quality =
      product.tcs.is == book::TcsStatement::Is::No &&
      std::all_of(rules.begin(), rules.end(), [](const Rule& rule) { return rule.kind == book::EndKind::BestBefore; });
  return HandRule{first->length, quality ? book::EndKind::BestBefore : book::EndKind::UseBy};
}

problem::ExpectedAll<Batch> pad_batch(const book::Book& book, const PadPlan& plan) {
  Run run{book, {}, Lookup(book), {making_of(plan, book)}, {}};
  identify(run);
  add_containers(run.makings.front(), run);
  Batch& batch = run.makings.front().batch;
  Errors errors = std::move(batch.refused);
  batch.refused.clear();
  const Errors gaps = book::label_gaps(book, plan.product);
  errors.insert(errors.end(), gaps.begin(), gaps.end());
  for (const ContainerGroup& group : plan.containers) check_kind(plan.product, group, errors);
  if (errors.empty())
    for (const ContainerGroup& group : plan.containers)
      if (const auto rule = hand_rule(book, batch, group); !rule) errors.push_back(rule.error());
  if (!errors.empty()) {
    problem::sort(errors);
    return tl::unexpected(errors);
  }
  return std::move(batch);
}

const book::TimeAtTemperature* cook_by_hand(const book::Book& book, const book::Product& product) {
  if (product.process != book::Process::Cook) return nullptr;
  if (product.cook_to) return &*product.cook_to;
  const book::CookMinimum* minimum = book::cook_minimum(book, product);
  return minimum ? &minimum->any_of.front() : nullptr;
}

std::vector<book::CoolingStage> cooling_by_hand(const book::Book& book, const book::Product& product) {
  if (!product.cooled) return {};
  return product.cooled_from_ambient ? book.rules.cooling_from_ambient : book.rules.cooling;
}

}  // namespace lardiner::batch
