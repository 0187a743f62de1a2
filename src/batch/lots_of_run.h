// The lots of one run of records that an input may have been of which nobody wrote the lot.
#pragma once

#include <set>
#include <vector>

#include "batch/record.h"
#include "book/book.h"

namespace lardiner::batch {

/// Products alone: of a bought thing nobody knows whether it came out of the package that was labelled.
class LotsOfRun {
 public:
  /// Takes from the records what it needs; those without a number have no lot yet, and are nobody's candidates.
  LotsOfRun(const std::vector<Record>& records, const book::Book& book);

  /// The records, the last made first, those of one time by their lots: the order in which to ask for candidates, so
  /// that the order of a file decides nothing, and an earlier lot goes into a later one rather than the other way.
  std::vector<size_t> latest_first() const;

  /// The lots of `item`, by name, that may have gone into record `at`: begun and, where they are cooked, with a reading
  /// of the cook before its making was over, not all discarded before it began, and not made of it themselves. They are
  /// remembered as having gone into it, so that no two lots are taken to be made of one another.
  QStringList may_have_been(size_t at, const QString& item);

 private:
  struct Lot {
    QString code, item;
    QDateTime began, last_use;
    QDateTime ready;  ///< not before this
    QDateTime gone;   ///< all of it was discarded then; null: it was not
    std::set<size_t> from;
  };

  Lot lot_of(const Record& record) const;
  bool may_go_into(const Lot& lot, const Lot& into) const;
  bool made_of(size_t at, size_t of) const;

  const book::Book& book_;
  std::vector<Lot> lots_;
};

}  // namespace lardiner::batch
