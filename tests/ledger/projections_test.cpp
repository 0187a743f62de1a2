// The computed tables: what is kept as entries come in is what their entries give when all is computed anew.
#include <QProcess>
#include <QTemporaryDir>

#include "history/lot.h"
#include "ledger/due.h"
#include "ledger/lineage.h"
#include "ledger/schema.h"
#include "random_history.h"
#include "show.h"

using namespace lardiner;
using namespace lardiner::ledger;
using history::Where;

namespace {

struct OpenLedger {
  QTemporaryDir folder;
  problem::Expected<Ledger> ledger = Ledger::open(folder.filePath(QStringLiteral("ledger.sqlite")), Access::Write);
};

// A ledger after `count` events by chance. What cannot happen is refused and leaves all as it was.
struct Chance : OpenLedger {
  RandomHistory history;
  int refused = 0;

  Chance(unsigned seed, int count) : history(seed) {
    REQUIRE(ledger);
    for (int at = 0; at < count; ++at) {
      const history::Event event = history.next();
      const QStringList before = at % 16 == 0 ? dump_projections(ledger->store()) : QStringList();
      const auto entries = ledger->append({event}, stamp(history.now()));
      if (entries) continue;
      ++refused;
      if (!before.isEmpty()) CHECK(dump_projections(ledger->store()) == before);
    }
  }
};

// The rows that only one of two dumps has.
QStringList unlike(const QStringList& a, const QStringList& b) {
  QStringList rows;
  for (const QString& row : a)
    if (!b.contains(row)) rows << QStringLiteral("+ ") + row;
  for (const QString& row : b)
    if (!a.contains(row)) rows << QStringLiteral("- ") + row;
  return rows;
}

std::vector<qint64> ids(const std::vector<LotName>& lots) {
  std::vector<qint64> out;
  for (const LotName& lot : lots) out.push_back(lot.id);
  return out;
}

bool has(const std::vector<qint64>& sorted, qint64 id) { return std::binary_search(sorted.begin(), sorted.end(), id); }

std::vector<qint64> all_lots(Store& store) {
  std::vector<qint64> out;
  for (const QString& row : store.rows(QStringLiteral("SELECT id FROM lot ORDER BY id")))
    out.push_back(row.toLongLong());
  return out;
}

}  // namespace

TEST_CASE("what is kept while entries come in equals what is rebuilt from them", "[ledger][projections][property]") {
  for (unsigned seed = 1; seed <= 12; ++seed) {
    Chance chance(seed, 250);
    CAPTURE(seed);
    CHECK(chance.refused < 150);
    const QStringList kept = dump_projections(chance.ledger->store());
    const auto rebuilt = chance.ledger->rebuild();
    if (!rebuilt) FAIL(problem::text(rebuilt.error()).toStdString());
    CHECK(unlike(dump_projections(chance.ledger->store()), kept) == QStringList());
  }
}

TEST_CASE("a ledger that is opened again goes on as the one that stayed open", "[ledger][projections][property]") {
  OpenLedger stays, opened;
  RandomHistory history(5);
  for (int at = 0; at < 200; ++at) {
    const history::Event event = history.next();
    const auto one = stays.ledger->append({event}, stamp(history.now()));
    opened.ledger = Ledger::open(opened.folder.filePath(QStringLiteral("ledger.sqlite")), Access::Write);
    REQUIRE(opened.ledger);
    const auto other = opened.ledger->append({event}, stamp(history.now()));
    REQUIRE(one.has_value() == other.has_value());
  }
  CHECK(dump_projections(opened.ledger->store()) == dump_projections(stays.ledger->store()));
  CHECK(opened.ledger->heads() == stays.ledger->heads());
}

TEST_CASE("a lot leads forward to another exactly when that leads back to it", "[ledger][lineage][property]") {
  for (unsigned seed = 21; seed <= 24; ++seed) {
    Chance chance(seed, 200);
    Store& store = chance.ledger->store();
    const std::vector<qint64> lots = all_lots(store);
    int pairs = 0;
    for (const qint64 a : lots) {
      const std::vector<qint64> forward = ids(lots_reached(store, a, Direction::Forward));
      for (const qint64 b : lots) {
        const bool back = has(ids(lots_reached(store, b, Direction::Backward)), a);
        REQUIRE(has(forward, b) == back);
        pairs += back ? 1 : 0;
      }
    }
    CHECK(pairs > static_cast<int>(lots.size()));
  }
}

TEST_CASE("the sqlite3 program finds the same lineage with a plain recursive query", "[ledger][lineage]") {
  Chance chance(41, 200);
  Store& store = chance.ledger->store();
  const QString file = chance.folder.filePath(QStringLiteral("ledger.sqlite"));
  int reached = 0;
  for (const qint64 lot : all_lots(store)) {
    if (lot % 7 != 0) continue;
    QProcess sqlite3;
    sqlite3.start(
        QStringLiteral("sqlite3"),
        {QStringLiteral("-readonly"), file,
         QStringLiteral("WITH RECURSIVE f(id) AS (SELECT %1 UNION SELECT output FROM f JOIN input ON input = f.id)"
                        " SELECT id FROM f ORDER BY id")
             .arg(lot)});
    REQUIRE(sqlite3.waitForFinished());
    std::vector<qint64> theirs;
    for (const QByteArray& line : sqlite3.readAllStandardOutput().split('\n'))
      if (!line.isEmpty()) theirs.push_back(line.toLongLong());
    CHECK(theirs == ids(lots_reached(store, lot, Direction::Forward)));
    reached += static_cast<int>(theirs.size());
  }
  CHECK(reached > 30);
}

TEST_CASE("the end in the tables is the one that the lot's own facts give", "[ledger][projections][property]") {
  Chance chance(31, 300);
  Store& store = chance.ledger->store();
  int ends = 0;
  for (const QString& code : chance.history.lots()) {
    const auto id = chance.ledger->lots().id(code, QStringLiteral("salsa"));
    if (!id) continue;
    chance.ledger->lots().forget();
    const history::Lot* lot = chance.ledger->lots().lot(*id);
    REQUIRE(lot);
    for (const history::Holder& holder : lot->holders) {
      const history::Good good = history::good(*lot, holder, chance.history.now());
      Statement& row = store.statement("SELECT ends FROM holder WHERE lot = ? AND number = ?");
      row.with(*id).with(qint64{holder.number});
      REQUIRE(row.one());
      const bool none = row.absent(0);
      const qint64 end = row.number(0);
      row.end();
      if (holder.where != Where::Here || !good.end) continue;
      ++ends;
      REQUIRE_FALSE(none);
      CHECK(end == good.end->toSecsSinceEpoch());
    }
  }
  CHECK(ends > 20);
}
