// How safe each product is as it stands, and what cook it still needs: worked out once for everything reached.
#pragma once

#include <QHash>

#include "book/reach.h"
#include "book/roll_up.h"

namespace lardiner::book {

struct Standing {
  Readiness readiness = Readiness::Unknown;
  const CookMinimum* before = nullptr;  ///< the cook minimum of what is laid together, before any cook of its own
  const CookMinimum* still = nullptr;   ///< what is still to be met by whoever cooks it next
};

class Standings {
 public:
  /// Of all products in `reached`. `book` must outlive this.
  Standings(const Book& book, const Reach& reached);

  /// Of an ingredient or of a product that was reached; else unknown.
  Standing of(const QString& item) const;

  /// Of a product made of what was reached.
  Standing of(const Product& product) const;

 private:
  const Book& book_;
  QHash<const Product*, Standing> standings_;
};

}  // namespace lardiner::book
