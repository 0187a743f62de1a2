// How much of a restricted ingredient is in what is made, by weight through any depth.
#include "book/restricted.h"

#include <algorithm>

namespace lardiner::book {

using measure::Quantity;

Contents::Contents(const Ingredient& ingredient, const Book& book, const Reach& reached, Weighing& weighing)
    : ingredient_(ingredient), book_(book), weighing_(weighing) {
  for (const Product* product : reached.products) amounts_.emplace(product, in(*product));
}

std::optional<Quantity> Contents::in(const Product& product) const {
  const auto touched = [&](const FormulaLine& line) { return touches(line); };
  if (std::none_of(product.formula.begin(), product.formula.end(), touched)) return Quantity{};
  const auto& weights = weighing_.lines(product);
  if (!weights) return std::nullopt;
  Quantity total;
  for (size_t i = 0; i < product.formula.size(); ++i) {
    if (!touches(product.formula[i])) continue;
    const auto brought = brought_by(product.formula[i], (*weights)[i]);
    if (!brought) return std::nullopt;
    total = total + *brought;
  }
  return total;
}

bool Contents::touches(const FormulaLine& line) const {
  const auto part = amounts_.find(book_.product(line.item));
  return line.item == ingredient_.id || (part != amounts_.end() && part->second != Quantity{});
}

std::optional<Quantity> Contents::brought_by(const FormulaLine& line, Quantity weight) const {
  if (line.item == ingredient_.id) return weight;
  const auto& [part, amount] = *amounts_.find(book_.product(line.item));
  const auto output = weighing_.output(*part);
  if (!amount || !output || output->amount == 0) return std::nullopt;
  return scaled(weight, ratio(*amount, *output));
}

std::vector<Contents> contents_of_restricted(const Book& book, const Reach& reached, Weighing& weighing) {
  std::vector<Contents> all;
  for (const Ingredient* ingredient : reached.ingredients)
    if (ingredient->most_percent) all.emplace_back(*ingredient, book, reached, weighing);
  return all;
}

bool finished(const Book& book, const Product& product) {
  const bool leaves = std::any_of(product.containers.begin(), product.containers.end(),
                                  [](const ContainerSpec& container) { return container.purpose != Purpose::Inside; });
  if (leaves) return true;
  return std::none_of(book.products.begin(), book.products.end(), [&](const Product& other) {
    return std::any_of(other.formula.begin(), other.formula.end(),
                       [&](const FormulaLine& line) { return line.item == product.id; });
  });
}

}  // namespace lardiner::book
