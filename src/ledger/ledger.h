// The ledger: entries appended and never edited, and the state of every lot that follows from them.
#pragma once

#include <QDateTime>
#include <QString>
#include <memory>
#include <optional>
#include <vector>

#include "history/event.h"
#include "history/lot.h"
#include "ledger/lots.h"
#include "ledger/store.h"

namespace lardiner::ledger {

/// What every entry of an append gets.
struct Stamp {
  QString station;  ///< the kitchen's letter: the chain
  QDateTime now;    ///< recorded_at
  QString zone;     ///< IANA name
  /// The last entry from which what is appended was computed (Ledger::last): where a later one may change it, it is
  /// refused. Absent: it was computed from none.
  std::optional<qint64> read_to = std::nullopt;
};

/// How a chain ends: what a day record and a backup state, so that a tail cut off is found.
struct Head {
  QString station;
  qint64 count = 0;
  QByteArray hash;
  friend bool operator==(const Head&, const Head&) = default;
};

/// One file, open for one thread. All reading functions of this layer take it; none changes anything.
class Ledger {
 public:
  /// Write makes the file where there is none and brings an older one to this program's tables. Errors: those of
  /// Store::open and `migrate`; for Read also a file that is not there.
  static problem::Expected<Ledger> open(const QString& path, Access access);

  /// Appends in the order given, everything or nothing, on disk when it returns. Numbers of containers are resolved to
  /// those that the event reaches, so that an entry says by itself what it did. Errors: every event that cannot have
  /// happened (history::happen), at its place; a lot that is not known, with the nearest; a lot recorded already; a
  /// clock that stands before the last entry; after `read_to`, any entry where a batch is appended, else one that
  /// touched or concerns a lot of these events; the disk's.
  problem::ExpectedAll<std::vector<history::Entry>> append(std::vector<history::Event> events, const Stamp& stamp);

  /// Computes every table anew from the entries. Errors: an entry that cannot be read or cannot have happened.
  problem::ExpectedAll<bool> rebuild();

  /// How many entries there are, of all chains: the last one's place.
  qint64 last();
  /// When the last entry was recorded; 1970 where there is none.
  QDateTime last_recorded();
  /// Why nothing can be appended at `now`: it is before the last entry, and a clock that is wrong dates nothing.
  /// Nothing where it can.
  std::optional<problem::Error> clock_behind(const QDateTime& now);

  std::vector<Head> heads();
  Store& store() { return *store_; }
  Lots& lots() { return *lots_; }

 private:
  explicit Ledger(std::unique_ptr<Store> store);
  bool outdated(const std::vector<history::Event>& events, qint64 read_to);
  problem::Errors compute_anew();

  std::unique_ptr<Store> store_;
  std::unique_ptr<Lots> lots_;
};

}  // namespace lardiner::ledger
