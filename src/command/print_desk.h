// What the station's pages ask of its printers, and do with them.
#pragma once

#include <vector>

#include "command/ledger_run.h"
#include "command/print_board.h"
#include "ledger/prints.h"
#include "station/desk.h"

namespace lardiner::command {

/// The functions of station::Desk that print, over the ledger of a run.
class PrintDesk {
 public:
  /// REQUIRES: `options` and `board` outlive it.
  PrintDesk(const Options& options, std::vector<NamedPrinter> printers, PrintBoard& board)
      : options_(options), printers_(std::move(printers)), board_(board) {}

  problem::Expected<std::vector<station::PrinterShown>> printers(LedgerRun& run) const;
  problem::ExpectedAll<QString> ask(LedgerRun& run, const std::vector<words::Language>& packs,
                                    const station::ToPrint& wish, const QString& printer, int copies) const;
  problem::Expected<std::vector<station::PrintShown>> open(LedgerRun& run) const;
  problem::Expected<std::optional<station::PrintShown>> print(LedgerRun& run, const QString& id) const;
  problem::ExpectedAll<QString> end(LedgerRun& run, const station::PrintEnd& end) const;
  problem::ExpectedAll<bool> print_test_label(LedgerRun& run, const QString& printer, const QString& medium) const;
  problem::ExpectedAll<bool> medium_loaded(LedgerRun& run, const QString& printer, const QString& medium,
                                           const QString& by) const;

 private:
  problem::ExpectedAll<const NamedPrinter*> named(const QString& printer) const;
  std::optional<problem::Error> not_given_up(const ledger::Print& print) const;
  station::PrintShown shown(const ledger::Print& print) const;

  const Options& options_;
  std::vector<NamedPrinter> printers_;
  PrintBoard& board_;
};

}  // namespace lardiner::command
