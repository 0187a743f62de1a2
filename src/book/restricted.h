// How much of a restricted ingredient is in what is made, by weight through any depth.
#pragma once

#include <optional>
#include <unordered_map>

#include "book/reach.h"
#include "book/weighing.h"

namespace lardiner::book {

class Contents {
 public:
  /// Of `ingredient` in all products of `reached`. All of these must outlive this.
  Contents(const Ingredient& ingredient, const Book& book, const Reach& reached, Weighing& weighing);

  const Ingredient& ingredient() const { return ingredient_; }

  /// In one making of a product made of what was reached; nothing where a weight is not known.
  std::optional<measure::Quantity> in(const Product& product) const;

 private:
  bool touches(const FormulaLine& line) const;
  std::optional<measure::Quantity> brought_by(const FormulaLine& line, measure::Quantity weight) const;

  const Ingredient& ingredient_;
  const Book& book_;
  Weighing& weighing_;
  std::unordered_map<const Product*, std::optional<measure::Quantity>> amounts_;
};

/// Of each restricted ingredient that was reached.
std::vector<Contents> contents_of_restricted(const Book& book, const Reach& reached, Weighing& weighing);

/// Whether the maximum of a finished product applies: it leaves the kitchen, or nothing else is made of it.
bool finished(const Book& book, const Product& product);

}  // namespace lardiner::book
