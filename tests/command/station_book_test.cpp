// The kitchen edits its book while the station runs.
#include <QThread>

#include "station.h"

using namespace lardiner::command;

namespace {

// Asks until the page says it: the station looks at the book about once a second.
bool comes_to_say(const Browser& browser, const QString& page, const QString& said) {
  for (int tenth = 0; tenth < 200; ++tenth) {
    if (browser.get(page).body.contains(said)) return true;
    QThread::msleep(100);
  }
  return false;
}

}  // namespace

TEST_CASE("the station takes the new book without a restart", "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.browser("tablet");
  CHECK(tablet.get("/lot/" + kButter).body.contains("Chilli-lime butter"));
  station.folder.put_fault("kitchen/kitchen.toml", "name = \"Quarry Lane Commissary\"", "name = \"Quarry Hill\"");
  CHECK(comes_to_say(tablet, "/", "Quarry Hill"));
}

TEST_CASE("of a new book at fault nothing is taken, who is signed in is told where, and once mended it is taken",
          "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("MK"), stranger = station.browser("stranger");
  const QByteArray good = station.folder.read("kitchen/kitchen.toml");
  QByteArray faulty = good;
  faulty.replace("name = \"Quarry Lane Commissary\"", "name = \"Quarry Hill\"\nname = \"Quarry Lane\"");
  REQUIRE(faulty != good);
  station.folder.write("kitchen/kitchen.toml", faulty);
  CHECK(comes_to_say(tablet, "/", "The kitchen book is at fault"));
  const QString told = tablet.get("/").body;
  const qsizetype line = QString::fromUtf8(faulty).section("name = \"Quarry Lane\"", 0, 0).count('\n') + 1;
  CHECK(told.contains(QStringLiteral("kitchen/kitchen.toml:%1:1: ").arg(line)));
  CHECK(told.contains("Quarry Lane Commissary"));
  CHECK_FALSE(told.contains("Quarry Hill"));
  CHECK(tablet.get("/api/session").body.contains("book_fault"));
  CHECK_FALSE(stranger.get("/").body.contains("The kitchen book is at fault"));
  CHECK(tablet.send("/happened/" + kButter, {{"event", "opened"}, {"at", "2026-11-25 21:46"}, {"containers", "5"}})
            .status == 200);
  faulty.replace("\nname = \"Quarry Lane\"", "");
  station.folder.write("kitchen/kitchen.toml", faulty);
  CHECK(comes_to_say(tablet, "/", "Quarry Hill"));
  CHECK_FALSE(tablet.get("/").body.contains("The kitchen book is at fault"));
}

TEST_CASE("a book of another station is not taken: its ledger is another file", "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  station.folder.put_fault("kitchen/kitchen.toml", "station = \"A\"", "station = \"B\"");
  CHECK(comes_to_say(tablet, "/", "the book is of station B now, and this is station A"));
}

TEST_CASE("whom the new book has no more is signed in no more", "[command][ledger][station]") {
  const Station station;
  const Browser mk = station.signed_in("MK"), jo = station.signed_in("JO");
  QString book;
  for (const QString& file : station.folder.entries("kitchen").filter(".toml"))
    if (const QByteArray text = station.folder.read("kitchen/" + file); text.contains("initials = \"JO\""))
      book = "kitchen/" + file;
  REQUIRE_FALSE(book.isEmpty());
  station.folder.put_fault(book, "initials = \"JO\"", "initials = \"JX\"");
  REQUIRE(comes_to_say(mk, "/sign-in", "name=JX"));
  CHECK(jo.get("/").body.contains("Sign in"));
  CHECK(mk.get("/api/session").status == 200);
  CHECK(jo.get("/api/session").status == 401);
  CHECK(jo.sign_in("JO", kPin).status == 403);
}
