// What the page of a lot says: to anybody what may be eaten and until when; to who is signed in all that is known.
#pragma once

#include "station/desk.h"
#include "station/pages.h"

namespace lardiner::station {

/// What is asked about.
struct LotAsked {
  ledger::LotName name;
  std::optional<int> container;
  QString superseded;  ///< Opened::superseded
};

/// Of `language`. For who is not signed in there are no names of staff or of suppliers, and no reasons that a person
/// wrote. Errors: the ledger's.
problem::Expected<Part> lot_page(Desk& desk, const LotAsked& asked, const words::Language& language, bool signed_in);

}  // namespace lardiner::station
