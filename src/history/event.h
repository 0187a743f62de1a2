// What can happen in a kitchen, as the ledger records it: one entry, never edited.
#pragma once

#include <QDateTime>
#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "batch/fixed.h"
#include "batch/record.h"
#include "book/storage_place.h"
#include "measure/quantity.h"
#include "measure/temperature.h"
#include "problem/error.h"

namespace lardiner::history {

/// A ledger's tables keep a kind by its number: a new one comes last, and none is ever taken out.
enum class Kind {
  Received,  ///< a supplier's lot came in
  Made,      ///< a batch, or an opened, thawed, cut or decanted ingredient: with its fixed facts
  Moved,     ///< containers to a place of the kitchen
  Cooled,    ///< a core reading of a cooling
  Frozen,
  Thawed,
  Opened,
  HotHeld,
  TimeControl,
  Reheated,
  Finished,
  Split,       ///< one container into further ones: same lot, new serials, never a later date
  Used,        ///< part of a container (or all of it) went somewhere that is no batch
  Counted,     ///< seen at a close of day, with how much is left; or not seen: missing
  Dispatched,  ///< left for a site
  Arrived,     ///< accepted there, or not
  Returned,    ///< came back: on hold by default
  Discarded,
  Hold,              ///< a lot, or all that stands in a place
  Release,           ///< of a hold; never of a cooling that is not shown
  Printed,           ///< labels of a lot's containers
  Reprinted,         ///< the same labels again
  Voided,            ///< labels printed and not used
  PlaceTemperature,  ///< of a fridge, a freezer, a van
  Reading,           ///< of food: held hot, held cold, served
  CorrectiveAction,
  Review,      ///< of a day, by a second person
  Correction,  ///< of an earlier entry, of what a supplier's item declares, or of a batch's date
  RecallOpened,
  RecallClosed,
  Check,        ///< of cleaning, pests, a sanitizer's strength, a thermometer: in order or not
  PrintAsked,   ///< labels of a lot's containers, of a printer: its entry's name is that of the print
  PrintSent,    ///< they are given to the printer now, and never again
  PrintDone,    ///< so many of them came out and are good; the others never will
  MediumLoaded  ///< in a printer, as a test label proved; without a medium: nobody knows any more
};

/// "part-used" as rows and bodies write a kind; and back.
QString word(Kind kind);
std::optional<Kind> kind_of(const QString& word);
QStringList kind_words();

/// Which entry of a ledger: "A-123".
struct EntryId {
  QString station;
  qint64 number = 0;
  bool valid() const { return number > 0; }
  QString text() const;
  friend bool operator==(const EntryId&, const EntryId&) = default;
};
/// Nothing where `text` is not one: letters or figures of a station, a hyphen, a number from 1 without leading zeros.
std::optional<EntryId> entry_id(const QString& text);

/// One event. Which fields a kind has and needs is in EVENTS.md; those it has not are empty.
struct Event {
  Kind kind = Kind::Moved;
  QDateTime at;  ///< when it happened
  QString by;    ///< initials
  QString lot;   ///< ours, or a supplier's
  QString item;  ///< ingredient or product; of a supplier's lot always
  QString supplier_item;
  std::vector<int> containers;                ///< numbers from 1; empty: all of the lot that are in the kitchen
  std::optional<measure::Quantity> quantity;  ///< received, used; of a container of Split each
  std::optional<int> left_percent;            ///< Counted: 100 full, 50 half, 25 a quarter, 0 not seen
  int count = 0;           ///< Split: into how many; Received: packages; PrintAsked: copies of each; PrintDone: labels
  QString container_kind;  ///< Received: "case"; Split: "tub"
  std::optional<measure::Temperature> temperature;
  int seconds = 0;                         ///< Reheated: held
  std::optional<batch::StatedEnd> stated;  ///< Received: the date on the package
  QString state;                           ///< Received: "ambient", "chilled", "frozen"
  bool tcs = true;                         ///< Received: whether it needs temperature control; unknown counts as yes
  QString place;                           ///< of the kitchen: where to, or of which
  book::HeldTo limits;                     ///< PlaceTemperature: what the place was held to then; nothing: not known
  QString from;                            ///< Received: the supplier, as the kitchen names it
  QString site, order;                     ///< Dispatched, Arrived, Returned
  QString note;             ///< Dispatched: the dispatch note's number; Received: the delivery's; Check: the remark
  bool accepted = true;     ///< Arrived, Received
  bool in_order = true;     ///< Check
  QString printer, medium;  ///< PrintAsked, MediumLoaded: as the station names it; of the book
  QString reason;           ///< discarded, hold, release, voided, returned, correction, recall…
  QString action;           ///< CorrectiveAction: what was done
  QString what;             ///< Reading: "hot-held", "cold-held", "served"; Check: of what; Printed: the purpose
  QString label_end;        ///< Printed: the date that the label's code shows, as its attribute: "17=261201"
  EntryId of;  ///< Release: the hold; Correction: what it corrects; RecallClosed: the recall; PrintSent, PrintDone: the
               ///< print
  std::optional<QDate> day;              ///< Review: which day
  std::optional<QDate> checked;          ///< Received: when what its supplier's item declares was last read
  QStringList adds;                      ///< Correction of a supplier's item: substances that it declares besides
  std::optional<batch::StatedEnd> ends;  ///< Correction of a lot: its date, earlier than the one shown
  QString book_hash;                     ///< Made: SHA-256 of the book, hexadecimal
  std::optional<batch::Fixed> made;      ///< Made: its facts
  problem::Place source;                 ///< where it was written; not kept
};

/// An event with what the ledger adds.
struct Entry {
  EntryId id;
  QDateTime recorded_at;  ///< UTC
  QString zone;           ///< IANA name of the kitchen's
  Event event;
};
/// The calendar day in the kitchen's zone on which it happened.
QDate local_day(const Entry& entry);

}  // namespace lardiner::history
