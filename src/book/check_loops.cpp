// Formulas that contain themselves.
#include <QSet>
#include <algorithm>

#include "book/checks.h"
#include "reader/quote.h"

namespace lardiner::book {

namespace {

// The line of `product` that leads to the next of the loop.
problem::Place line_to(const Product& product, const QString& next) {
  for (const FormulaLine& line : product.formula)
    if (line.item == next) return line.place;
  return product.place;
}

}  // namespace

void check_loops(const Checking& checking) {
  const std::vector<const Product*>& in_order = checking.reached.products;
  if (in_order.size() == checking.book.products.size()) return;
  const QSet<const Product*> sound(in_order.begin(), in_order.end());
  QSet<QString> told;
  for (const Product& product : checking.book.products) {
    if (sound.contains(&product) || told.contains(product.id)) continue;
    const QStringList loop = formula_loop(checking.book, product.id);
    if (loop.isEmpty()) continue;
    told.unite(QSet<QString>(loop.begin(), loop.end()));
    checking.error(problem::Code::Conflict,
                   QStringLiteral("the formulas go round in a circle: ") + loop.join(QStringLiteral(" -> ")),
                   line_to(product, loop[1]),
                   QStringLiteral("take one of these out of the formula of another; rework belongs in the records"));
  }
}

}  // namespace lardiner::book
