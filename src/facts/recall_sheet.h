// What holds a lot: on hand by place, gone out by site, used up, and what is only suspected; with the mass balance.
#pragma once

#include "facts/container_text.h"
#include "facts/sheet_setting.h"
#include "facts/work_sheet.h"
#include "history/lot.h"

namespace lardiner::facts {

/// Why a lot holds the one asked for: by its recorded lots, or as far as is known.
enum class Certainty { Certain, Assumed, NoLotNamed };

/// Containers of one lot that stand together.
struct Reached {
  Certainty certainty = Certainty::Certain;
  QString item, lot;
  std::vector<Containers> containers;
  std::optional<measure::Quantity> amount;
};
struct ReachedHere : Reached {
  QString place;  ///< empty: not known
};
struct ReachedAway : Reached {
  QString site, order, note;  ///< the site as it is called
  QDateTime sent_at;
};
/// What of the lot, or of what holds it, went into another lot.
struct UsedUp {
  Certainty certainty = Certainty::Certain;
  QString from_lot;
  QString item, lot;  ///< that it went into
  std::optional<measure::Quantity> amount;
};

struct Recall {
  QString item, lot;
  QString supplier;  ///< empty: a lot of ours
  QString reason;
  std::optional<QDateTime> opened_at;  ///< absent: not opened
  QString opened_by;
  std::vector<ReachedHere> here;
  std::vector<ReachedAway> away;
  std::vector<UsedUp> used_up;
  std::optional<history::Balance> balance;  ///< of the lot asked for; absent: amounts are not known
  QDateTime now;
};

/// By place and by site, in the order given; what is not certain stands apart, named as suspect, and is never left out.
/// The difference is counted again from the balance's parts. Errors: Missing for a name in a language of the sheet.
problem::ExpectedAll<WorkSheet> recall_sheet(const SheetSetting& setting, const Recall& recall);

}  // namespace lardiner::facts
