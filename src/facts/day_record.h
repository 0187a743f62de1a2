// The record of one day, as an inspector asks for it: what was measured, done, refused and corrected, and by whom.
#pragma once

#include "facts/container_text.h"
#include "facts/sheet_setting.h"
#include "facts/work_sheet.h"
#include "history/event.h"

namespace lardiner::facts {

/// What corrected an entry; printed beside it.
struct Corrected {
  history::EntryId entry;
  QDateTime at;
  QString by, what;
};

/// What every entry has.
struct Entered {
  history::EntryId entry;
  QDateTime at, recorded_at;
  QString by;
  std::vector<Corrected> corrected;
};

struct PlaceRead {
  Entered entered;
  QString place;
  std::optional<measure::Temperature> reading;
  book::HeldTo limits;           ///< nothing: not known, which is said
  bool not_in_the_book = false;  ///< that, too, where it is why nothing is known
};
struct Cooked {
  Entered entered;
  QString item, lot;
  std::optional<measure::Temperature> core;
  int seconds = 0;
  std::vector<book::TimeAtTemperature> minimum;  ///< any one of them
  std::optional<bool> met;                       ///< absent: it cannot be told
};
struct CoolingRead {
  QDateTime at;
  measure::Temperature reading;
  QString by;
};
struct Cooled {
  Entered entered;  ///< of its first reading, or of the making while there is none
  QString item, lot;
  std::vector<CoolingRead> readings;
  std::vector<book::CoolingStage> stages;
  batch::Cooling verdict;  ///< NotNeeded is printed as not shown
};
/// Food reheated, held hot or cold, served.
struct HeldRead {
  Entered entered;
  QString item, lot, what;  ///< "held hot"; in the kitchen's words
  std::optional<measure::Temperature> reading;
  int seconds = 0;
  book::HeldTo limits;                                            ///< nothing: not known, which is said
  std::optional<book::TimeAtTemperature> minimum = std::nullopt;  ///< of a reheat, in place of limits
};
struct Receipt {
  Entered entered;
  QString supplier, item, lot;
  std::optional<measure::Quantity> quantity;
  std::optional<measure::Temperature> temperature;
  bool accepted = false;
  QString why;
};
struct Checked {
  Entered entered;
  QString what, place;  ///< in the kitchen's words; the place may be empty
  bool in_order = false;
  QString remark;
};
/// A corrective action, a hold, a release, a recall; a correction of a date or of what a supplier's item declares.
struct Acted {
  enum class Kind { Corrective, Hold, Release, RecallOpened, RecallClosed, Correction };
  Entered entered;
  Kind kind = Kind::Corrective;
  QString item, lot, place;  ///< what it is about; each may be empty
  QString reason, action;
  std::optional<batch::StatedEnd> ends = std::nullopt;  ///< Correction
  QStringList adds = {};                                ///< Correction: substances as events write them
};
struct Thrown {
  Entered entered;
  QString item, lot;
  std::vector<Containers> containers;
  std::optional<measure::Quantity> quantity;
  QString reason;
};
struct Shipped {
  enum class Kind { Dispatched, Arrived, Returned };
  Entered entered;
  Kind kind = Kind::Dispatched;
  QString site, order, note;  ///< the site as it is called
  QString item, lot;
  std::vector<Containers> containers;
  std::optional<measure::Temperature> temperature;
  bool accepted = true;  ///< Arrived
  QString why;
};
struct MadeBatch {
  Entered entered;
  QString item, lot;
  std::optional<measure::Quantity> quantity;
};
struct Counted {
  Entered entered;
  QString item, lot;
  std::vector<Containers> containers;
  int left_percent = 100;  ///< 0: not seen
};
/// By somebody who did not make the records, where that can be done: 9 CFR 417.5(c), value from memory.
struct Reviewed {
  Entered entered;
  QString remark;
};

struct Day {
  QDate day;
  QString rules, rules_source;  ///< the rule set in force and its published name, as fixed then
  std::vector<PlaceRead> places;
  std::vector<Cooked> cooks;
  std::vector<Cooled> coolings;
  std::vector<HeldRead> holding;
  std::vector<Receipt> receipts;
  std::vector<Checked> checks;
  std::vector<Acted> actions;  ///< of all kinds
  std::vector<Thrown> discards;
  std::vector<Shipped> shipped;
  std::vector<MadeBatch> made;
  std::vector<Counted> counts;
  std::vector<Reviewed> reviews;
  int entries = 0;     ///< of the day, those that no section shows too
  int unreviewed = 0;  ///< of them, those that nobody but who recorded them has reviewed since
  QStringList heads;   ///< one a station, whole: "A-123-" and the hash, as `verify --head` takes it
  QDateTime printed_at;
};

/// Sections without entries say so. An entry recorded more than an hour after it happened is marked. Errors: Missing
/// where a head of the chain is, since without one a tail that was cut off is not found; a name in a language.
problem::ExpectedAll<WorkSheet> day_record(const SheetSetting& setting, const Day& day);

}  // namespace lardiner::facts
