// The tables of a ledger's file: older ones are brought forward, newer and foreign ones are refused and stay as they
// are.
#include "ledger/schema.h"

#include <QFile>
#include <QProcess>
#include <QTemporaryDir>

#include "ledger/backup.h"
#include "show.h"
#include "small_history.h"

using namespace lardiner;
using namespace lardiner::ledger;

namespace {

struct LedgerFile {
  QTemporaryDir folder;
  QString path = folder.filePath("ledger.sqlite");

  // With one lot in it, closed.
  void make() const {
    auto ledger = Ledger::open(path, Access::Write);
    REQUIRE(ledger);
    REQUIRE(ledger->append({made("L1", "salsa", kMorning, 2)}, stamp(kMorning)));
  }
  QString sql(const QString& text) const {
    QProcess sqlite3;
    sqlite3.start("sqlite3", {path, text});
    REQUIRE(sqlite3.waitForFinished());
    CHECK(sqlite3.readAllStandardError() == "");
    return QString::fromUtf8(sqlite3.readAllStandardOutput()).trimmed();
  }
  // What opening it says; empty: it opened.
  QString told(Access access) const {
    const auto ledger = Ledger::open(path, access);
    return ledger ? QString() : problem::text(ledger.error());
  }
  QByteArray bytes() const {
    QFile file(path);
    REQUIRE(file.open(QFile::ReadOnly));
    return file.readAll();
  }
};

}  // namespace

TEST_CASE("a new file gets the tables and the mark of a ledger", "[ledger][schema]") {
  const LedgerFile file;
  REQUIRE(file.told(Access::Write).isEmpty());
  CHECK(file.sql("PRAGMA user_version") == QString::number(kSchemaVersion));
  CHECK(file.sql("PRAGMA application_id") == QString::number(0x4C617264));
  CHECK(file.sql("SELECT count(*) FROM event") == "0");
  CHECK(file.told(Access::Read).isEmpty());
}

TEST_CASE("a ledger of a newer program is refused, for reading too, and stays as it is", "[ledger][schema]") {
  const LedgerFile file;
  file.make();
  CHECK(file.told(Access::Read).isEmpty());
  file.sql(QStringLiteral("PRAGMA user_version = %1").arg(kSchemaVersion + 1));
  const QByteArray before = file.bytes();
  const QString refusal =
      QStringLiteral(
          "%1: this ledger was written by a newer Lardiner (tables of version %2; this one knows %3)\n"
          "  use the newer one")
          .arg(file.path)
          .arg(kSchemaVersion + 1)
          .arg(kSchemaVersion);
  CHECK(file.told(Access::Write) == refusal);
  CHECK(file.told(Access::Read) == refusal);
  CHECK(file.bytes() == before);
}

TEST_CASE("an empty file is a ledger of which nothing is recorded: it is brought forward to be written, not to be read",
          "[ledger][schema]") {
  const LedgerFile file;
  QFile empty(file.path);
  REQUIRE(empty.open(QFile::WriteOnly));
  empty.close();
  CHECK(file.told(Access::Read) ==
        file.path +
            ": nothing has been recorded in this ledger yet\n"
            "  record something first (lardiner record); if something was, restore a backup");
  CHECK(file.bytes().isEmpty());
  file.make();
  CHECK(file.told(Access::Read).isEmpty());
  CHECK(file.sql("SELECT count(*) FROM event") == "1");
}

TEST_CASE("a step that fails leaves the file as it was", "[ledger][schema]") {
  const LedgerFile file;
  // A ledger by its mark, of version 0, in which one of the tables is there already.
  file.sql(QStringLiteral("PRAGMA application_id = %1; CREATE TABLE input (other INTEGER)").arg(0x4C617264));
  CHECK(file.told(Access::Write).startsWith(file.path + ": the ledger's database failed: "));
  CHECK(file.sql("SELECT group_concat(name) FROM sqlite_schema") == "input");
  CHECK(file.sql("PRAGMA user_version") == "0");
}

