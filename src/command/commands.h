// The subcommands: what each is told, and its exit status.
#pragma once

#include <QString>
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

}  // namespace lardiner::command
