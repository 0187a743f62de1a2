// Where the station's pages get what they say and take what they are told: the kitchen's book and ledger, and the work
// of the program's commands. One desk is used by one thread.
#pragma once

#include <QByteArray>
#include <QDateTime>
#include <QHash>
#include <QJsonObject>
#include <QString>
#include <QStringList>
#include <memory>
#include <optional>
#include <vector>

#include "book/book.h"
#include "facts/work_sheet.h"
#include "ledger/ledger.h"
#include "plan/day_plan.h"
#include "problem/error.h"
#include "reader/value.h"
#include "station/printing.h"
#include "station/said.h"
#include "words/words.h"

namespace lardiner::station {

/// What a scanned or typed text is.
struct Opened {
  QString what;       ///< in words: "a label of lot A26329CLB01K, container 3"
  QString lot, item;  ///< that it opens; empty: none
  std::optional<int> container;
  QString superseded;  ///< what its label says that is no longer true; empty: it is true, or none was scanned
};

/// What was recorded.
struct Recorded {
  QStringList entries;  ///< their names: "A-123"
  QString lot;          ///< that was made, or that it happened to; empty: none
  QStringList warnings;
  std::vector<ledger::LotName> concerned;  ///< by a hold, a recall or a correction
};

/// Which labels are asked for.
struct ToPrint {
  QString lot;
  std::vector<int> containers;  ///< none: all that are in the kitchen
  QString medium;               ///< instead of the containers' own; empty: theirs
  QString by;                   ///< initials
  bool hold = false;            ///< HOLD labels where the lot is not to be used, instead of the reason
};

/// Labels of one medium.
struct Printed {
  QString medium;
  int labels = 0;
  QByteArray pdf;
};

/// What went in instead of something else, or besides.
struct Replaced {
  QString item, instead_of;  ///< ids; instead of nothing: it was added
  QString adds;              ///< "Substitution: adds SESAME"; empty: nothing of the destination's list
};

/// What a batch will be, before anything of it is recorded.
struct Foreseen {
  QString lot;
  QString use_by;        ///< "use by Tue 01 Dec 2026"; empty: none can be told
  QStringList reasons;   ///< of the date, the deciding ones first
  QStringList contains;  ///< the declaration in words
  std::vector<Replaced> differences;
  QStringList warnings;
  problem::Errors refused;
  QByteArray label_svg;  ///< its first label as it will print; empty: none
};

/// A sheet of the kitchen.
struct SheetWish {
  enum class Kind { DayRecord, DispatchNote, Prep, Assembly };
  Kind kind = Kind::Prep;
  QDate day;     ///< DayRecord
  QString note;  ///< DispatchNote: its number
  QString product;
  QString amount;  ///< Prep: what shall come out, empty: the formula once; Assembly: how many
  QString number;  ///< the running number of the batch; empty: its lot is written in by hand
};

/// The plan of the kitchen's orders, netted against its ledger.
struct PlanShown {
  plan::DayPlan plan;                      ///< of the orders without fault; empty where the file cannot be read
  QHash<QString, QStringList> made_today;  ///< the lots of each product
  problem::Errors faults;                  ///< of the orders file, or of the ledger
  int past = 0;                            ///< orders of today whose time has passed: they are not planned
};

class Desk {
 public:
  virtual ~Desk() = default;

  SaidBefore said;  ///< by the pages of this desk

  /// A new request: asks the clock, the book, and what others have recorded meanwhile.
  virtual void begin() = 0;
  virtual const book::Book& book() const = 0;
  virtual ledger::Ledger& ledger() = 0;
  /// What is wrong with the book's files as they are now; `book` is then what they said before.
  virtual const std::optional<problem::Error>& book_fault() const = 0;
  /// Of this request.
  virtual QDateTime now() const = 0;
  /// When the last entry was recorded, where the clock stands before it: then nothing is recorded, dated or printed.
  virtual const std::optional<QDateTime>& recorded_after() const = 0;
  /// The packs whose words somebody reviewed, the kitchen's first language first.
  virtual const std::vector<words::Language>& languages() const = 0;

