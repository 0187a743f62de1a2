// Shelf lives longer than what they cite, longer than the rule set allows, or of the wrong kind.
#include <algorithm>

#include "book/checks.h"
#include "book/limit_text.h"
#include "reader/quote.h"

namespace lardiner::book {

using problem::Code;
using reader::quoted;

namespace {

constexpr qint64 kDay = 24 * 60 * 60;
constexpr qint64 kLongestMonth = 31;

// The most time that can pass within a life, in seconds, from the start of its first day.
qint64 most_seconds(const Length& length) {
  if (length.unit == Length::Unit::Seconds) return length.count;
  if (length.unit == Length::Unit::Days) return (length.count + 1 - length.first_day) * kDay;
  return (length.count * kLongestMonth + 1) * kDay;
}

bool longer(const Length& a, const Length& b) { return most_seconds(a) > most_seconds(b); }

QString in_words(const Length& length) {
  return length.unit == Length::Unit::Days
             ? QStringLiteral("%1 with day %2 first").arg(text(length)).arg(length.first_day)
             : text(length);
}

// A thing with shelf lives.
struct Kept {
  const QString noun;
  const std::vector<ShelfLife>& lives;
  const TcsStatement& tcs;
  bool ready_to_eat = false;
  bool bought = false;
};

QString life_of(const Kept& kept, const ShelfLife& life) {
  static const char* const states[] = {"chilled", "frozen",   "thawed",       "ambient",
                                       "opened",  "hot-held", "time-control", "finished"};
  return QStringLiteral("the %1 life of %2").arg(QLatin1String(states[static_cast<size_t>(life.state)]), kept.noun);
}

void refuse_longer(const Checking& checking, const Kept& kept, const ShelfLife& life, const LengthLimit& limit) {
  checking.error(Code::Unsafe,
                 QStringLiteral("%1, %2, is longer than the %3 of %4")
                     .arg(life_of(kept, life), in_words(life.length), in_words(limit.length), limit.authority.text()),
                 life.place, QStringLiteral("shorten it, or name the document that allows it: document = \"…\""));
}

// The rule set's own limit for a life of ready-to-eat food, or nothing.
const LengthLimit* limit_for(const Kept& kept, const ShelfLife& life, const RuleSet& rules) {
  if (kept.tcs.is != TcsStatement::Is::Yes || !kept.ready_to_eat) return nullptr;
  if (kept.bought && life.state == State::Opened) return &rules.opened_package;
  return life.state == State::Chilled || life.state == State::Thawed || life.state == State::Opened
             ? &rules.ready_to_eat_chilled
             : nullptr;
}

void check_length(const Checking& checking, const Kept& kept, const ShelfLife& life) {
  const RuleSet& rules = checking.book.rules;
  if (!life.document.isEmpty() || rules.id.isEmpty()) return;
  const LengthLimit* cited = life.figure.isEmpty() ? nullptr : rules.figure(life.figure);
  const LengthLimit* limit = limit_for(kept, life, rules);
  if (cited != nullptr && longer(life.length, cited->length))
    refuse_longer(checking, kept, life, *cited);
  else if (limit != nullptr && longer(life.length, limit->length))
    refuse_longer(checking, kept, life, *limit);
  const LengthLimit time_control{{}, rules.time_control.length, rules.time_control.authority};
  if (life.state == State::TimeControl && longer(life.length, time_control.length))
    refuse_longer(checking, kept, life, time_control);
}

void check_kind(const Checking& checking, const Kept& kept, const ShelfLife& life) {
  const bool perishes = life.state == State::Chilled || life.state == State::Thawed || life.state == State::Opened ||
                        life.state == State::HotHeld || life.state == State::TimeControl ||
                        life.state == State::Finished;
  if (life.state == State::Frozen && life.kind == EndKind::UseBy)
    checking.error(Code::Conflict,
                   life_of(kept, life) + QStringLiteral(" is a use by, but freezing only keeps quality"), life.place,
                   QStringLiteral("write kind = \"best before\", or leave kind out"));
  if (kept.tcs.is == TcsStatement::Is::Yes && perishes && life.kind == EndKind::BestBefore)
    checking.error(
        Code::Unsafe,
        life_of(kept, life) + QStringLiteral(" is a best before, but the food needs time and temperature control"),
        life.place, QStringLiteral("write kind = \"use by\", or leave kind out"));
  // A sealed package of what is bought may stand in the store room; what is made here may not.
  if (kept.tcs.is == TcsStatement::Is::Yes && life.state == State::Ambient && !kept.bought)
    checking.error(
        Code::Unsafe,
        life_of(kept, life) + QStringLiteral(" is not chilled, but the food needs time and temperature control"),
        life.place, QStringLiteral("write state = \"chilled\", or tcs = \"no\" and on what basis"));
}

void check_lives(const Checking& checking, const Kept& kept) {
  for (size_t i = 0; i < kept.lives.size(); ++i) {
    const ShelfLife& life = kept.lives[i];
    check_length(checking, kept, life);
    check_kind(checking, kept, life);
    const bool again = std::any_of(kept.lives.begin(), kept.lives.begin() + static_cast<std::ptrdiff_t>(i),
                                   [&](const ShelfLife& other) { return other.state == life.state; });
    if (again)
      checking.error(Code::Duplicate, life_of(kept, life) + QStringLiteral(" is stated twice"), life.place,
                     QStringLiteral("keep one of the two"));
  }
}

void check_reduced_oxygen(const Checking& checking, const Product& product) {
  const RuleSet& rules = checking.book.rules;
  const ShelfLife* life = product.shelf_life(State::Chilled);
  if (life == nullptr || rules.id.isEmpty() || product.tcs.is == TcsStatement::Is::No) return;
  for (const ContainerSpec& container : product.containers) {
    if (container.package != Package::ReducedOxygen) continue;
    const bool over = longer(life->length, rules.reduced_oxygen.length);
    const LengthLimit& limit = over ? rules.reduced_oxygen : rules.reduced_oxygen_document;
    if (!longer(life->length, limit.length) || (!over && !life->document.isEmpty())) continue;
    checking.error(
        Code::Unsafe,
        QStringLiteral("product %1 keeps %2 in a reduced oxygen %3, longer than the %4 of %5")
            .arg(quoted(product.id), in_words(life->length), container.kind, in_words(limit.length),
                 limit.authority.text()),
        life->place,
        over ? QStringLiteral("shorten its chilled life")
             : QStringLiteral("shorten its chilled life, or name the document that allows it: document = \"…\""));
  }
}

}  // namespace

void check_shelf_lives(const Checking& checking) {
  for (const Ingredient& one : checking.book.ingredients)
    check_lives(checking, Kept{QStringLiteral("ingredient ") + quoted(one.id), one.shelf_lives, one.tcs,
                               one.must_be_cooked == false, true});
  for (const Product& one : checking.book.products) {
    const Readiness readiness = checking.standings.of(one).readiness;
    check_lives(checking, Kept{QStringLiteral("product ") + quoted(one.id), one.shelf_lives, one.tcs,
                               readiness >= Readiness::CookedReadyToEat, false});
    check_reduced_oxygen(checking, one);
  }
}

}  // namespace lardiner::book
