// A station whose disk has no space left for the ledger.
#include <QFile>
#include <QProcessEnvironment>

#include "station.h"

using namespace lardiner::command;

// An address sanitizer comes before every preloaded library or not at all.
#ifndef __SANITIZE_ADDRESS__

TEST_CASE("with a full disk nothing is changed and who records is told; with space again it goes on",
          "[command][ledger][station][attack]") {
  Station station;
  station.stop();
  QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
  environment.insert("LD_PRELOAD", LEDGER_DISK);
  environment.insert("LARDINER_DISK_FULL", station.folder.path("full"));
  station.program.setProcessEnvironment(environment);
  station.serve({});
  const Browser tablet = station.signed_in("MK");
  const QList<QPair<QString, QString>> frozen{
      {"event", "frozen"}, {"at", "2026-11-25 21:45"}, {"containers", "5"}, {"place", "freezer 1"}};
  const QString before = station.heads(), csrf = tablet.csrf();
  station.folder.write("full", "");
  const Answer refused = tablet.send("/happened/" + kButter, frozen);
  CHECK(refused.status == 503);
  CHECK(refused.body.contains("there is no space left for the ledger; nothing of this was recorded"));
  CHECK(refused.body.contains("name=\"containers\" value=\"5\""));
  const Answer label = tablet.send("/labels/" + kButter, {{"containers", "5"}, {"medium", "side"}});
  CHECK(label.status == 503);
  CHECK_FALSE(label.body.contains("%PDF"));
  CHECK(
      tablet
          .get(
              "/api/records",
              {"-H", "Content-Type: application/x-ndjson", "-H", "X-CSRF-Token: " + csrf, "--data-binary",
               R"({"event": "frozen", "at": "2026-11-25 21:45", "by": "MK", "lot": "A26329CLB03L", "containers": "5"})"})
          .status == 503);
  CHECK(tablet.get("/lot/" + kButter).status == 200);
  CHECK(station.browser("another").sign_in("JO", kPin).status == 303);
  CHECK(station.heads() == before);
  QFile::remove(station.folder.path("full"));
  CHECK(tablet.send("/happened/" + kButter, frozen).status == 200);
  CHECK(station.heads() != before);
  CHECK(station.evening({"verify"}).status == 0);
}

#endif