  /// The entries of a lot, a line each, as who is signed in may read them.
  virtual QStringList history(const ledger::LotName& lot) = 0;
  /// The running number for the next lot of a product or of a labelled ingredient, by its letters, on a day; 0: none is
  /// free, or it has no letters.
  virtual int next_number(const QString& letters, QDate day) = 0;

  /// As `lardiner --json history` and `lardiner --json due` give them.
  virtual problem::Expected<QJsonObject> lot_as_json(const ledger::LotName& lot) = 0;
  virtual problem::Expected<QJsonObject> due_as_json(int days) = 0;

  /// Everything that holds a lot and where it went, as `lardiner recall` has it, in a language; and as the PDF in those
  /// of the kitchen's sheets. With names of suppliers and staff: for who is signed in. Errors: those of recall_of.
  virtual problem::ExpectedAll<facts::WorkSheet> recall_sheet(const ledger::LotName& lot,
                                                              const words::Language& language) = 0;
  virtual problem::ExpectedAll<QByteArray> recall_pdf(const ledger::LotName& lot) = 0;

  /// As the commands make them, in a language; and as the PDF in those of the kitchen's sheets. With names of staff and
  /// with formulas: for who is signed in. Errors: the command's.
  virtual problem::ExpectedAll<facts::WorkSheet> sheet(const SheetWish& wish, const words::Language& language) = 0;
  virtual problem::ExpectedAll<QByteArray> sheet_pdf(const SheetWish& wish) = 0;
  /// As it is now; nullptr: the station was started without orders.
  virtual std::shared_ptr<const PlanShown> plan() = 0;
  /// Its sheets in working order, as `lardiner plan` makes them; lots are written in by hand. Errors: every fault of
  /// the orders; no orders.
  virtual problem::ExpectedAll<QByteArray> plan_pdf() = 0;
  /// What a lot was made of and what was made of it, as a picture (SVG). Errors: those of `lardiner trace`.
  virtual problem::ExpectedAll<QByteArray> lineage_picture(const ledger::LotName& lot) = 0;

  virtual Opened open(const QString& text, const QString& item) = 0;
  /// The texts of the codes in a picture or PDF. Errors: those of a scan.
  virtual problem::Expected<QStringList> codes(const QByteArray& bytes, const QString& name) = 0;
  /// Appends batch records and events, rows as `lardiner record` takes them: all or none. Errors: every one of their
  /// faults.
  virtual problem::ExpectedAll<Recorded> record(const std::vector<reader::Value>& rows) = 0;
  /// The same of a batch that gets no date: it is recorded, not released, with what is missing.
  virtual problem::ExpectedAll<Recorded> record_on_hold(const reader::Value& row) = 0;
  virtual problem::ExpectedAll<Foreseen> foresee(const reader::Value& row) = 0;
  /// The labels asked for, recorded as printed. Errors: those of `lardiner labels --lot`; labels of several media.
  virtual problem::ExpectedAll<Printed> labels(const ToPrint& wish) = 0;

  /// Those that the station was started with; none: labels come as PDF alone.
  virtual problem::Expected<std::vector<PrinterShown>> printers() = 0;
  /// The name of the print. Errors: those of `labels`, an unknown printer.
  virtual problem::ExpectedAll<QString> ask_print(const ToPrint& wish, const QString& printer, int copies) = 0;
  virtual problem::Expected<std::vector<PrintShown>> open_prints() = 0;
  virtual problem::Expected<std::optional<PrintShown>> print(const QString& id) = 0;
  /// Ends it: the printer gives up what it has of it, labels that did not come out are voided, and asked for anew where
  /// that is wished: the name of the new print, else empty. A printer that does not answer may print them yet: they are
  /// not voided, and a new one of them is a REPRINT. Errors: it is over already, the ledger's.
  virtual problem::ExpectedAll<QString> end_print(const PrintEnd& end) = 0;
  /// Prints one test label. Errors: an unknown printer or medium, the printer's.
  virtual problem::ExpectedAll<bool> print_test_label(const QString& printer, const QString& medium) = 0;
  /// Records that a test label proved which medium is in a printer. Errors: as above.
  virtual problem::ExpectedAll<bool> medium_loaded(const QString& printer, const QString& medium,
                                                   const QString& by) = 0;
};

}  // namespace lardiner::station
