// What allergens a line of a sheet brings, by the kitchen's list.
#pragma once

#include <QString>
#include <vector>

#include "book/book.h"

namespace lardiner::plan {

struct Brought {
  bool known = false;            ///< false: a declaration is missing, or the list is; nothing may be said to be absent
  std::vector<QString> entries;  ///< ids of the list's entries that a label names as contained, in the list's order
};
Brought brought_allergens(const book::Book& book, const QString& item);

}  // namespace lardiner::plan
