// The note that goes with containers to a site: what is loaded, until when it is good, and lines for the arrival.
#pragma once

#include "facts/container_text.h"
#include "facts/sheet_setting.h"
#include "facts/work_sheet.h"
#include "history/lot.h"

namespace lardiner::facts {

/// What is loaded of one lot, with one date.
struct Loaded {
  QString item, lot;
  std::vector<Containers> containers;
  std::optional<measure::Quantity> net;  ///< of all of them
  history::Good good;                    ///< at the time of loading, before they left: its date, or why it may not go
  book::Declared declared;               ///< with what corrections added
  book::Readiness readiness = book::Readiness::Unknown;
  book::State state = book::State::Chilled;
  bool tcs = true;                                  ///< unknown counts as yes
  std::optional<measure::Temperature> temperature;  ///< at loading; absent: it was not taken
};

struct Dispatch {
  QString number;  ///< of the note
  QDateTime loaded_at;
  QString by;  ///< initials
  QString site;
  QStringList orders;
  std::vector<Loaded> lots;
};

/// Errors: Unsafe for each lot that is not good at its loading (not released, held, recalled, past its date, without
/// one, gone), naming it and why; Unknown for a site that is not in the book, or a list of allergens; Missing where
/// nothing is loaded, or a name in a language of the sheet. Allergens and readiness that are not known are said.
problem::ExpectedAll<WorkSheet> dispatch_note(const SheetSetting& setting, const Dispatch& dispatch);

}  // namespace lardiner::facts
