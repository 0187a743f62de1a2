// What the book says of an item, worked out once for a whole run.
#pragma once

#include <QHash>
#include <QString>

#include "book/book.h"
#include "book/roll_up.h"
#include "book/standing.h"

namespace lardiner::batch {

/// Facts of the book, remembered. REQUIRES: the book outlives this and stays as it is.
class Lookup {
 public:
  explicit Lookup(const book::Book& book) : book_(book) {}

  const book::Standing& standing(const QString& item);
  const book::Declared& declared(const QString& item);

  /// What the book does not say of what the item is made of, through any depth.
  const problem::Errors& composition_gaps(const QString& item);

  /// What the book does not say and the label of the product itself needs.
  const problem::Errors& label_gaps(const book::Product& product, book::Readiness readiness);

  /// Whether the item is, or holds at any depth, an ingredient that is ready to eat and needs temperature control.
  bool holds_ready_tcs(const QString& item);

 private:
  const book::Book& book_;
  QHash<QString, book::Standing> standings_;
  QHash<QString, book::Declared> declared_;
  QHash<QString, problem::Errors> composition_gaps_;
  QHash<std::pair<QString, int>, problem::Errors> label_gaps_;
};

/// Whether an item needs time and temperature control; unknown counts as yes.
bool is_tcs(const book::Book& book, const QString& item);

}  // namespace lardiner::batch
