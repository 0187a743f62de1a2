// Cooks and finishings below the adopted minimum.
#include "book/checks.h"
#include "book/finishing_minimum.h"
#include "book/limit_text.h"
#include "reader/quote.h"

namespace lardiner::book {

using problem::Code;
using problem::Place;
using reader::quoted;

namespace {

QString noun_of(const Product& product) { return QStringLiteral("product ") + quoted(product.id); }

void check_cook(const Checking& checking, const Product& product, const CookMinimum* minimum) {
  if (!product.cook_to || minimum == nullptr || meets(*product.cook_to, minimum->any_of)) return;
  const TimeAtTemperature& needed = minimum->any_of.front();
  checking.error(
      Code::Unsafe,
      QStringLiteral("%1 is cooked to %2, below the minimum of %3 (%4) for %5")
          .arg(noun_of(product), text(*product.cook_to), text(needed), minimum->authority.text(), minimum->food),
      product.place, QStringLiteral("write cook_to = \"%1\" or more").arg(text(needed)));
}

}  // namespace

void check_temperatures(const Checking& checking) {
  for (const Product& product : checking.book.products) {
    const Standing standing = checking.standings.of(product);
    check_cook(checking, product, standing.before);
    for (const Shortfall& found : finishing_shortfalls(checking.book.rules, product, standing))
      checking.error(Code::Unsafe, found.what, found.place, found.hint);
  }
}

}  // namespace lardiner::book
