// What an item is made of through any depth: everything that its formula reaches, each once.
#pragma once

#include <QStringList>
#include <vector>

#include "book/book.h"

namespace lardiner::book {

struct Reach {
  std::vector<const Product*> products;        ///< each after those in its own formula; those given among them
  std::vector<const Ingredient*> ingredients;  ///< each once
  bool whole = true;  ///< false when something is missing: an unknown id, or a loop, whose products and what contains
                      ///< them are left out
};

/// Everything that `items` (ids) reach, themselves included. Takes time in proportion to the lines reached, however
/// often a part is shared; ends on loops too.
Reach reach(const Book& book, const QStringList& items);

/// As above, from a product that need not stand in the book (a formula with a substitution); it is not in the result.
Reach reach(const Book& book, const Product& product);

}  // namespace lardiner::book
