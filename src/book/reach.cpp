// What an item is made of through any depth: everything that its formula reaches, each once.
#include "book/reach.h"

namespace lardiner::book {

namespace {

class Walk {
 public:
  explicit Walk(const Book& book)
      : book_(book),
        seen_ingredients_(book.ingredients.size()),
        seen_products_(book.products.size()),
        waits_for_(book.products.size()),
        awaited_by_(book.products.size()) {}

  void add(const QString& item) {
    if (const Product* product = book_.product(item)) {
      add_product(*product);
    } else if (const Ingredient* ingredient = book_.ingredient(item)) {
      const size_t at = static_cast<size_t>(ingredient - book_.ingredients.data());
      if (!seen_ingredients_[at]) reach_.ingredients.push_back(ingredient);
      seen_ingredients_[at] = true;
    } else {
      reach_.whole = false;
    }
  }

  Reach finished() {
    for (size_t next = 0; next < found_.size(); ++next) {
      const Product& product = book_.products[found_[next]];
      for (const FormulaLine& line : product.formula) add_part(found_[next], line.item);
    }
    put_in_order();
    return std::move(reach_);
  }

 private:
  void add_product(const Product& product) {
    const size_t at = static_cast<size_t>(&product - book_.products.data());
    if (!seen_products_[at]) found_.push_back(at);
    seen_products_[at] = true;
  }

  void add_part(size_t whole, const QString& item) {
    add(item);
    const Product* part = book_.product(item);
    if (part == nullptr) return;
    awaited_by_[static_cast<size_t>(part - book_.products.data())].push_back(whole);
    ++waits_for_[whole];
  }

  // Parts first: whatever waits for nothing is next; what waits for ever is in a loop or contains one.
  void put_in_order() {
    std::vector<size_t> ready;
    for (const size_t at : found_)
      if (waits_for_[at] == 0) ready.push_back(at);
    for (size_t next = 0; next < ready.size(); ++next) {
      reach_.products.push_back(&book_.products[ready[next]]);
      for (const size_t whole : awaited_by_[ready[next]])
        if (--waits_for_[whole] == 0) ready.push_back(whole);
    }
    if (ready.size() != found_.size()) reach_.whole = false;
  }

  const Book& book_;
  std::vector<bool> seen_ingredients_, seen_products_;
  std::vector<size_t> found_;
  std::vector<size_t> waits_for_;
  std::vector<std::vector<size_t>> awaited_by_;
  Reach reach_;
};

}  // namespace

Reach reach(const Book& book, const QStringList& items) {
  Walk walk(book);
  for (const QString& item : items) walk.add(item);
  return walk.finished();
}

Reach reach(const Book& book, const Product& product) {
  QStringList parts;
  for (const FormulaLine& line : product.formula) parts += line.item;
  return reach(book, parts);
}

}  // namespace lardiner::book
