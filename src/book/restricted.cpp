// How much of a restricted ingredient is in what is made, by weight through any depth.
#include "book/restricted.h"

#include <algorithm>

namespace lardiner::book {

using measure::Quantity;

namespace {

// How much of the ingredient a line brings.
std::optional<Quantity> brought_by(const FormulaLine& line, Quantity weight, const Ingredient& ingredient,
                                   const Book& book, const Amounts& of_parts, Weighing& weighing) {
  if (line.item == ingredient.id) return weight;
  const auto part = of_parts.find(book.product(line.item));
  if (part == of_parts.end()) return Quantity{};
  const auto output = weighing.output(*part->first);
  if (!part->second || !output || output->amount == 0) return std::nullopt;
  return scaled(weight, ratio(*part->second, *output));
}

bool touches(const FormulaLine& line, const Ingredient& ingredient, const Book& book, const Amounts& of_parts) {
  const auto part = of_parts.find(book.product(line.item));
  return line.item == ingredient.id || (part != of_parts.end() && part->second != Quantity{});
}

}  // namespace

std::optional<Quantity> amount_in(const Product& product, const Ingredient& ingredient, const Book& book,
                                  const Amounts& of_parts, Weighing& weighing) {
  const auto holds = [&](const FormulaLine& line) { return touches(line, ingredient, book, of_parts); };
  if (std::none_of(product.formula.begin(), product.formula.end(), holds)) return Quantity{};
  const auto& weights = weighing.lines(product);
  if (!weights) return std::nullopt;
  Quantity total;
  for (size_t i = 0; i < product.formula.size(); ++i) {
    if (!holds(product.formula[i])) continue;
    const auto brought = brought_by(product.formula[i], (*weights)[i], ingredient, book, of_parts, weighing);
    if (!brought) return std::nullopt;
    total = total + *brought;
  }
  return total;
}

Amounts amounts_of(const Ingredient& ingredient, const Book& book, const Reach& reached, Weighing& weighing) {
  Amounts amounts;
  for (const Product* product : reached.products)
    amounts.emplace(product, amount_in(*product, ingredient, book, amounts, weighing));
  return amounts;
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
