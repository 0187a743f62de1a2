// The critical tracking events among the entries: what came in, was transformed, left, arrived, came back, was thrown
// away, with the lots and amounts of each.
#pragma once

#include <QDate>
#include <QHash>
#include <functional>
#include <optional>
#include <vector>

#include "ledger/ledger.h"

namespace lardiner::ledger {

/// What an export says of the kitchen itself, out of its book.
struct ExportKitchen {
  QString name;
  QString address;       ///< on one line
  QString code_address;  ///< "https://lot.quarrylane.example", no trailing slash
  measure::System units = measure::System::Metric;
  QHash<QString, QString> items;       ///< id of an ingredient or product -> its name
  QHash<QString, QString> sites;       ///< id -> its name
  QHash<QString, QString> gtins = {};  ///< id of a product -> the number of its labels
};

/// Which entries: of days of the kitchen, both among them; or all of a lot and of its whole lineage.
struct ExportScope {
  QDate from, to;
  std::optional<qint64> lot;
};

struct TrackedLot {
  QString code;  ///< empty: nobody wrote it
  QString item;
  QString name;  ///< as recorded, else the book's, else the item's id
  QString gtin;  ///< of ours where it has one
};

struct TrackedInput {
  enum class Sure {
    Recorded,
    OneOfThese,  ///< one of the lots of this item that stand here; nobody said which
    NotWritten   ///< no lot is known
  };
  TrackedLot lot;
  std::optional<measure::Quantity> quantity;  ///< absent of OneOfThese: how much of which is not known
  Sure sure = Sure::Recorded;
};

struct Tracked {
  enum class What {
    Receiving,
    ReceivingRefused,
    Transformation,
    Shipping,
    Arrival,
    ArrivalRefused,
    Return,
    Discard,
    Correction
  };
  What what = What::Receiving;
  qint64 seq = 0;
  history::EntryId entry;
  QDateTime at;  ///< in the kitchen's zone of that entry; of a transformation its completion
  QDateTime recorded_at;
  TrackedLot lot;
  std::optional<measure::Quantity> quantity;  ///< what the containers held when it happened
  std::vector<TrackedInput> inputs;           ///< of a transformation
  QString from;                               ///< supplier
  QString site, order, document, by;
  QString why;  ///< reason, and of a correction what it corrects
};

/// "receiving", "transformation", …
QString word(Tracked::What what);

/// Hands each to `take` until it returns false, by day of its entry, then in the order of recording. Of days nothing is
/// kept but the numbers of the lots that arrived on them: memory does not grow with the ledger. Of a lot all of its
/// lineage is. Errors: the store's; an entry, or a lot of ours, that cannot be read, by its name.
problem::Expected<bool> each_tracked(Ledger& ledger, const ExportScope& scope, const ExportKitchen& kitchen,
                                     const std::function<bool(const Tracked&)>& take);

}  // namespace lardiner::ledger
