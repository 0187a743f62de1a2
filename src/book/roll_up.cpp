// What follows from a formula: declarations, readiness and cook minimum through any depth.
#include "book/roll_up.h"

#include "book/reach.h"
#include "book/standing.h"

namespace lardiner::book {

namespace {

// Of the supplier items any may have been used: their union stands, and one without a declaration leaves it unknown.
Declared declared_by(const Ingredient& ingredient) {
  Declared all;
  all.stated = !ingredient.supplier_items.empty();
  for (const SupplierItem& item : ingredient.supplier_items) all = united(all, item.declared);
  return all;
}

}  // namespace

Declared declared(const Book& book, const QString& item) {
  const Reach reached = reach(book, QStringList{item});
  Declared all;
  all.stated = reached.whole;
  for (const Product* product : reached.products)
    if (product->formula.empty()) all.stated = false;
  for (const Ingredient* ingredient : reached.ingredients) all = united(all, declared_by(*ingredient));
  return all;
}

Readiness readiness(const Book& book, const QString& item) {
  return Standings(book, reach(book, QStringList{item})).of(item).readiness;
}

const CookMinimum* cook_minimum(const Book& book, const Product& product) {
  return Standings(book, reach(book, product)).of(product).before;
}

QStringList formula_loop(const Book& book, const QString& product) {
  // The shortest way back: each product is noted with the one it was reached from.
  QHash<QString, QString> from;
  QStringList ahead{product};
  for (qsizetype next = 0; next < ahead.size(); ++next) {
    const Product* at = book.product(ahead[next]);
    if (at == nullptr) continue;
    for (const FormulaLine& line : at->formula) {
      if (line.item == product) {
        QStringList loop{product};
        for (QString back = at->id; back != product; back = from.value(back)) loop.prepend(back);
        loop.prepend(product);
        return loop;
      }
      if (from.contains(line.item) || book.product(line.item) == nullptr) continue;
      from.insert(line.item, at->id);
      ahead += line.item;
    }
  }
  return {};
}

}  // namespace lardiner::book
