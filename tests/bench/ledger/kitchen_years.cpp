// The entries of a kitchen over years: batches in nine levels, each made of two lots of the level beneath.
#include "kitchen_years.h"

using namespace lardiner;
using namespace lardiner::ledger;
using history::Kind;

namespace bench {

namespace {

constexpr qint64 kBatchesADay = 200;

std::vector<Went> inputs(qint64 number) {
  const qint64 level = number % kLevels;
  if (level == 0) return {{QStringLiteral("tomatillo"), QStringLiteral("T-%1").arg(number / (kLevels * 40)), 400}};
  // Two of the level beneath, of this round and of one shortly before: so that lots have two or so successors.
  const qint64 near = number - 1;
  const qint64 back = near - kLevels * (1 + (number / kLevels) % 3);
  std::vector<Went> went{{item(near), lot(near), 200}};
  if (back >= 0) went.push_back({item(back), lot(back), 150});
  return went;
}

}  // namespace

QString lot(qint64 number) { return QStringLiteral("A%1").arg(number, 9, 10, QLatin1Char('0')); }

QString item(qint64 number) { return QStringLiteral("item-%1").arg(number % kLevels); }

QDateTime made_at(qint64 number) {
  return kMorning.addDays(number / kBatchesADay).addSecs(60 * (number % kBatchesADay));
}

std::vector<history::Event> batch_events(qint64 number, qint64 of) {
  const QDateTime at = made_at(number);
  std::vector<history::Event> events{made(lot(number), item(number), at, 4, inputs(number))};
  events.push_back(of_lot(Kind::Moved, lot(number), at.addSecs(600), {1, 2, 3, 4}));
  if (number + kHere >= of) {
    events.push_back(of_lot(Kind::Frozen, lot(number), at.addSecs(1200), {3, 4}));
    return events;
  }
  events.push_back(of_lot(Kind::Dispatched, lot(number), at.addSecs(1200), {1, 2, 3, 4}));
  events.push_back(of_lot(Kind::Arrived, lot(number), at.addSecs(1800), {1, 2}));
  events.back().site = QStringLiteral("mill-road");
  return events;
}

}  // namespace bench
