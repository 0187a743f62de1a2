// A lot that is put on hold on its page, and released there with the strong word.
#include "station.h"

using namespace lardiner;
using namespace lardiner::command;

namespace {

using Form = QList<QPair<QString, QString>>;

const QString kTinga = QStringLiteral("A26329CTN081");

// What the form of the one hold on a lot's page sends, with a reason.
Form release(const Answer& page, const QString& reason) {
  static const QRegularExpression of("name=\"of\" value=\"([^\"]*)\"");
  return {
      {"event", "release"}, {"of", of.match(page.body).captured(1)}, {"at", "2026-11-25 21:50"}, {"reason", reason}};
}

}  // namespace

TEST_CASE("a lot is put on hold on its page, and released there with the strong word", "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("JO"), phone = station.browser("phone");
  CHECK_FALSE(tablet.get("/lot/" + kButter).body.contains("Why it is released"));
  const Answer held = tablet.send("/happened/" + kButter,
                                  {{"event", "hold"}, {"at", "2026-11-25 21:49"}, {"reason", "a lid was off <b>"}});
  REQUIRE(held.status == 200);
  CHECK(held.body.contains("On hold: a lid was off &lt;b&gt;"));
  CHECK(phone.get("/lot/" + kButter).body.contains("ON HOLD: DO NOT USE"));
  CHECK_FALSE(phone.get("/lot/" + kButter).body.contains("a lid was off"));

  const QString before = station.heads();
  const Answer refused = tablet.send("/happened/" + kButter, release(held, "looked at it"));
  CHECK(refused.status == 403);
  CHECK(refused.body.contains("href=\"/sign-in?back=/\""));
  const Browser chef = station.strong();
  CHECK(chef.send("/happened/" + kButter, release(held, "")).status == 422);
  CHECK(chef.send("/happened/" + kButter, {{"event", "release"}, {"of", "A-1"}, {"reason", "x"}}).status == 422);
  CHECK(station.heads() == before);
  const Answer released = chef.send("/happened/" + kButter, release(held, "the lid was on the next tub"));
  CHECK(released.status == 200);
  CHECK_FALSE(released.body.contains("Why it is released"));
  CHECK_FALSE(phone.get("/lot/" + kButter).body.contains("ON HOLD"));
}

TEST_CASE("a hold of a whole place is ended for one lot on its page, and goes on for the others",
          "[command][ledger][station]") {
  const Station station;
  station.folder.write("place.csv",
                       "event,at,by,place,reason\nhold,2026-11-25 21:49,MK,walk-in 1,the door stood open\n");
  REQUIRE(station.evening({"record", "place.csv"}).status == 1);  // not before its own time
  const QStringList later{"--kitchen", "kitchen", "--at", "2026-11-25T21:50", "record", "place.csv"};
  REQUIRE(station.folder.lardiner(later).status == 0);
  const Browser chef = station.strong();
  const Answer page = chef.get("/lot/" + kButter);
  CHECK(page.body.contains("On hold: the door stood open"));
  CHECK(page.body.contains("walk-in 1"));
  REQUIRE(chef.get("/lot/" + kTinga).body.contains("On hold: the door stood open"));
  CHECK(chef.send("/happened/" + kButter, release(page, "measured at 39 °F")).status == 200);
  CHECK_FALSE(chef.get("/lot/" + kButter).body.contains("ON HOLD"));
  CHECK(chef.get("/lot/" + kTinga).body.contains("ON HOLD"));
}
