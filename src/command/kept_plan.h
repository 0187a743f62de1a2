// The plan of the station's orders: made anew only when it may be another.
#pragma once

#include <memory>
#include <mutex>

#include "command/kept_book.h"
#include "command/ledger_run.h"
#include "station/desk.h"

namespace lardiner::command {

/// One for all threads: a wall asks twice a minute.
class KeptPlan {
 public:
  /// `orders`: the file, as `lardiner plan` takes it; empty: there is no plan.
  explicit KeptPlan(QString orders) : orders_(std::move(orders)) {}

  /// Made again when the file, the book, the ledger or the minute is another. nullptr: there are no orders.
  std::shared_ptr<const station::PlanShown> now(std::shared_ptr<const TakenBook> taken, LedgerRun& run);
  /// See station::Desk::plan_pdf.
  problem::ExpectedAll<QByteArray> pdf(const Options& options) const;

 private:
  struct Made {
    std::shared_ptr<const TakenBook> taken;  // the plan's products stand in it
    std::vector<ledger::Head> heads;
    qint64 minute = 0;
    QByteArray file;
    station::PlanShown shown;
  };

  const QString orders_;
  std::mutex mutex_;  // of the one below
  std::shared_ptr<const Made> made_;
};

}  // namespace lardiner::command
