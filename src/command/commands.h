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
  QString records;  ///< empty: `lots` of the ledger
  QStringList lots;
  QString containers;  ///< of the one lot; empty: all that are in the kitchen
  QString by;          ///< who prints; for the ledger
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

struct RecordOptions {
  QStringList words;  ///< one file (or "-"), or KEY=VALUE words of one row
  RecordFormat format = RecordFormat::Guess;
  bool hold = false;  ///< a batch without a date is recorded on hold
};

/// Appends batch records and events to the ledger, everything or nothing.
ExitStatus record(const Options& options, const RecordOptions& wish);

struct HistoryOptions {
  QString lot;
  QString item;  ///< where two suppliers use the same lot
};

/// One lot: whether it is good and until when and why, then all that is known of it.
ExitStatus history_of(const Options& options, const HistoryOptions& wish);

struct ScanOptions {
  QStringList words;  ///< pictures, PDFs; what a scanner read, or a lot that was typed
  QString item;       ///< where two suppliers use the same lot
  int seconds = 0;    ///< at most so long for a file
  QString program;    ///< this one, to be run by `read_codes_for_scan` for each file
};

/// What each code is, and the history that it opens.
ExitStatus scan_all(const Options& options, const ScanOptions& wish);

/// The part of it that runs in a process of its own: a picture or PDF from standard input, what is found in it, in a
/// form of its own, to standard output.
ExitStatus read_codes_for_scan(int seconds);

struct DueOptions {
  int days = 3;  ///< after today, of what is to be used first
};

/// Deadlines that run, what to discard, what ends today, what to use first, what needs a new label.
ExitStatus due_now(const Options& options, const DueOptions& wish);

struct TraceOptions {
  QString lot;
  QString item;
  QString out;  ///< .svg or .pdf: the picture of the lineage; empty: text
  bool replace = false;
};

/// What a lot was made of and what was made of it, through any depth, and the balance of its amounts.
ExitStatus trace(const Options& options, const TraceOptions& wish);

/// What a sheet of the ledger is told: the record of a day, a dispatch note, what holds a lot.
struct DayRecordOptions {
  QString day;
  SheetOptions sheet;
};
ExitStatus day_record(const Options& options, const DayRecordOptions& wish);

struct DispatchNoteOptions {
  QString note;
  SheetOptions sheet;
};
ExitStatus dispatch_note(const Options& options, const DispatchNoteOptions& wish);

struct RecallOptions {
  QString lot;
  QString item;
  SheetOptions sheet;
};
ExitStatus recall(const Options& options, const RecallOptions& wish);

struct ExportOptions {
  QString from, to;  ///< days as 2026-02-28, both among them; or
  QString lot;       ///< one lot with its whole lineage
  QString item;
  QString out;
  bool replace = false;
};

/// The critical tracking events as a .csv or .xlsx; and as an EPCIS 2.0 document. Writes everything or nothing.
ExitStatus export_spreadsheet(const Options& options, const ExportOptions& wish);
ExitStatus export_epcis(const Options& options, const ExportOptions& wish);

struct PrintersOptions {
  QString address;  ///< of one; empty: all that can be found
};

/// The printers that can be reached, with what each can do.
ExitStatus printers(const Options& options, const PrintersOptions& wish);

struct PrintOptions {
  QString file;     ///< a .pdf
  QString printer;  ///< its name, or its ipp:// address
  QString medium;   ///< of the book, that the file was made for; empty: as large as its pages
  int copies = 1;
  QString pages;     ///< "3-9", "3-" or "3"; empty: all
  QString job_name;  ///< empty: the file's name
  int seconds = 0;   ///< to wait for its end, at the most
};

/// Sends a PDF to a printer and watches until it is printed.
ExitStatus print_file(const Options& options, const PrintOptions& wish);

struct VerifyOptions {
  QString head;          ///< of a day record or a backup; empty: none is known
  bool rebuild = false;  ///< computes the state of every lot anew from the entries
  bool chains = false;   ///< only walks the chains, which is quicker
};

/// Whether the entries are those that were recorded.
ExitStatus verify_ledger(const Options& options, const VerifyOptions& wish);

struct StationOptions {
  QString address;
  int port = 0;
  QString certificate, key;  ///< PEM files; both empty: in the clear
  QStringList names;         ///< by which browsers may call it, besides its addresses
  QString pins;              ///< file; empty: beside the ledger
  QString program;           ///< this one, to be run for each picture
  QStringList printers;      ///< each NAME=ADDRESS, or a name or an address alone
  QString orders;            ///< file, of which a plan is shown; may be empty
};

/// The kitchen's web page, until a stop is asked for.
ExitStatus serve_station(const Options& options, const StationOptions& wish);

struct PinOptions {
  QString initials;
  bool strong = false;  ///< the strong word instead of the PIN
  bool remove = false;  ///< takes out both, also of who is no longer in the book
  QString pins;
};

/// Sets the PIN or the strong word of somebody in the book, read from standard input; at a terminal it is asked for and
/// not shown.
ExitStatus set_pin(const Options& options, const PinOptions& wish);

/// A copy of the ledger that verifies; and a ledger out of one.
ExitStatus backup(const Options& options, const QString& to);
ExitStatus restore(const Options& options, const QString& from);

}  // namespace lardiner::command
