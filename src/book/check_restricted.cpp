// Too much of a restricted ingredient in a finished product.
#include "book/checks.h"
#include "book/restricted.h"
#include "reader/quote.h"

namespace lardiner::book {

using measure::Quantity;
using measure::Ratio;
using problem::Code;
using reader::quoted;

namespace {

// Weights are rounded to a nanogram a line: a share is over its maximum only by more than this many.
constexpr std::int64_t kRounding = 1000;

// For the eye only; the comparison is exact.
QString percent(Ratio share) {
  const double value = 100.0 * static_cast<double>(share.num()) / static_cast<double>(share.den());
  return QString::number(value, 'g', 4) + QStringLiteral(" %");
}

void check_share(const Checking& checking, const Product& product, const Ingredient& restricted, Quantity amount) {
  const auto output = checking.weighing.output(product);
  if (!output || output->amount == 0) return;
  const Ratio most = *restricted.most_percent;
  if (amount.amount <= scaled(*output, most).amount + kRounding) return;
  checking.error(Code::Unsafe,
                 QStringLiteral("product %1 has %2 of %3, more than %4 (%5)")
                     .arg(quoted(product.id), percent(ratio(amount, *output)), quoted(restricted.id), percent(most),
                          restricted.most_source),
                 product.place, QStringLiteral("reduce %1 in it, or in what it is made of").arg(quoted(restricted.id)));
}

}  // namespace

void check_restricted(const Checking& checking) {
  for (const Contents& contents : contents_of_restricted(checking.book, checking.reached, checking.weighing))
    for (const Product* product : checking.reached.products) {
      const std::optional<Quantity> amount = contents.in(*product);
      if (amount && amount->amount > 0 && !checking.doubtful.contains(product) && finished(checking.book, *product))
        check_share(checking, *product, contents.ingredient(), *amount);
    }
}

}  // namespace lardiner::book
