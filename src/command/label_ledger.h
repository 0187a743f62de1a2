// Labels and the ledger: lots of it as batches to print, records that it knows otherwise, and prints recorded.
#pragma once

#include <optional>
#include <vector>

#include "command/ledger_run.h"

namespace lardiner::command {

class LabelLedger {
 public:
  /// The kitchen's ledger where there is one; one that `needed` is refused where there is none.
  static problem::ExpectedAll<std::optional<LabelLedger>> open(const Options& options, const book::Book& book,
                                                               const QDateTime& now, bool needed);

  /// The lots as they stand now, of those containers (empty: all) that are in the kitchen; a container whose label is
  /// printed already and is true still is a reprint. Held, recalled and unreleased lots are refused in their batch.
  /// Errors: an unknown lot, a lot of a supplier, containers that are not here.
  problem::ExpectedAll<std::vector<batch::Batch>> batches(const QStringList& lots, const std::vector<int>& containers);

  /// What a record of a file may not print: its lot has changed since it was recorded, or is recorded with another date
  /// or other allergens; or it is not recorded, and a lot that went into it is held, recalled or has changed. Errors
  /// besides: a lot that cannot be read, for what befell it is then not known.
  problem::Errors stale(const batch::Batch& batch);

  /// Remembers that the labels of a batch were made, if the ledger has its lot. Errors: a lot that cannot be read.
  problem::Errors made(const batch::Batch& batch, bool hold);

  /// Of the labels that were made. REQUIRES: `made` was told of some.
  QString item() const { return prints_.front().item; }
  /// Remembers that a print gives those labels to its printer, in that order. REQUIRES: `made` was told of the lot.
  void sent(const history::EntryId& print, const std::vector<int>& containers);

  /// Records the prints that were made. Nothing where there are none. Errors: something befell one of their lots since
  /// this ledger was opened; the ledger's.
  problem::Errors record_prints(const QString& by);
  /// Whether anything was recorded since it was opened.
  bool has_grown() { return ledger_.last() != read_to_; }
  /// Takes them back: the labels did not come to their place.
  problem::Errors void_prints(const QString& by);

 private:
  LabelLedger(const book::Book& book, const QDateTime& now, ledger::Ledger ledger);
  batch::Batch batch_of(const history::Lot& lot, const std::vector<int>& containers) const;
  problem::Errors unfit_inputs(const batch::Batch& batch);
  QString undeclared(const batch::Batch& batch);
  /// nullptr: the ledger does not have it.
  problem::Expected<const history::Lot*> lot_of(const batch::Batch& batch);
  ledger::Stamp stamp() const;

  const book::Book* book_;
  QDateTime now_;
  ledger::Ledger ledger_;
  qint64 read_to_;
  std::vector<history::Event> prints_;
};

}  // namespace lardiner::command
