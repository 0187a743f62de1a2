// The checks of the whole book, one file a concern. Each adds to the findings what it finds.
#pragma once

#include <QSet>

#include "book/book.h"
#include "book/standing.h"
#include "book/weighing.h"

namespace lardiner::book {

/// What the checks share.
struct Checking {
  const Book& book;
  const Reach& reached;  ///< of all products
  const Standings& standings;
  Weighing& weighing;
  Findings& findings;
  const QSet<const Product*>&
      doubtful;  ///< of tables with faults: their weights, and of what contains them, are not judged

  void error(problem::Code code, const QString& what, const problem::Place& place, const QString& hint) const {
    findings.errors.push_back({code, what, place, hint});
  }
};

/// Ids, codes, item numbers and initials that are said twice.
void check_ids(const Checking& checking);
/// Formulas that contain themselves.
void check_loops(const Checking& checking);
/// Cooks and finishings below the adopted minimum.
void check_temperatures(const Checking& checking);
/// Shelf lives longer than what they cite, longer than the rule set allows, or of the wrong kind.
void check_shelf_lives(const Checking& checking);
/// Containers that their product cannot be kept in.
void check_containers(const Checking& checking);
/// Too much of a restricted ingredient in a finished product.
void check_restricted(const Checking& checking);
/// Declarations that lack the species which the destination's list wants.
void check_declarations(const Checking& checking);
/// Formulas that make more than goes in; lines that sheets cannot weigh.
void check_weights(const Checking& checking);
/// Time out of the cold beyond what the rule set allows; a cooling without limits.
void check_making(const Checking& checking);
/// Everything that is missing.
void check_gaps(const Checking& checking);

}  // namespace lardiner::book
