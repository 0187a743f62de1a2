// What the book says of an item, worked out once for a whole run.
#include "batch/compute_lookup.h"

#include <algorithm>

#include "book/gaps.h"

namespace lardiner::batch {

namespace {

template <class Key, class T, class Make>
const T& remembered(QHash<Key, T>& known, const Key& key, Make make) {
  const auto found = known.constFind(key);
  return found != known.constEnd() ? *found : *known.insert(key, make());
}

}  // namespace

const book::Standing& Lookup::standing(const QString& item) {
  return remembered(standings_, item,
                    [&] { return book::Standings(book_, book::reach(book_, QStringList{item})).of(item); });
}

const book::Declared& Lookup::declared(const QString& item) {
  return remembered(declared_, item, [&] { return book::declared(book_, item); });
}

const problem::Errors& Lookup::composition_gaps(const QString& item) {
  return remembered(composition_gaps_, item, [&] {
    problem::Errors gaps;
    const auto add = [&](const problem::Errors& more) { gaps.insert(gaps.end(), more.begin(), more.end()); };
    const book::Reach reached = book::reach(book_, QStringList{item});
    for (const book::Ingredient* ingredient : reached.ingredients) add(book::gaps_in_composition(*ingredient));
    for (const book::Product* product : reached.products) add(book::gaps_in_composition(*product));
    return gaps;
  });
}

const problem::Errors& Lookup::label_gaps(const book::Product& product, book::Readiness readiness) {
  return remembered(label_gaps_, std::pair(product.id, static_cast<int>(readiness)), [&] {
    problem::Errors gaps = book::gaps_on_label(book_, product, readiness);
    book::Weighing weighing(book_);
    const book::Reach reached = book::reach(book_, product);
    const problem::Errors more =
        book::gaps_in_restricted(book_, product, book::contents_of_restricted(book_, reached, weighing));
    gaps.insert(gaps.end(), more.begin(), more.end());
    return gaps;
  });
}

bool Lookup::holds_ready_tcs(const QString& item) {
  const book::Reach reached = book::reach(book_, QStringList{item});
  return std::any_of(reached.ingredients.begin(), reached.ingredients.end(), [](const book::Ingredient* ingredient) {
    return ingredient->must_be_cooked != true && ingredient->tcs.is != book::TcsStatement::Is::No;
  });
}

bool is_tcs(const book::Book& book, const QString& item) {
  if (const book::Product* product = book.product(item)) return product->tcs.is != book::TcsStatement::Is::No;
  const book::Ingredient* ingredient = book.ingredient(item);
  return !ingredient || ingredient->tcs.is != book::TcsStatement::Is::No;
}

}  // namespace lardiner::batch
