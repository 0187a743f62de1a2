// What was acknowledged survives a kill, a power cut and a full disk; nothing is there by half.
#include <sys/stat.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>
#include <random>

#include "child.h"
#include "ledger/schema.h"
#include "ledger/verify.h"
#include "show.h"
#include "small_history.h"

using namespace lardiner;
using namespace lardiner::ledger;

namespace {

#if defined(__SANITIZE_ADDRESS__)
constexpr int kKills = 60, kCuts = 0;  // the disk is loaded before the program, which the sanitizer has to be itself
#else
constexpr int kKills = 1000, kCuts = 60;
#endif

// The ledger holds as many whole appends as were told at the least, one more at the most, and its tables are those that
// its entries give.
void check_whole(const QString& path, qint64 acknowledged, qint64 at_most) {
  problem::Expected<Ledger> ledger = Ledger::open(path, Access::Write);
  REQUIRE(ledger);
  const auto verified = verify(ledger->store(), std::nullopt);
  REQUIRE(verified);
  CHECK(verified->broken.empty());
  CHECK(verified->entries >= acknowledged);
  CHECK(verified->entries <= at_most);
  CHECK(verified->entries % 10 == 0);
}

void check_tables(const QString& path) {
  problem::Expected<Ledger> ledger = Ledger::open(path, Access::Write);
  REQUIRE(ledger);
  const QStringList kept = dump_projections(ledger->store());
  REQUIRE(ledger->rebuild());
  CHECK(dump_projections(ledger->store()) == kept);
}

}  // namespace

TEST_CASE("a writer that is killed a thousand times loses nothing that it was told is recorded", "[ledger][crash]") {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("ledger.sqlite"));
  std::mt19937 random(26);
  qint64 known = 0;
  for (int round = 0; round < kKills; ++round) {
    Child writer({path, QStringLiteral("A"), QStringLiteral("1000")});
    // Half of the kills come while it opens or with its first append, the others later.
    const int lines = round % 2 == 0 ? 0 : 1 + static_cast<int>(random() % 4);
    writer.read_lines(lines);
    ::usleep(static_cast<useconds_t>(random() % 3000));
    writer.kill();
    const Child::End end = writer.wait();
    CHECK(end.err.isEmpty());
    const qint64 told = std::max(known, acknowledged(end.out));
    if (!QFile::exists(path)) continue;
    check_whole(path, told, std::max(told, known) + 10);
    problem::Expected<Ledger> ledger = Ledger::open(path, Access::Read);
    REQUIRE(ledger);
    for (const Head& head : ledger->heads()) known = head.count;
  }
  CHECK(known > 0);
  check_tables(path);
}

TEST_CASE("when the power is cut all that a disk has kept for certain is a whole ledger", "[ledger][crash]") {
  std::mt19937 random(11);
  for (int round = 0; round < kCuts; ++round) {
    const QTemporaryDir folder, kept;
    const QString path = folder.filePath(QStringLiteral("ledger.sqlite"));
    Child writer({path, QStringLiteral("A"), QStringLiteral("1000")},
                 {{"LD_PRELOAD", LEDGER_DISK}, {"LARDINER_DISK_KEPT", kept.path().toLocal8Bit()}});
    writer.read_lines(2 + static_cast<int>(random() % 200));
    ::usleep(static_cast<useconds_t>(random() % 3000));
    writer.kill();
    const qint64 told = acknowledged(writer.wait().out);
    REQUIRE(told > 0);
    // Every file as of its last fsync: all that was written since is lost.
    const QString after = kept.filePath(QStringLiteral("ledger.sqlite"));
    REQUIRE(QFile::exists(after));
    check_whole(after, told, told + 10);
    check_tables(after);
  }
}

TEST_CASE("two programs that append at once both succeed", "[ledger][crash]") {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("ledger.sqlite"));
  const QStringList stations{QStringLiteral("A"), QStringLiteral("B"), QStringLiteral("A")};
  std::vector<std::unique_ptr<Child>> writers;
  for (const QString& station : {stations.at(0), stations.at(1)})
    writers.push_back(std::make_unique<Child>(QStringList{path, station, QStringLiteral("150")}));
  for (const auto& writer : writers) {
    const Child::End end = writer->wait();
    CHECK(end.err == "");
    CHECK(end.status == 0);
    CHECK(acknowledged(end.out) == 1500);
  }
  check_whole(path, 3000, 3000);
  check_tables(path);
}

TEST_CASE("a full disk is told, and what was acknowledged before it is there", "[ledger][crash]") {
  if (kCuts == 0) return;
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("ledger.sqlite"));
  Child writer({path, QStringLiteral("A"), QStringLiteral("10000")},
               {{"LD_PRELOAD", LEDGER_DISK}, {"LARDINER_DISK_BYTES", "3000000"}});
  const Child::End end = writer.wait();
  CHECK(end.status == 4);
  CHECK(end.err == (path + ": there is no space left for the ledger; nothing of this was recorded\n"
                           "  free some space, and record it again\n")
                       .toUtf8());
  REQUIRE(acknowledged(end.out) > 0);
  check_whole(path, acknowledged(end.out), acknowledged(end.out));
  check_tables(path);
}
