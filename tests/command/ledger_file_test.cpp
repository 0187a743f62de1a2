// A ledger that may not be written, or that is damaged: told with exit status 4, before anything is printed or changed.
#include <unistd.h>

#include <QFile>

#include "small_kitchen.h"

using namespace lardiner::command;

namespace {

const char* const kFile = "kitchen/ledger/A.sqlite";
const QString kMayNotBeWritten = QStringLiteral(
    "kitchen/ledger/A.sqlite: the ledger may not be written\n"
    "  let this account write the file and the folder that it stands in\n");
const char* const kDamaged =
    "kitchen/ledger/A.sqlite: the ledger's file is damaged\n"
    "  keep a copy of it, and restore the last backup that verifies\n";

// The small kitchen with its records in a ledger.
struct Recorded : SmallKitchen {
  Recorded() { REQUIRE(run({"record", "records.csv"}).status == 0); }

  Ran run(const QStringList& rest) const { return folder.lardiner(QStringList{"--kitchen", "kitchen"} + rest); }
  QString sql(const QString& text) const {
    const Ran ran = folder.run("sqlite3", {kFile, text});
    CHECK(ran.err == "");
    return ran.out.trimmed();
  }
  // A lot of ours.
  QString lot() const { return sql("SELECT min(code) FROM lot WHERE kind = 1"); }

  // Its mode bits also bind root, who is asked to do without the right to pass over them.
  Ran protected_run(const QString& program, const QStringList& arguments) const {
    if (geteuid() != 0) return folder.run(program, arguments);
    return folder.run("setpriv", QStringList{"--bounding-set=-dac_override,-dac_read_search",
                                             "--inh-caps=-dac_override,-dac_read_search", program} +
                                     arguments);
  }
  Ran protected_lardiner(const QStringList& rest) const {
    return protected_run(LARDINER_PROGRAM, QStringList{"--kitchen", "kitchen", "--at", "2026-11-25T18:30"} + rest);
  }
  bool protection_binds() const {
    folder.write("probe", "x");
    QFile::setPermissions(folder.path("probe"), QFile::ReadOwner);
    const bool binds = protected_run("true", {}).status == 0 &&
                       protected_run("sh", {"-c", "echo y > probe"}).status != 0 && folder.read("probe") == "x";
    QFile::remove(folder.path("probe"));
    return binds;
  }
  void protect(const char* path, bool folder_too) const {
    const auto mode = QFile::ReadOwner | QFile::ReadUser;
    REQUIRE(QFile::setPermissions(folder.path(path), mode));
    if (folder_too)
      REQUIRE(QFile::setPermissions(folder.path("kitchen/ledger"), mode | QFile::ExeOwner | QFile::ExeUser));
  }
  void unprotect() const {
    QFile::setPermissions(folder.path("kitchen/ledger"), QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
  }
  void overwrite_page(int page) const {
    QByteArray bytes = folder.read(kFile);
    constexpr int kPage = 4096;
    REQUIRE(bytes.size() >= page * kPage);
    bytes.replace((page - 1) * kPage, kPage, QByteArray(kPage, '\xa5'));
    folder.write(kFile, bytes);
  }
};

// Whether a test of a ledger that may not be written can be made here; that it cannot is said.
bool can_be_protected(const Recorded& day) {
  const bool binds = day.protection_binds();
  if (!binds) WARN("skipped: write protection does not bind here");
  return binds;
}

// Whatever appends is refused.
void check_appends_refused(const Recorded& day, const QString& lot) {
  const QStringList moved{"record", "event=moved", "lot=" + lot, "place=walk-in 1", "by=MK", "at=2026-11-25 18:20"};
  for (const QStringList& words :
       {moved, {"labels", "records.csv", "--out", "labels"}, {"labels", "--lot", lot, "--out", "labels"}}) {
    const Ran ran = day.protected_lardiner(words);
    CHECK(ran.status == 4);
    CHECK(ran.out == "");
    CHECK(ran.err == kMayNotBeWritten);
  }
}

void check_reports_read(const Recorded& day, const QString& lot) {
  for (const QStringList& report : {QStringList{"history", lot}, {"due"}, {"trace", lot}, {"verify"}}) {
    const Ran ran = day.protected_lardiner(report);
    CHECK(ran.status == 0);
    CHECK(ran.err == "");
  }
}

}  // namespace

TEST_CASE("a ledger that may not be written refuses record and labels with 4, unchanged, and can be read",
          "[command][ledger][machine]") {
  const Recorded day;
  if (!can_be_protected(day)) return;
  const QString lot = day.lot();
  const QByteArray before = day.folder.read(kFile);
  const QString history = day.run({"history", lot, "--at", "2026-11-25T18:30"}).out;
  day.protect(kFile, false);
  check_appends_refused(day, lot);
  CHECK(day.as_it_was());
  check_reports_read(day, lot);
  CHECK(day.protected_lardiner({"history", lot}).out == history);
  CHECK(day.folder.read(kFile) == before);
}

TEST_CASE("a ledger in a folder that may not be written refuses record and labels with 4, unchanged, and can be read",
          "[command][ledger][machine]") {
  const Recorded day;
  if (!can_be_protected(day)) return;
  const QString lot = day.lot();
  const QByteArray before = day.folder.read(kFile);
  day.protect(kFile, true);
  check_appends_refused(day, lot);
  check_reports_read(day, lot);
  day.unprotect();
  CHECK(day.as_it_was());
  CHECK(day.folder.entries("kitchen/ledger") == QStringList{"A.sqlite"});
  CHECK(day.folder.read(kFile) == before);
}

TEST_CASE("labels tells a damaged ledger before anything is printed, whatever part of it is damaged",
          "[command][ledger][machine]") {
  const Recorded whole;
  CHECK(whole.labels({"records.csv", "--out", "labels"}).status == 0);
  for (const char* part : {"lot_of", "lot", "touched", "event", "chain", "holder", "concern_of", "happened"}) {
    const Recorded day;
    CAPTURE(part);
    const QString lot = day.lot();
    const int page = day.sql(QStringLiteral("SELECT rootpage FROM sqlite_schema WHERE name = '%1'").arg(part)).toInt();
    REQUIRE(page > 1);
    day.overwrite_page(page);
    for (const QStringList& what : {QStringList{"records.csv"},
                                    {"records.csv", "--keep-going"},
                                    {"records.csv", "--hold-labels"},
                                    {"--lot", lot}}) {
      const Ran ran = day.labels(what + QStringList{"--out", "labels"});
      CAPTURE(what.join(' '));
      CHECK(ran.status == 4);
      CHECK(ran.out == "");
      CHECK(ran.err == kDamaged);
      CHECK_FALSE(QFile::exists(day.folder.path("labels")));
    }
  }
}

TEST_CASE("labels names an entry that cannot be read, and prints nothing", "[command][ledger][machine]") {
  const Recorded day;
  const QString lot = day.lot();
  day.sql("UPDATE event SET body = '{}' WHERE seq = (SELECT seq FROM lot WHERE code = '" + lot + "')");
  for (const QStringList& what : {QStringList{"records.csv"},
                                  {"records.csv", "--keep-going"},
                                  {"records.csv", "--hold-labels"},
                                  {"--lot", lot}}) {
    const Ran ran = day.labels(what + QStringList{"--out", "labels"});
    CAPTURE(what.join(' '));
    CHECK(ran.status == 4);
    CHECK(ran.err.contains("kitchen/ledger/A.sqlite: entry A-"));
    CHECK(ran.err.contains(" cannot be read: "));
    CHECK_FALSE(QFile::exists(day.folder.path("labels")));
  }
}