namespace {

// A ledger as the program of version 1 left it: a lot that came after a correction has not taken it on.
struct OlderFile : LedgerFile {
  QStringList newer;  // its tables as this program has them

  OlderFile() {
    auto ledger = Ledger::open(path, Access::Write);
    REQUIRE(ledger);
    history::Event correction;
    correction.kind = history::Kind::Correction;
    correction.at = kMorning;
    correction.by = QStringLiteral("MK");
    correction.item = QStringLiteral("tomatillo");
    correction.supplier_item = QStringLiteral("hill-tomatillo");
    correction.adds = QStringList{QStringLiteral("sesame")};
    correction.reason = QStringLiteral("letter");
    REQUIRE(ledger->append({correction, received("tomatillo", "T-1", kMorning, 5000)}, stamp(kMorning)));
    newer = dump_projections(ledger->store());
    CHECK(newer.filter("declares_besides").size() == 1);
    CHECK(newer.filter("concern").size() == 1);
    ledger->store().run(QStringLiteral("DROP TABLE declares_besides"));
    ledger->store().run(QStringLiteral("DELETE FROM concern"));
    ledger->store().run(QStringLiteral("PRAGMA user_version = 1"));
  }
};

}  // namespace

TEST_CASE("an older ledger is computed anew as it is brought forward; before that it is not read", "[ledger][schema]") {
  const OlderFile older;
  CHECK(older.told(Access::Read) == older.path +
                                        ": this ledger has tables of version 1, older than 2\n"
                                        "  bring it to the newer form: lardiner verify --rebuild");
  auto ledger = Ledger::open(older.path, Access::Write);
  REQUIRE(ledger);
  CHECK(dump_projections(ledger->store()) == older.newer);
  CHECK(older.told(Access::Read).isEmpty());
}

TEST_CASE("an older ledger of which an entry cannot be read stays as it was", "[ledger][schema]") {
  const OlderFile older;
  older.sql("UPDATE event SET body = 'nothing' WHERE number = 2");
  CHECK(older.told(Access::Write).contains("entry A-2: its body is not a JSON object"));
  CHECK(older.sql("PRAGMA user_version") == "1");
  CHECK(older.sql("SELECT count(*) FROM sqlite_schema WHERE name = 'declares_besides'") == "0");
}

TEST_CASE("a backup of an older ledger is made and restored as it is, and brought forward then", "[ledger][schema]") {
  const OlderFile older;
  const QString backup = older.folder.filePath("backup.sqlite"), restored = older.folder.filePath("restored.sqlite");
  REQUIRE(back_up(older.path, backup));
  REQUIRE(restore(backup, restored));
  auto ledger = Ledger::open(restored, Access::Write);
  REQUIRE(ledger);
  CHECK(dump_projections(ledger->store()) == older.newer);
}

TEST_CASE("another program's SQLite file is no ledger, and stays as it is", "[ledger][schema]") {
  const LedgerFile file;
  file.sql("CREATE TABLE theirs (a INTEGER)");
  const QString refusal = file.path + ": this SQLite file is no ledger\n  name the ledger's file with --ledger";
  CHECK(file.told(Access::Read) == refusal);
  CHECK(file.told(Access::Write) == refusal);
  CHECK(file.sql("SELECT group_concat(name) FROM sqlite_schema") == "theirs");
}

TEST_CASE("a file that is not SQLite's is no ledger, and stays as it is", "[ledger][schema]") {
  const LedgerFile file;
  QFile text(file.path);
  REQUIRE(text.open(QFile::WriteOnly));
  text.write(QByteArray("event,at,by\n").repeated(100));
  text.close();
  const QByteArray before = file.bytes();
  const QString refusal = file.path + ": this file is no ledger\n  name the ledger's file with --ledger";
  CHECK(file.told(Access::Read) == refusal);
  CHECK(file.told(Access::Write) == refusal);
  CHECK(file.bytes() == before);
}
