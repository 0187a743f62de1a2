// Labels that a printer was asked for: which are not done, how each ended, and what each printer is loaded with.
#pragma once

#include <optional>
#include <vector>

#include "history/event.h"
#include "ledger/store.h"

namespace lardiner::ledger {

struct Print {
  history::Entry asked;
  QString job_name;  ///< "A-12-1f3c9a20": the print's name, and of its entry's hash as much as tells it from a print of
                     ///< another ledger, or of this one before a backup was put in its place
  bool sent = false;            ///< a printer may have got it
  std::vector<int> containers;  ///< in the order of their labels
  std::optional<history::Entry> done;
};

/// An event of a print, with its lot alone.
history::Event of_print(history::Kind kind, const Print& print);

/// Those that are not done, the first asked for in front. Errors: the store's, an entry that cannot be read.
problem::Expected<std::vector<Print>> open_prints(Store& store);

/// One by the name of its entry; nothing where that is none. Errors: as above.
problem::Expected<std::optional<Print>> print_named(Store& store, const history::EntryId& id);

/// Whether it is asked for and not done; of a store that is at fault yes.
bool is_open_print(Store& store, const history::EntryId& id);

/// What somebody said is in a printer: the latest MediumLoaded; nothing where nobody ever did. Errors: as above.
problem::Expected<std::optional<history::Entry>> loaded(Store& store, const QString& printer);

}  // namespace lardiner::ledger
