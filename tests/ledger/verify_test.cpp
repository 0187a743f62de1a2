// The chains: any change of any byte is found, and so is a tail that was cut off.
#include "ledger/verify.h"

#include <QDir>
#include <QFile>
#include <QProcess>
#include <QTemporaryDir>

#include "ledger/backup.h"
#include "ledger/chain.h"
#include "ledger/computed_anew.h"
#include "ledger/schema.h"
#include "random_history.h"
#include "show.h"

using namespace lardiner;
using namespace lardiner::ledger;

namespace {

struct SmallLedger {
  QTemporaryDir folder;
  QString path = folder.filePath(QStringLiteral("ledger.sqlite"));
  problem::Expected<Ledger> ledger = Ledger::open(path, Access::Write);

  SmallLedger() {
    REQUIRE(ledger);
    const QDateTime at = kMorning;
    history::Event place;
    place.kind = history::Kind::PlaceTemperature;
    place.at = at;
    place.by = QStringLiteral("JO");
    place.place = QStringLiteral("walk-in 1");
    place.temperature = measure::Temperature{380, measure::Scale::Fahrenheit};
    REQUIRE(ledger->append({received(QStringLiteral("tomatillo"), QStringLiteral("T-1"), at, 5000),
                            made(QStringLiteral("L1"), QStringLiteral("salsa"), at, 2,
                                 {{QStringLiteral("tomatillo"), QStringLiteral("T-1")}}),
                            of_lot(history::Kind::Moved, QStringLiteral("L1"), at), place},
                           stamp(at)));
  }

  Store& store() { return ledger->store(); }

  // The first broken entry, or "" where all verify.
  QString broken(const std::optional<Head>& known = std::nullopt) {
    const auto result = verify(store(), known);
    REQUIRE(result);
    if (result->broken.empty()) return {};
    return QStringLiteral("%1-%2").arg(result->broken.front().station).arg(result->broken.front().number);
  }

  QByteArray body(qint64 seq) {
    Statement& row = store().statement("SELECT CAST(body AS BLOB) FROM event WHERE seq = ?").with(seq);
    REQUIRE(row.one());
    const QByteArray bytes = row.bytes(0);
    row.end();
    return bytes;
  }
  void put_body(qint64 seq, const QByteArray& bytes) {
    store().statement("UPDATE event SET body = CAST(? AS TEXT) WHERE seq = ?").with(bytes).with(seq).run();
    REQUIRE_FALSE(store().fault());
  }
};

}  // namespace

TEST_CASE("a link is the SHA-256 of the link before, station, number and body", "[ledger][chain][src:fips-180-4]") {
  // Reference: sha256sum of GNU coreutils over the same bytes.
  QProcess sha256sum;
  sha256sum.start(QStringLiteral("sha256sum"), QStringList());
  REQUIRE(sha256sum.waitForStarted());
  sha256sum.write(QByteArray(32, '\0') + QByteArray("\0\0\0\1A\0\0\0\0\0\0\0\x7b", 13) + "{\"event\":\"moved\"}");
  sha256sum.closeWriteChannel();
  REQUIRE(sha256sum.waitForFinished());
  CHECK(link(no_hash(), QStringLiteral("A"), 123, "{\"event\":\"moved\"}").toHex() ==
        sha256sum.readAllStandardOutput().left(64));
}

TEST_CASE("no station, number and body share a link with others", "[ledger][chain]") {
  const QByteArray one = link(no_hash(), QStringLiteral("A"), 1, "x");
  CHECK(one != link(no_hash(), QStringLiteral("AA"), 1, "x"));
  CHECK(one != link(no_hash(), QStringLiteral("A"), 2, "x"));
  CHECK(one != link(no_hash(), QStringLiteral("A"), 1, "xx"));
  CHECK(one != link(one, QStringLiteral("A"), 1, "x"));
}

TEST_CASE("a changed byte of any body is found, and its entry named", "[ledger][verify]") {
  SmallLedger small;
  CHECK(small.broken().isEmpty());
  for (qint64 seq = 1; seq <= 4; ++seq) {
    const QByteArray whole = small.body(seq);
    for (qsizetype at = 0; at < whole.size(); ++at) {
      QByteArray changed = whole;
      changed[at] = static_cast<char>(changed.at(at) ^ (1 << (at % 8)));
      small.put_body(seq, changed);
      const QString found = small.broken();
      if (found != QStringLiteral("A-%1").arg(seq)) FAIL("byte " << at << " of entry " << seq << " was changed unseen");
    }
    small.put_body(seq, whole);
  }
  CHECK(small.broken().isEmpty());
}

