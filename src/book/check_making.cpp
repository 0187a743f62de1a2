// What the kitchen and its products say of their making, against the adopted rule set and their own statements.
#include <algorithm>

#include "book/checks.h"
#include "book/limit_text.h"
#include "reader/quote.h"

namespace lardiner::book {

using problem::Code;

namespace {

void check_out_of_cold(const Checking& checking) {
  const Kitchen& kitchen = checking.book.kitchen;
  const TimeControlRule& rule = checking.book.rules.time_control;
  if (rule.length.count == 0 || kitchen.out_of_cold_seconds <= rule.length.count) return;
  checking.error(
      Code::Unsafe,
      QStringLiteral("out_of_cold is longer than the %1 for which food may be without temperature control (%2)")
          .arg(text(rule.length), rule.authority.text()),
      kitchen.out_of_cold_place, QStringLiteral("shorten it; common practice is 30 min"));
}

// What cools through the temperatures at which germs grow has critical limits; a step of it alone would have none.
void check_cooling(const Checking& checking, const Product& product) {
  if (product.cooled || product.tcs.is != TcsStatement::Is::Yes) return;
  for (const Step& step : product.steps)
    if (step.kind == StepKind::Cool)
      checking.error(
          Code::Conflict,
          QStringLiteral("product %1 has a step that cools it but no cooled_from, so its cooling has no limits")
              .arg(reader::quoted(product.id)),
          step.place,
          QStringLiteral("state cooled_from = \"hot\" or \"room temperature\"; what only goes into the cold "
                         "has kind = \"chill\""));
}

}  // namespace

void check_making(const Checking& checking) {
  check_out_of_cold(checking);
  for (const Product& product : checking.book.products) check_cooling(checking, product);
}

}  // namespace lardiner::book
