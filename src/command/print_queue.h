// Sends the prints of one printer, one after the other, and follows each to its end.
#pragma once

#include <thread>

#include "command/ledger_run.h"
#include "command/print_board.h"
#include "ledger/prints.h"
#include "printer/job.h"

namespace lardiner::command {

/// What is asked for and not done stands in the ledger, so that whoever comes after a stop, a kill or a power cut goes
/// on. A print is recorded as sent before the printer gets it. One that is found sent is never sent again: the printer
/// is asked for its job by name, and where it knows none, somebody has to say which labels came out.
class PrintQueue {
 public:
  /// Works in a thread of its own until the board is told to stop. All must outlive it.
  PrintQueue(const Options& options, const QString& ledger_path, NamedPrinter printer, PrintBoard& board);
  ~PrintQueue();
  PrintQueue(const PrintQueue&) = delete;
  PrintQueue& operator=(const PrintQueue&) = delete;

 private:
  void run();
  void look();
  void go_on(LedgerRun& run, const ledger::Print& print);
  void send(LedgerRun& run, const ledger::Print& print);
  void find(LedgerRun& run, const ledger::Print& print);
  void follow(LedgerRun& run, const ledger::Print& print, int job);
  void forget_medium(LedgerRun& run, const ledger::Print& print);
  problem::Errors record(LedgerRun& run, history::Event event);
  void ended(LedgerRun& run, const ledger::Print& print, const printer::JobStatus& job);
  void tell(const ledger::Print& print, station::PrintState state, const QString& text);
  void tell(const ledger::Print& print, station::PrintState state, const printer::JobStatus& job);

  const Options& options_;
  const QString ledger_path_;
  const NamedPrinter printer_;
  PrintBoard& board_;
  std::optional<ledger::Ledger> ledger_;  // that is watched
  std::thread thread_;                    // last: it uses all of the above
};

}  // namespace lardiner::command
