// Printing from the station: its printers, and the labels that they were asked for.
#pragma once

#include <QDateTime>
#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

namespace lardiner::station {

/// How a print stands that is not done.
enum class PrintState {
  Waiting,   ///< for the printer, or for a print before it; `text` says what keeps it
  NoMedium,  ///< nobody proved that the printer has these labels in it
  Silent,    ///< sent, and the printer does not answer
  Printing,
  Stopped,  ///< the printer waits for somebody
  Ended,    ///< at the printer, before all came out: somebody has to say which were good
  Lost,     ///< sent, and the printer knows nothing of it: as above
};

/// What is known of it while the station runs; the ledger has the rest.
struct PrintStanding {
  PrintState state = PrintState::Waiting;
  QString text;             ///< what keeps it; empty: nothing to say
  QStringList reasons;      ///< the printer's, in plain words
  std::optional<int> done;  ///< pages, as far as the printer says
};

/// A print as a page shows it.
struct PrintShown {
  QString id;  ///< "A-12"
  QString lot, item;
  std::vector<int> containers;  ///< in the order of their labels
  QString printer, medium, by;
  QDateTime at;
  int copies = 1;
  bool sent = false;
  std::optional<PrintStanding> standing;  ///< nothing: it is done
  int came_out = 0;                       ///< once it is done: labels that were good
  QString reason;                         ///< why not all
};

/// A printer of the station.
struct PrinterShown {
  QString name;
  QString medium;  ///< in it, as a test label proved; empty: nobody knows
  QString by;
  QDateTime at;
};

/// How somebody ends a print that the printer did not.
struct PrintEnd {
  QString id;
  int good = 0;        ///< labels that came out well, from the first
  bool again = false;  ///< the others are asked for anew
  QString by;
};

}  // namespace lardiner::station
