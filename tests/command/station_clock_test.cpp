// A station whose clock stands before what was recorded already: it says so everywhere, and dates nothing.
#include <QJsonDocument>
#include <QJsonObject>

#include "station.h"

using namespace lardiner::command;

namespace {

const QString kBehind =
    "The clock says Wed 25\u00A0Nov 2026 20:30, but something was recorded at Wed 25\u00A0Nov 2026 21:45.";

QJsonObject object(const Answer& answer) { return QJsonDocument::fromJson(answer.body.toUtf8()).object(); }

QJsonValue clock_behind(const Answer& answer) { return object(answer).value("clock_behind"); }

}  // namespace

TEST_CASE("a clock before the last entry is told on every page and to programs, and one that is right is not",
          "[command][ledger][station]") {
  Station station;
  const QStringList pages{"/", "/wall", "/make", "/find", "/scan", "/sign-in", "/open", "/lot/" + kButter, "/nothing"};
  const Browser right = station.signed_in("MK");
  for (const QString& page : pages) CHECK_FALSE(right.get(page).body.contains("The clock says"));
  for (const QString& path : {QString("/api/due"), QString("/api/session"), "/api/lots/" + kButter})
    CHECK(clock_behind(right.get(path)).isUndefined());
  station.stop();
  station.serve({}, "2026-11-25T20:30");
  const Browser behind = station.signed_in("MK");
  for (const QString& page : pages) {
    INFO(page.toStdString());
    CHECK(behind.get(page).body.contains(kBehind));
  }
  CHECK(station.browser("stranger").get("/").body.contains(kBehind));
  const QJsonObject both{{"clock", "2026-11-26T01:30:00Z"}, {"last_entry", "2026-11-26T02:45:00Z"}};
  for (const QString& path : {QString("/api/due"), QString("/api/session"), "/api/lots/" + kButter})
    CHECK(clock_behind(behind.get(path)).toObject() == both);
}

TEST_CASE("with a clock before the last entry nothing is recorded, foreseen with a date, or printed; reading goes on",
          "[command][ledger][station]") {
  Station station;
  station.stop();
  station.serve({}, "2026-11-25T20:30");
  const Browser tablet = station.signed_in("MK");
  const QString before = station.heads(), fault = "but the last entry was recorded at 2026-11-26T02:45:00Z";
  CHECK(tablet.get("/lot/" + kButter).body.simplified().contains("USE BY TUE 01 DEC 2026"));
  const Answer held = tablet.send("/happened/" + kButter, {{"event", "opened"}, {"at", "2026-11-25 20:20"}});
  CHECK(held.status == 422);
  CHECK(held.body.contains(fault));
  QList<QPair<QString, QString>> butter{{"quantity", "6 kg"},
                                        {"containers", "12 tub 500 g"},
                                        {"made_at", "2026-11-25 20:00"},
                                        {"number", "9"},
                                        {"step", "look"}};
  const Answer looked = tablet.send("/make/chilli-lime-butter", butter);
  CHECK(looked.body.contains(fault));
  CHECK_FALSE(looked.body.contains("data:image/svg"));
  butter.last().second = "record";
  CHECK(tablet.send("/make/chilli-lime-butter", butter).status == 422);
  const Answer label = tablet.send("/labels/" + kButter, {{"containers", "5"}, {"medium", "side"}});
  CHECK(label.status == 422);
  CHECK(label.body.contains(fault));
  CHECK(station.heads() == before);
}
