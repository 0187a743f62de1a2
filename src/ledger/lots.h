// Lots as the entries leave them: found by code, read from the entries once, and kept while nobody else writes.
#pragma once

#include <QHash>
#include <QString>
#include <list>
#include <optional>
#include <vector>

#include "history/lot.h"
#include "ledger/holder_rows.h"
#include "ledger/store.h"

namespace lardiner::ledger {

enum class LotKind { Named, Made, Received };

/// A lot as other lots and lists name it.
struct LotName {
  qint64 id = 0;
  QString code;  ///< empty: of an input whose lot nobody wrote
  QString item;
  QString name;  ///< of the item, in the language of the book that recorded it; empty: named alone
  LotKind kind = LotKind::Named;
  std::optional<qint64> began;  ///< seconds since 1970 UTC

  friend bool operator==(const LotName&, const LotName&) = default;
};

/// Reads it from the first columns of a row: id, code, item, name, kind, began.
LotName lot_name(const Statement& row);

/// How many lots of this kind each item has, by its id. Errors: the store's fault.
QHash<QString, qint64> lots_of_items(Store& store, LotKind kind);

class Lots {
 public:
  explicit Lots(Store& store) : store_(store) {}

  /// Every lot with this code, by item: two suppliers may use the same.
  std::vector<LotName> named(const QString& code);
  std::optional<LotName> named(const QString& code, const QString& item);
  std::optional<LotName> named(qint64 id);
  std::optional<qint64> id(const QString& code, const QString& item);
  /// A lot of this code was added or begun.
  void read_again(const QString& code) { names_.remove(code); }

  /// The lot with all that has happened to it; nullptr where it is only named, or cannot be read (the store's fault, or
  /// `unreadable`). The pointer holds until the next call.
  history::Lot* lot(qint64 id);
  const std::optional<problem::Error>& unreadable() const { return unreadable_; }

  /// Reads again which open recalls concern a lot.
  void add_concerns(qint64 id, history::Lot& lot);

  /// Whether any recall was ever opened; while none was, no lot need be asked for those that concern it.
  bool any_recalled();
  void recalled() { any_recalled_ = true; }
  /// Whether any correction ever added to what a supplier's item declares.
  bool any_additions();
  void added() { any_additions_ = true; }

  /// What the table says of its containers. REQUIRES: `lot` gave it, or it was just begun.
  std::vector<HolderRow>& rows(qint64 id);

  /// Takes a lot that was just begun.
  history::Lot& keep(qint64 id, history::Lot lot);

  /// Forgets what was read when another connection has written since, or when something could not be read. An append
  /// does so by itself; a reader that stays open calls it before it reads again.
  void refresh();
  void forget();
  /// Another number once what is kept of the lot may have changed. REQUIRES: `lot` gave it.
  qint64 age(qint64 id) const { return (appends_ << 40) + kept_.value(id)->reading; }
  void appended() { ++appends_; }
  /// Another number once something was recorded: here, or elsewhere as `refresh` found.
  qint64 changes() const { return appends_ + refreshed_; }

 private:
  struct Kept {
    history::Lot lot;
    std::vector<HolderRow> rows;
    std::list<qint64>::iterator used;
    qint64 reading = 0;  // the how-manieth of all
  };
  bool forget_named_alone(qint64 last);
  std::optional<history::Lot> read(qint64 id);

  Store& store_;
  QHash<qint64, std::shared_ptr<Kept>> kept_;
  std::list<qint64> recent_;  // the one used last in front
  QHash<QString, std::vector<LotName>> names_;
  std::optional<bool> any_recalled_, any_additions_;
  qint64 version_ = -1;
  qint64 seen_ = 0;  // the last entry that was looked at
  qint64 readings_ = 0, appends_ = 0, refreshed_ = 0;
  std::optional<problem::Error> unreadable_;
};

}  // namespace lardiner::ledger
