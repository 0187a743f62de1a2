// A lot as it stood before an entry: what the tables said of it then.
#include "ledger/lot_before.h"

#include <QTemporaryDir>

#include "random_history.h"
#include "show.h"

using namespace lardiner;
using namespace lardiner::ledger;

namespace {

QString text(const history::Lot& lot) {
  QStringList holders;
  for (const history::Holder& holder : lot.holders)
    holders << QStringLiteral("%1:%2:%3:%4:%5")
                   .arg(holder.number)
                   .arg(history::word(holder.where))
                   .arg(holder.left.amount)
                   .arg(holder.site, holder.note);
  return holders.join(QStringLiteral("; "));
}

// Of each lot of ours, by its id: what its containers hold, and where.
QMap<qint64, QString> states(Ledger& ledger) {
  QMap<qint64, QString> out;
  for (const QString& row : ledger.store().rows("SELECT id FROM lot WHERE kind = 1"))
    if (const history::Lot* lot = ledger.lots().lot(row.toLongLong())) out.insert(row.toLongLong(), text(*lot));
  return out;
}

}  // namespace

TEST_CASE("a lot before an entry is what the tables said when it was the last", "[ledger][lot_before][property]") {
  int compared = 0;
  for (unsigned seed = 51; seed <= 54; ++seed) {
    QTemporaryDir folder;
    auto ledger = Ledger::open(folder.filePath("ledger.sqlite"), Access::Write);
    REQUIRE(ledger);
    RandomHistory history(seed);
    std::vector<QMap<qint64, QString>> before;  // the entry with seq n is at n - 1
    while (before.size() < 120) {
      QMap<qint64, QString> state = states(*ledger);
      if (ledger->append({history.next()}, stamp(history.now()))) before.push_back(std::move(state));
    }
    for (size_t at = 0; at < before.size(); at += 7)
      for (auto lot = before[at].cbegin(); lot != before[at].cend(); ++lot) {
        const auto then = lot_before(ledger->store(), lot.key(), static_cast<qint64>(at) + 1);
        CAPTURE(seed, at, lot.key());
        REQUIRE(then);
        CHECK(text(*then) == lot.value());
        ++compared;
      }
  }
  CHECK(compared > 500);
}

TEST_CASE("there is no lot before the entry that began it", "[ledger][lot_before]") {
  QTemporaryDir folder;
  auto ledger = Ledger::open(folder.filePath("ledger.sqlite"), Access::Write);
  REQUIRE(ledger);
  REQUIRE(ledger->append({made("L1", "salsa", kMorning, 2)}, stamp(kMorning)));
  CHECK(lot_before(ledger->store(), 1, 2));
  const auto none = lot_before(ledger->store(), 1, 1);
  REQUIRE_FALSE(none);
  CHECK(none.error().what == "an entry befell a lot before the lot was begun");
}