TEST_CASE("a changed hash, number or station is found", "[ledger][verify]") {
  for (qint64 seq = 1; seq <= 4; ++seq) {
    SmallLedger small;
    for (int at = 0; at < 32; ++at) {
      const QByteArray sql =
          QByteArrayLiteral("UPDATE event SET hash = substr(hash, 1, %1) || x'%2' || substr(hash, %3) WHERE seq = %4");
      const QString whole =
          small.store().rows(QStringLiteral("SELECT hex(hash) FROM event WHERE seq = %1").arg(seq)).front();
      const int byte = whole.mid(2 * at, 2).toInt(nullptr, 16) ^ 0x10;
      small.store().run(QString::fromLatin1(sql)
                            .arg(at)
                            .arg(byte, 2, 16, QLatin1Char('0'))
                            .arg(at + 2)
                            .arg(seq)
                            .replace(QStringLiteral("substr(hash, 1, 0) ||"), QString()));
      CHECK(small.broken() == QStringLiteral("A-%1").arg(seq));
      small.store().run(QStringLiteral("UPDATE event SET hash = x'%1' WHERE seq = %2").arg(whole).arg(seq));
      REQUIRE(small.broken().isEmpty());
    }
  }
  SmallLedger renumbered;
  renumbered.store().run(QStringLiteral("UPDATE event SET number = 9 WHERE seq = 4"));
  CHECK(renumbered.broken() == "A-4");
  SmallLedger renamed;
  renamed.store().run(QStringLiteral("UPDATE chain SET station = 'B'"));
  CHECK(renamed.broken() == "B-1");
}

TEST_CASE("an entry that was taken out is found", "[ledger][verify]") {
  for (int seq = 1; seq <= 4; ++seq) {
    SmallLedger small;
    small.store().run(QStringLiteral("DELETE FROM event WHERE seq = %1").arg(seq));
    CHECK(small.broken() == QStringLiteral("A-%1").arg(seq));
  }
}

TEST_CASE("a tail cut off with the chain's own count is found by a head that is known", "[ledger][verify]") {
  SmallLedger small;
  const Head known = small.ledger->heads().front();
  CHECK(small.broken(known).isEmpty());
  CHECK(head_of(text(known)) == known);
  small.store().run(QStringLiteral("DELETE FROM event WHERE seq = 4"));
  small.store().run(QStringLiteral("UPDATE chain SET count = 3, head = (SELECT hash FROM event WHERE seq = 3)"));
  CHECK(small.broken().isEmpty());  // by itself it is a shorter chain that holds
  CHECK(small.broken(known) == "A-4");
}

TEST_CASE("a chain that was written anew is found by a head that is known", "[ledger][verify]") {
  SmallLedger small;
  Head known = small.ledger->heads().front();
  known.hash[0] = static_cast<char>(known.hash.at(0) ^ 1);
  CHECK(small.broken(known) == "A-4");
}

TEST_CASE("a head is written as one word, and what is none is refused", "[ledger][verify]") {
  CHECK_FALSE(head_of(QString()));
  CHECK_FALSE(head_of(QStringLiteral("A-0-") + QString(64, u'0')));
  CHECK_FALSE(head_of(QStringLiteral("A-1-") + QString(63, u'0')));
  CHECK_FALSE(head_of(QStringLiteral("A-1-") + QString(64, u'x')));
  CHECK(head_of(QStringLiteral("A-1-") + QString(64, u'0')));
}

TEST_CASE("a backup is made while the ledger is open, verifies, and becomes a ledger again", "[ledger][backup]") {
  SmallLedger small;
  const QString copy = small.folder.filePath(QStringLiteral("copy.sqlite"));
  const auto heads = back_up(small.path, copy);
  REQUIRE(heads);
  CHECK(*heads == small.ledger->heads());
  CHECK_FALSE(QFile::exists(copy + QStringLiteral("-wal")));
  const QString restored = small.folder.filePath(QStringLiteral("restored.sqlite"));
  REQUIRE(restore(copy, restored));
  problem::Expected<Ledger> again = Ledger::open(restored, Access::Write);
  REQUIRE(again);
  CHECK(again->heads() == small.ledger->heads());
  CHECK(again->append({of_lot(history::Kind::Frozen, QStringLiteral("L1"), kMorning.addSecs(60))},
                      stamp(kMorning.addSecs(60))));
}

