// What a plan cannot meet, in plain English: why, and by how much.
#include "command/plan_problems.h"

#include "batch/phrases.h"
#include "book/limit_text.h"
#include "command/amount_json.h"
#include "reader/quote.h"

namespace lardiner::command {

namespace {

using plan::Unmet;
using problem::Code;
using problem::Error;
using reader::quoted;

// In whole minutes, none less than it is.
QString long_text(int seconds) {
  constexpr int kMinute = 60;
  const int minutes = (seconds + kMinute - 1) / kMinute;
  return book::text(book::Length{book::Length::Unit::Seconds, minutes * kMinute, 1});
}

QString maker(const Unmet& unmet) {
  return unmet.item == unmet.product ? QStringLiteral("its making")
                                     : QStringLiteral("the making of %1, which goes into it,").arg(quoted(unmet.item));
}

QString whose_life(const Unmet& unmet) {
  return unmet.item == unmet.product ? QStringLiteral("it") : quoted(unmet.item) + QStringLiteral(" in it");
}

QString reason(const Unmet& unmet) {
  if (!unmet.errors.empty())
    return unmet.item == unmet.product
               ? QStringLiteral("the book lacks what its making needs")
               : QStringLiteral("the book lacks what the making of %1 in it needs").arg(quoted(unmet.item));
  switch (unmet.why) {
    case Unmet::Why::TooLate:
      return QStringLiteral("%1 would have had to start %2 ago").arg(maker(unmet), long_text(unmet.seconds));
    case Unmet::Why::LifeTooShort:
      return QStringLiteral("made at the last moment %1 is over %2 before it may be")
          .arg(whose_life(unmet), long_text(unmet.seconds));
    case Unmet::Why::NoWindow:
      return QStringLiteral("%1 is over %2 before it may be, however late it is made")
          .arg(whose_life(unmet), long_text(unmet.seconds));
    case Unmet::Why::NoWeight:
      return QStringLiteral("its formula cannot be scaled");
  }
  return {};
}

QString remedy(const Unmet& unmet) {
  if (!unmet.errors.empty() || unmet.why == Unmet::Why::NoWeight) return QStringLiteral("complete the book");
  if (unmet.why == Unmet::Why::TooLate)
    return unmet.order ? QStringLiteral("agree a later time, or enter what is on hand")
                       : QStringLiteral("plan it for a later day, or enter what is on hand");
  return QStringLiteral("agree a shorter life, or have it leave sooner after it is made");
}

Error problem_of(const book::Book& book, const plan::DayPlan& plan, const Unmet& unmet) {
  const QString amount = amount_text(unmet.quantity, book.kitchen.units);
  const QString open = QStringLiteral("%1 of %2").arg(amount, quoted(unmet.product));
  if (unmet.order) {
    const plan::Order& order = plan.orders[*unmet.order];
    const QString due = batch::instant_text(order.due, book.kitchen.zone);
    return {Code::Conflict, QStringLiteral("%1 for %2 cannot be met: %3").arg(open, due, reason(unmet)), order.place,
            remedy(unmet)};
  }
  const book::Product* product = book.product(unmet.product);
  return {Code::Conflict, QStringLiteral("%1 to be kept on hand cannot be met: %2").arg(open, reason(unmet)),
          product ? product->place : problem::Place{}, remedy(unmet)};
}

}  // namespace

problem::Errors unmet_problems(const book::Book& book, const plan::DayPlan& plan) {
  problem::Errors out;
  for (const Unmet& unmet : plan.unmet) {
    out.push_back(problem_of(book, plan, unmet));
    out.insert(out.end(), unmet.errors.begin(), unmet.errors.end());
  }
  return out;
}

}  // namespace lardiner::command
