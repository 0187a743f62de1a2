// Batches and events without a book, for the tests and the programs that drive a ledger.
#pragma once

#include <QDateTime>
#include <QTimeZone>
#include <vector>

#include "history/event.h"
#include "history/event_json.h"
#include "ledger/ledger.h"

namespace lardiner::ledger {

inline const QTimeZone kZone("America/New_York");
inline const QDateTime kMorning(QDate(2026, 11, 25), QTime(7, 0), kZone);

inline measure::Quantity grams(qint64 grams) { return {measure::Dimension::Mass, grams * 1'000'000'000}; }

/// What went in: a lot and how much of it; no lot: nobody said.
struct Went {
  QString item, lot;
  qint64 grams = 500;
  QStringList candidates = {};
};

/// A batch of `containers` tubs of 1 kg that keeps for seven days, the first of which is the day of its making.
batch::Fixed batch_of(const QString& lot, const QString& item, const QDateTime& made_at, int containers,
                      const std::vector<Went>& inputs);
history::Event made(batch::Fixed fixed);
inline history::Event made(const QString& lot, const QString& item, const QDateTime& at, int containers,
                           const std::vector<Went>& inputs = {}) {
  return made(batch_of(lot, item, at, containers, inputs));
}

/// An event of a lot's containers; none: all that are here.
history::Event of_lot(history::Kind kind, const QString& lot, const QDateTime& at, std::vector<int> containers = {});
history::Event received(const QString& item, const QString& lot, const QDateTime& at, qint64 grams);

inline Stamp stamp(const QDateTime& now) { return {QStringLiteral("A"), now, QStringLiteral("America/New_York")}; }

}  // namespace lardiner::ledger
