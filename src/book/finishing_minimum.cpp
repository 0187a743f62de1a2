// Whether the finishing steps of a product are hot enough for food of a given standing.
#include "book/finishing_minimum.h"

#include "book/limit_text.h"
#include "reader/quote.h"

namespace lardiner::book {

namespace {

class Judging {
 public:
  Judging(const RuleSet& rules, const Product& product, std::vector<Shortfall>& found)
      : rules_(rules), product_(product), found_(found) {}

  void raw(const Finishing& finishing, const CookMinimum& minimum) {
    const bool microwave = finishing.equipment == QLatin1String("microwave") && rules_.microwave_cook;
    const CookMinimum& applies = microwave ? *rules_.microwave_cook : minimum;
    if (finishing.to && !meets(*finishing.to, applies.any_of))
      too_cool(finishing, applies.any_of.front(), applies.authority, QStringLiteral("for ") + minimum.food);
    if (microwave) stand(finishing, rules_.microwave_stand_seconds, applies.authority);
  }

  void reheat(const Finishing& finishing) {
    const ReheatMinimum* minimum = rules_.reheat_for(finishing.reheat_how);
    if (minimum == nullptr) return;
    if (finishing.to && !meets(*finishing.to, {minimum->at}))
      too_cool(finishing, minimum->at, minimum->authority, QStringLiteral("for reheating (%1)").arg(minimum->how));
    stand(finishing, minimum->stand_seconds, minimum->authority);
  }

 private:
  QString noun(const Finishing& finishing) const {
    return QStringLiteral("the %1 finishing of product %2").arg(finishing.equipment, reader::quoted(product_.id));
  }

  void too_cool(const Finishing& finishing, const TimeAtTemperature& needed, const Authority& authority,
                const QString& purpose) {
    found_.push_back({QStringLiteral("%1 reaches %2, below the minimum of %3 (%4) %5")
                          .arg(noun(finishing), text(*finishing.to), text(needed), authority.text(), purpose),
                      QStringLiteral("write to = \"%1\" or more").arg(text(needed)), finishing.place});
  }

  void stand(const Finishing& finishing, int needed, const Authority& authority) {
    if (finishing.stand_seconds >= needed) return;
    const QString time = text(Length{Length::Unit::Seconds, needed, 1});
    found_.push_back({QStringLiteral("%1 stands less than %2 (%3)").arg(noun(finishing), time, authority.text()),
                      QStringLiteral("write stand = \"%1\" or more").arg(time), finishing.place});
  }

  const RuleSet& rules_;
  const Product& product_;
  std::vector<Shortfall>& found_;
};

}  // namespace

std::vector<Shortfall> finishing_shortfalls(const RuleSet& rules, const Product& product, const Standing& standing) {
  std::vector<Shortfall> found;
  Judging judging(rules, product, found);
  const bool reheated =
      standing.readiness == Readiness::CookedReadyToEat ||
      (standing.readiness == Readiness::ReadyToEatUncooked && product.tcs.is == TcsStatement::Is::Yes);
  for (const Finishing& finishing : product.finishing) {
    if (standing.still != nullptr)
      judging.raw(finishing, *standing.still);
    else if (reheated)
      judging.reheat(finishing);
  }
  return found;
}

}  // namespace lardiner::book
