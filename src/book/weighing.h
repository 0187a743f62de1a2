// The weights of formulas, each product worked out once.
#pragma once

#include <optional>
#include <unordered_map>
#include <vector>

#include "book/book.h"

namespace lardiner::book {

class Weighing {
 public:
  /// `book` must outlive this and stay as it is.
  explicit Weighing(const Book& book) : book_(book) {}

  /// See roll_up.h. The result stands as long as this does; `product` must too.
  const problem::ExpectedAll<std::vector<measure::Quantity>>& lines(const Product& product);
  problem::ExpectedAll<measure::Quantity> output(const Product& product);

  /// How many units one making gives; nothing when the book does not say.
  static std::optional<measure::Ratio> units(const Product& product);

  /// What a volume or a count of it weighs; nothing when the book does not say. REQUIRES: not a mass.
  std::optional<measure::Quantity> of_ingredient(const Ingredient& ingredient, measure::Quantity amount) const;
  std::optional<measure::Quantity> of_product(const Product& product, measure::Quantity amount);

 private:
  friend class FormulaWeighing;
  problem::Expected<measure::Quantity> weight(const FormulaLine& line, const QString& noun);

  const Book& book_;
  int depth_ = 0;
  std::unordered_map<const Product*, problem::ExpectedAll<std::vector<measure::Quantity>>> lines_;
};

/// What one making weighs by its own statement: `makes` as a weight, or as pieces of a `unit_weight`.
std::optional<measure::Quantity> stated_output(const Product& product);

/// The sum of the weights.
measure::Quantity sum(const std::vector<measure::Quantity>& weights);

}  // namespace lardiner::book