TEST_CASE("a backup that does not verify is not restored, and nothing is written over", "[ledger][backup]") {
  SmallLedger small;
  const QString copy = small.folder.filePath(QStringLiteral("copy.sqlite"));
  REQUIRE(back_up(small.path, copy));
  const auto again = back_up(small.path, copy);
  REQUIRE_FALSE(again);
  CHECK(problem::text(again.error()) == copy + ": there is a file already\n  name another; nothing is written over");
  {
    problem::Expected<Ledger> changed = Ledger::open(copy, Access::Write);
    changed->store().run(QStringLiteral("UPDATE event SET body = replace(body, 'walk-in', 'walk-ın') WHERE seq = 4"));
  }
  const QString restored = small.folder.filePath(QStringLiteral("restored.sqlite"));
  const auto refused = restore(copy, restored);
  REQUIRE_FALSE(refused);
  CHECK(problem::text(refused.error()) ==
        copy +
            ": entry A-4 does not verify: its hash is not that of its body and the entry before\n"
            "  keep this file as it is, and go back to the last backup that verifies");
  CHECK_FALSE(QFile::exists(restored));
  CHECK(QDir(small.folder.path()).entryList({QStringLiteral("*.draft*")}, QDir::Files).isEmpty());
}

TEST_CASE("entries whose chain was taken away are found, and so are two that changed places", "[ledger][verify]") {
  SmallLedger small;
  small.store().run(QStringLiteral("UPDATE event SET seq = 99 WHERE seq = 3"));
  CHECK(small.broken() == "A-4");  // it stands before A-3 now
  small.store().run(QStringLiteral("UPDATE event SET seq = 3 WHERE seq = 99"));
  CHECK(small.broken().isEmpty());
  small.store().run(QStringLiteral("DELETE FROM chain"));
  const auto result = verify(small.store(), std::nullopt);
  REQUIRE(result);
  REQUIRE(result->broken.size() == 1);
  CHECK(text(result->broken.front()) == "4 entries are of no station's chain");
}

TEST_CASE("tables that say otherwise than the entries are named; a restored ledger has those that the entries give",
          "[ledger][verify][backup]") {
  SmallLedger small;
  CHECK(unlike_tables(small.path).value() == QStringList());
  const QStringList kept = dump_projections(small.store());
  small.store().run(QStringLiteral("UPDATE holder SET ends = ends + 864000"));
  small.store().run(QStringLiteral("DELETE FROM input"));
  CHECK(unlike_tables(small.path).value() == QStringList{"holder", "input"});
  CHECK(small.broken().isEmpty());  // the entries are as they were
  const QString copy = small.folder.filePath("copy.sqlite"), restored = small.folder.filePath("restored.sqlite");
  REQUIRE(back_up(small.path, copy));
  REQUIRE(restore(copy, restored));
  auto again = Ledger::open(restored, Access::Write);
  REQUIRE(again);
  CHECK(dump_projections(again->store()) == kept);
}

TEST_CASE("a ledger is not restored beside the log of the one that stood there", "[ledger][backup]") {
  SmallLedger small;
  const QString copy = small.folder.filePath("copy.sqlite"), restored = small.folder.filePath("restored.sqlite");
  REQUIRE(back_up(small.path, copy));
  QFile log(restored + "-wal");
  REQUIRE(log.open(QFile::WriteOnly));
  log.close();
  const auto refused = restore(copy, restored);
  REQUIRE_FALSE(refused);
  CHECK(refused.error().place.file == restored + "-wal");
  CHECK_FALSE(QFile::exists(restored));
  REQUIRE(log.remove());
  CHECK(restore(copy, restored));
}

TEST_CASE("what is no backup, and a folder that is not there, are told of under their own names", "[ledger][backup]") {
  SmallLedger small;
  const QString text_file = small.folder.filePath("text.csv"), nowhere = small.folder.filePath("no/copy.sqlite");
  QFile text(text_file);
  REQUIRE(text.open(QFile::WriteOnly));
  text.write(QByteArray("event,at,by\n").repeated(100));
  text.close();
  for (const QString& none : {text_file, small.folder.path()}) {
    const auto refused = restore(none, small.folder.filePath("restored.sqlite"));
    REQUIRE_FALSE(refused);
    CHECK(problem::text(refused.error()) ==
          none + ": there is no such backup\n  name a file that lardiner backup has made");
  }
  const auto refused = back_up(small.path, nowhere);
  REQUIRE_FALSE(refused);
  CHECK(refused.error().place.file == nowhere);
}
