// The subcommands: what each is told, and its exit status.
#pragma once

#include <QString>
#include <QStringList>
#include <optional>

#include "command/exit_status.h"
#include "command/kitchen.h"
#include "command/records.h"

namespace lardiner::command {

/// Reads the whole book and prints every problem.
ExitStatus check(const Options& options);

struct DatesOptions {
  QString records;
  RecordFormat format = RecordFormat::Guess;
};

/// Prints the use-by of each batch with the rule that decided, those that lost, and their authority.
ExitStatus dates(const Options& options, const DatesOptions& wish);

struct LabelsOptions {
  QString records;
  RecordFormat format = RecordFormat::Guess;
  QString out;  ///< a .pdf, or a folder with a PDF for each medium
  bool replace = false;
  bool keep_going = false;
  bool hold_labels = false;
  QString media;             ///< print everything on this medium; empty: each container's own
  bool proof = false;        ///< a proof beside each PDF; `out` is then a folder
  std::optional<int> start;  ///< the first free place of the part-used sheet that the labels begin with, from 1
};

/// Labels for the containers of batch records, as PDF. Writes everything or nothing.
ExitStatus labels(const Options& options, const LabelsOptions& wish);

struct PadOptions {
  QString product;
  QString containers;  ///< of each batch: "12 tub 500 g"
  QString number;      ///< "901", or "901-905": a batch for each
  QString medium;
  QString out;  ///< a .pdf
  bool replace = false;
};

/// Labels to be filled in by hand, of batches that are not made yet. Writes everything or nothing.
ExitStatus pad(const Options& options, const PadOptions& wish);

struct TestPageOptions {
  QString medium;
  QString out;  ///< a .pdf
  bool replace = false;
};

/// What the printer can do on a medium: rulers, the smallest type, codes at each module size, dot patterns.
ExitStatus test_page(const Options& options, const TestPageOptions& wish);

/// What the sheet of a single batch is told, whichever it is.
struct SheetOptions {
  QString number;   ///< the running number of the batch; empty: its lot is written in by hand
  QString on_hand;  ///< lots to draw from; empty: they are written in by hand
  QString out;      ///< a .pdf; empty: text on the terminal
  QString paper;    ///< "a4", "letter"; empty: the kitchen's
  bool replace = false;
};

struct PrepOptions {
  QString product;
  QString give;  ///< what shall come out: "4.2 kg", "120 pieces", "12 tub 500 g"
  QString from;  ///< "butter=3.2 kg": all of it is used
  QString times;
  bool fill_vessel = false;
  SheetOptions sheet;
};

/// The prep sheet of a batch; of `give`, `from`, `times` and `fill_vessel` at most one, none of them is once.
ExitStatus prep(const Options& options, const PrepOptions& wish);

struct AssemblyOptions {
  QString product;
  QString units;      ///< empty: as many as `there` is enough for at worst
  QStringList there;  ///< "butter=3.2 kg" of each
  SheetOptions sheet;
};

/// The assembly sheet of a batch.
ExitStatus assembly(const Options& options, const AssemblyOptions& wish);

struct PlanOptions {
  QString orders;
  RecordFormat format = RecordFormat::Guess;
  QString on_hand;
  QString number;  ///< of the first batch; empty: 1
  QString out;     ///< a folder; empty: the plan on the terminal
  QString paper;
  bool replace = false;
};

/// The day's plan: what to make, pull and buy for the orders. An order that cannot be met leaves the rest as it is, and
/// the status is kDoneInPart. Writes everything or nothing.
ExitStatus plan_day(const Options& options, const PlanOptions& wish);

}  // namespace lardiner::command
