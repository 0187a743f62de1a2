// Everything one label must say, computed and put into words, before any layout.
#pragma once

#include <QByteArray>
#include <QString>
#include <vector>

#include "batch/batch.h"
#include "book/kitchen.h"
#include "words/words.h"

namespace lardiner::facts {

/// The facts of labels, in no order: the template gives them their place and size.
enum class FactId {
  Readiness,  ///< RAW: COOK BEFORE SERVING
  Name,
  Count,         ///< "24 pieces"
  DateCaption,   ///< USE BY, BEST BEFORE, FROZEN
  Date,          ///< TUE 01 DEC
  Year,          ///< 2026
  Time,          ///< 14:00, when the end is not the end of a day
  DaysLeft,      ///< "4 days left: the thaw day is day 1"
  FrozenLimits,  ///< never past a maker's date, best before if kept frozen
  WriteDates,    ///< "Thawed ____", "Use by ____"
  Contains,      ///< CONTAINS milk, or "None of …"
  MayContain,
  PreviouslyFrozen,
  TimeControl,    ///< without temperature control
  ReducedOxygen,  ///< the sentences that such a pack must carry
  Finishing,      ///< a paragraph for each equipment and start state
  HoldFinished,   ///< hold at most, "Finished __ discard by __"
  KeepAt,
  Made,         ///< prepared day and time; opened, thawed, cut or decanted
  Net,          ///< 500 g (1 lb 1.6 oz)
  ContainerOf,  ///< Tub 3 of 24: varies within a run
  UsedFor,
  Site,         ///< site and order
  Ingredients,  ///< statement, for sale
  NetDeclared,  ///< for sale
  Business,     ///< name and place, for sale
  SafeHandling,
  RemoveLabel,
  Difference,  ///< a substitution: adds SESAME
  SupplierLot,
  Lot,     ///< with the initials
  Serial,  ///< varies within a run
  Hold,    ///< HOLD
  DoNotUse,
  Missing,  ///< what is missing
  // On a pad's label, to be filled in by hand.
  BlankMade,    ///< "Made ____ at ____"
  BlankDate,    ///< "USE BY ____"
  BlankBy,      ///< initials
  BlankFrozen,  ///< whether an ingredient was frozen before
  DateRule,     ///< the rule by which the hand dates it, and what it may never pass
  Release,      ///< NOT RELEASED before the readings are met
  Readings,     ///< "COOK TO 165 °F (74 °C): ____ at ____"
  BookDay       ///< the day of the book's facts, and when not to use the label
};

/// A stretch of text in one weight.
struct Run {
  QString text;
  bool strong = false;
  friend bool operator==(const Run&, const Run&) = default;
};

/// Text that flows together.
using Paragraph = std::vector<Run>;

struct Fact {
  FactId id;
  std::vector<Paragraph> paragraphs;  ///< in two languages: the second language's follow the first's
};

/// What differs between the labels of one run.
struct ContainerFacts {
  QString container_of;  ///< "Tub 3 of 24"
  QString serial;        ///< as printed
  QByteArray uri;        ///< the code's content; empty: no code (never for a dated label)
  int number = 0;
};

/// Containers of one batch that share all but number and serial: one layout, many labels.
struct LabelRun {
  QString language;  ///< of the document
  QString title;     ///< "Chilli-lime butter A26329CLB01K"
  QString lot;
  QString media;           ///< id of the medium
  QString label_template;  ///< the container's own; empty: the purpose's
  problem::Place place;    ///< of the record, for errors of layout
  bool hold = false;
  bool pad = false;  ///< to be filled in by hand: blanks are runs of underscores
  book::Purpose purpose = book::Purpose::Inside;
  bool hot = false, frozen = false;  ///< what the medium must bear
  std::vector<Fact> facts;           ///< each id at most once; ContainerOf and Serial hold their widest form
  std::vector<ContainerFacts> containers;
};

struct LabelWish {
  bool hold_labels = false;  ///< refused batches get HOLD labels
  QString media;             ///< instead of the containers' own; empty: theirs
  bool pad = false;          ///< labels to be filled in by hand. REQUIRES: a batch as batch::pad_batch makes it
  bool to_be_read = false;   ///< nothing is printed: without codes
};

/// The label runs of a batch, one for each container group, date and purpose. `languages` are all packs loaded; a
/// safety word of an unreviewed language is an error. For a refused batch: HOLD runs when asked for, else nothing.
problem::ExpectedAll<std::vector<LabelRun>> label_runs(const book::Book& book, const batch::Batch& batch,
                                                       const std::vector<words::Language>& languages,
                                                       const LabelWish& wish);

/// GS1 Digital Link of one container, with the date that the label shows: 7003 when the deciding end is not the end of
/// a day, else 17; 15 for quality only; frozen: 7006, with 15 where a frozen limit exists, never 17; 11 or 8008 for the
/// making.
problem::Expected<QByteArray> code_uri(const book::Kitchen& kitchen, const batch::Batch& batch,
                                       const batch::Container& container);

}  // namespace lardiner::facts
