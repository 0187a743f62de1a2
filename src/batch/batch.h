// One computed batch: the one record that labels, codes, the ledger and pages are made from.
#pragma once

#include <QDateTime>
#include <QHash>
#include <QString>
#include <QStringList>
#include <memory>
#include <optional>
#include <vector>

#include "batch/cooling.h"
#include "batch/record.h"
#include "batch/use_by.h"
#include "book/book.h"
#include "book/roll_up.h"

namespace lardiner::batch {

struct Fixed;

struct Container {
  int number = 0;  ///< n, from 1
  int of = 0;      ///< N
  int group = 0;   ///< index into record.containers
  QString serial;
  int use_by = 0;          ///< index into Batch::use_bys: containers with the same timeline share one
  bool discarded = false;  ///< no label
  bool reprint = false;    ///< its label was printed before, and is the same still
};

/// What a substitution (or something added, then without `instead_of`) changed, against the formula.
struct Difference {
  QString item, instead_of;
  std::vector<book::Declaration> adds, removes;
  QString agreed_by;
};

/// One thing that really went in, and of what it is made itself: for ingredient statements.
struct Part {
  QString item;
  QString supplier_item;                           ///< empty: any of the ingredient's
  std::optional<measure::Quantity> quantity;       ///< as recorded; absent: the formula's
  std::shared_ptr<const std::vector<Part>> parts;  ///< of a lot of the same run; else null, and the book says
  std::optional<measure::Quantity> made;           ///< of a lot of the same run: what its `parts` gave
};

struct Batch {
  Record record;
  int number = 0;
  QString lot;
  QString gtin;
  QDateTime day_one;  ///< made_at, or the cook that ended the raw inputs' clocks
  std::vector<Container> containers;
  std::vector<UseBy> use_bys;
  book::Declared declared;  ///< of what really went in
  book::Readiness readiness = book::Readiness::Unknown;
  bool previously_frozen = false;  ///< an input was, or all of its containers were
  Cooling cooling;
  std::vector<Difference> differences;
  std::shared_ptr<const std::vector<Part>> parts;  ///< what really went in, in the order of the formula
  std::vector<QString> warnings;
  problem::Errors refused;  ///< why there is no dated label; empty: there is one
  QStringList missing;      ///< words keys "missing.…" for the HOLD label, in order of weight
};

/// Computes the records of a run, inputs that are lots of the same run first (whatever the order of records). A record
/// that is refused still yields a Batch with `refused` (and `missing`), for HOLD labels; it refuses what was made from
/// it. Errors of the run as a whole (a lot made twice, a loop of lots) are put on the batches they touch. `now` is the
/// time of the run; nothing is dated from it.
///
/// One batch at a time: of those handed out only what a later record still needs of its inputs is kept, so that a long
/// run takes little more memory than its records.
class Computing {
 public:
  /// REQUIRES: records as `read_records` gives them, of this book, which outlives this.
  Computing(const book::Book& book, std::vector<Record> records, const QDateTime& now);
  ~Computing();
  Computing(const Computing&) = delete;
  Computing& operator=(const Computing&) = delete;

  /// The same, with lots that were recorded before: inputs that name one of them (or have it among their candidates)
  /// take its dates, declarations, parts and previously-frozen from it, as from a lot of the run. A lot of the run that
  /// `earlier` has already is refused as made twice.
  Computing(const book::Book& book, std::vector<Record> records, const std::vector<Fixed>& earlier,
            const QDateTime& now);

  /// The batches in the order of the records, then nothing.
  std::optional<Batch> next();

  /// The same, as the ledger fixes them (batch/fixed.h).
  std::optional<Fixed> next_fixed();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

/// All batches of a run at once.
std::vector<Batch> compute(const book::Book& book, std::vector<Record> records, const QDateTime& now);

}  // namespace lardiner::batch
