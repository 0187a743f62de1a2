// A batch record as a kitchen wrote it, with its words resolved to the book's ids and its times to instants.
#pragma once

#include <QDateTime>
#include <QString>
#include <QStringList>
#include <QTimeZone>
#include <optional>
#include <vector>

#include "book/item.h"
#include "measure/quantity.h"
#include "measure/temperature.h"
#include "problem/error.h"

namespace lardiner::batch {

/// What was done: a product was made, or a package of an ingredient was given a new state.
enum class Deed { Made, Opened, Thawed, Cut, Decanted };

/// A date as a package or an older label states it.
struct StatedEnd {
  QDateTime end;  ///< the first instant at which it is past (a date D: the start of the day after D)
  bool is_date = true;
  book::EndKind kind = book::EndKind::UseBy;
};

/// One input of a making.
struct Input {
  QString item;            ///< ingredient or product id
  QString supplier_item;   ///< empty: not said, any of the ingredient's may have been used
  QString lot;             ///< the supplier's, or our own
  QStringList candidates;  ///< where nobody said which lot it was: all that it may have been; then `lot` is empty. Of
                           ///< them the earliest date counts, and what any of them declares
  std::optional<measure::Quantity> quantity;
  std::optional<StatedEnd> stated;     ///< its date as on its package or label, if written
  std::optional<QDateTime> opened_at;  ///< when its package was opened
  std::optional<QDateTime> frozen_at, thawed_at;
  QString instead_of;  ///< the formula's item that this replaces
  QString agreed_by;   ///< who agreed to a difference in allergens
  problem::Place place;
};

struct CookReading {
  QDateTime at;
  measure::Temperature core;
  int seconds = 0;  ///< held at or above `core`
  bool microwave = false;
  int stood_seconds = 0;
  problem::Place place;
};

struct CoolReading {
  QDateTime at;
  measure::Temperature core;
  problem::Place place;
};

/// What happened to containers afterwards.
enum class Happening { Frozen, Thawed, Opened, HotHeld, TimeControl, Finished, Packed, Reheated, Discarded };

struct Event {
  Happening what = Happening::Frozen;
  QDateTime at;
  std::optional<measure::Temperature> temperature;  ///< TimeControl and Reheated need one
  int seconds = 0;                                  ///< Reheated: held
  std::vector<int> containers;                      ///< numbers from 1; empty: all
  QString by;
  problem::Place place;
};

struct ContainerGroup {
  int count = 1;
  QString kind;             ///< tub, tray, bag…
  measure::Quantity holds;  ///< each
  problem::Place place;
};

/// One making (or one opening, thawing, cutting, decanting).
struct Record {
  Deed deed = Deed::Made;
  QString item;                               ///< product id (Made), ingredient id otherwise
  std::optional<int> number;                  ///< the running number of the record
  QString lot;                                ///< as given, verified against the pattern; empty: made by the pattern
  problem::Place lot_place;                   ///< of the lot as given
  std::optional<measure::Quantity> quantity;  ///< made
  QDateTime made_at;                          ///< the START of the making
  bool time_known = true;                     ///< false: only a date was written; made_at is then the start of that day
  std::optional<QDateTime> made_to;
  std::optional<QDate> pad_day;  ///< of a batch from a pad: when its lot was made ready, on or before made_at's day
  std::optional<QDateTime>
      recorded_at;  ///< when the record was entered, as written; of a batch from a pad always there
  QString by;
  std::vector<ContainerGroup> containers;
  std::vector<Input> inputs;
  std::vector<CookReading> cooked;
  std::vector<CoolReading> cooled;
  QString corrective_action, corrective_by;  ///< what was done about a missed cooling limit
  std::vector<Event> events;
  QString site, order;                  ///< whom the containers are for
  QString supplier_item, supplier_lot;  ///< of a labelled ingredient
  std::optional<StatedEnd> stated;      ///< of a labelled ingredient's package
  std::optional<QDateTime> opened_at;   ///< of a labelled ingredient's package, when it was opened before made_at
  problem::Place place;
};

/// The day that the lot and the serials are of: the pad's, else the day on which the making began.
QDate lot_day(const Record& record, const QTimeZone& zone);

/// The lots that its inputs name, as theirs or among their candidates.
QStringList lots_named(const Record& record);

/// Whether one of its inputs is the item, or went in instead of it.
bool lists(const Record& record, const QString& item);

/// The events that touch a container, by their time; those of one time in the order written.
std::vector<const Event*> events_of(const Record& record, int container);

}  // namespace lardiner::batch
