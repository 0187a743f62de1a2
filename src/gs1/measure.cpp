// The measures that elements hold: a number and its decimal places.
#include "gs1/element.h"

namespace lardiner::gs1 {

namespace {

using problem::Code;
using problem::Error;
using problem::Expected;

// AI 3100 to 3699 have six digits.
constexpr qint64 kLargestNumber = 999'999;
constexpr int kGramPlaces = 3;

}  // namespace

Expected<Measure> measure(const Element& element) {
  if (const auto fault = value_fault(element)) return tl::make_unexpected(*fault);
  if (element.ai.size() != 4 || element.ai < QLatin1String("3100") || element.ai > QLatin1String("3699"))
    return tl::make_unexpected(Error{Code::Malformed,
                                     QStringLiteral("(%1) is no measure").arg(element.ai),
                                     {},
                                     QStringLiteral("measures have the identifiers 3100 to 3699")});
  return Measure{element.value.toLongLong(), element.ai.back().digitValue()};
}

Expected<Element> net_weight(qint64 grams) {
  qint64 number = grams;
  int places = kGramPlaces;
  for (; number > kLargestNumber && places > 0; --places) number /= 10;
  if (number < 1 || number > kLargestNumber)
    return tl::make_unexpected(Error{Code::Range,
                                     QStringLiteral("%1 g is no net weight that a code can hold").arg(grams),
                                     {},
                                     QStringLiteral("give 1 g to 999,999 kg")});
  return Element{QStringLiteral("310%1").arg(places), QStringLiteral("%1").arg(number, 6, 10, QLatin1Char('0'))};
}

}  // namespace lardiner::gs1
