// Cooks and finishings below the adopted minimum.
#include "book/checks.h"
#include "book/limit_text.h"
#include "reader/quote.h"

namespace lardiner::book {

using problem::Code;
using problem::Place;
using reader::quoted;

namespace {

QString noun_of(const Product& product) { return QStringLiteral("product ") + quoted(product.id); }

QString shortfall(const TimeAtTemperature& given, const TimeAtTemperature& needed, const Authority& authority) {
  return QStringLiteral("%1, below the minimum of %2 (%3)").arg(text(given), text(needed), authority.text());
}

QString raise(QStringView key, const TimeAtTemperature& needed) {
  return QStringLiteral("write %1 = \"%2\" or more").arg(key, text(needed));
}

void check_cook(const Checking& checking, const Product& product, const CookMinimum* minimum) {
  if (!product.cook_to || minimum == nullptr || meets(*product.cook_to, minimum->any_of)) return;
  const TimeAtTemperature& needed = minimum->any_of.front();
  checking.error(Code::Unsafe,
                 QStringLiteral("%1 is cooked to %2 for %3")
                     .arg(noun_of(product), shortfall(*product.cook_to, needed, minimum->authority), minimum->food),
                 product.place, raise(u"cook_to", needed));
}

void check_stand(const Checking& checking, const QString& noun, const Finishing& finishing, int needed,
                 const Authority& authority) {
  if (finishing.stand_seconds >= needed) return;
  const QString time = text(Length{Length::Unit::Seconds, needed, 1});
  checking.error(Code::Unsafe, QStringLiteral("%1 stands less than %2 (%3)").arg(noun, time, authority.text()),
                 finishing.place, QStringLiteral("write stand = \"%1\" or more").arg(time));
}

void check_raw(const Checking& checking, const QString& noun, const Finishing& finishing, const CookMinimum& minimum) {
  const RuleSet& rules = checking.book.rules;
  const bool microwave = finishing.equipment == QLatin1String("microwave") && rules.microwave_cook;
  const CookMinimum& applies = microwave ? *rules.microwave_cook : minimum;
  const TimeAtTemperature& needed = applies.any_of.front();
  if (finishing.to && !meets(*finishing.to, applies.any_of))
    checking.error(Code::Unsafe,
                   QStringLiteral("%1 reaches %2 for %3")
                       .arg(noun, shortfall(*finishing.to, needed, applies.authority), minimum.food),
                   finishing.place, raise(u"to", needed));
  if (microwave) check_stand(checking, noun, finishing, rules.microwave_stand_seconds, applies.authority);
}

void check_reheat(const Checking& checking, const QString& noun, const Finishing& finishing) {
  const ReheatMinimum* minimum = checking.book.rules.reheat_for(finishing.reheat_how);
  if (minimum == nullptr) return;
  if (finishing.to && !meets(*finishing.to, {minimum->at}))
    checking.error(Code::Unsafe,
                   QStringLiteral("%1 reaches %2 for reheating (%3)")
                       .arg(noun, shortfall(*finishing.to, minimum->at, minimum->authority), minimum->how),
                   finishing.place, raise(u"to", minimum->at));
  check_stand(checking, noun, finishing, minimum->stand_seconds, minimum->authority);
}

void check_finishing(const Checking& checking, const Product& product, const Standing& standing) {
  for (const Finishing& finishing : product.finishing) {
    const QString noun = QStringLiteral("the %1 finishing of %2").arg(finishing.equipment, noun_of(product));
    if (standing.still != nullptr)
      check_raw(checking, noun, finishing, *standing.still);
    else if (standing.readiness == Readiness::CookedReadyToEat ||
             (standing.readiness == Readiness::ReadyToEatUncooked && product.tcs.is == TcsStatement::Is::Yes))
      check_reheat(checking, noun, finishing);
  }
}

}  // namespace

void check_temperatures(const Checking& checking) {
  for (const Product& product : checking.book.products) {
    const Standing standing = checking.standings.of(product);
    check_cook(checking, product, standing.before);
    check_finishing(checking, product, standing);
  }
}

}  // namespace lardiner::book
