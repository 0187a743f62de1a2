// The plan of the orders at the station: its start windows on Today and on the wall, its sheets as PDF.
#include "station.h"

using namespace lardiner::command;

namespace {

const QString kHeading = QStringLiteral("When each can start");
const QByteArray kColumns = "site,order,product,quantity,due,life\n";
// More slaw than is on hand, in time; burritos that cannot be in time.
const QByteArray kSlaw = "orchard-hill-school,OH-2215,sesame-slaw,80 kg,2026-11-27 12:00,1 day\n";
const QByteArray kTooSoon = "foundry-offices,FO-0941,egg-bean-burrito,7200 pieces,2026-11-25 22:00,\n";

struct Ordered : Station {
  explicit Ordered(const QByteArray& rows) {
    stop();
    folder.write("orders.csv", kColumns + rows);
    serve({"--orders", "orders.csv"});
  }
  QString today() const { return browser("wall").get("/").body; }
};

}  // namespace

TEST_CASE("start windows stand on Today and on the wall: what is next, and what is too late",
          "[command][station][plan]") {
  const Ordered station(kSlaw + kTooSoon);
  for (const QString& page : {QString("/"), QString("/wall")}) {
    const QString body = station.browser("wall").get(page).body;
    INFO(body.toStdString());
    CHECK(body.contains(kHeading));
    CHECK(body.contains("href=\"/make/sesame-slaw\""));
    CHECK(body.count("<b>Next</b>") == 1);
    const QString late =
        body.section("<li class=\"stop\"><a href=\"/make/egg-bean-burrito\">", 1).section("</li>", 0, 0);
    CHECK(late.contains("CANNOT BE MET"));
    CHECK(late.contains("22:00"));
    CHECK(body.indexOf(kHeading) < body.indexOf("href=\"/lot/"));
    // The sites are for who is signed in.
    CHECK_FALSE(body.section(kHeading, 1).section("</section>", 0, 0).contains("Orchard"));
  }
}

TEST_CASE("without orders there is no plan", "[command][station][plan]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  CHECK_FALSE(tablet.get("/").body.contains(kHeading));
  CHECK_FALSE(tablet.get("/sheets").body.contains("plan=yes"));
  CHECK(tablet.get("/sheets?plan=yes").status != 200);
}

TEST_CASE("orders that change are read again, and their faults told where they stand; the rest is planned",
          "[command][station][plan][refused]") {
  const Ordered station(kSlaw);
  CHECK_FALSE(station.today().contains("orders.csv:"));
  station.folder.write("orders.csv", kColumns + kSlaw + "orchard-hill-school,OH-1,<b>slaw,8 kg,2026-11-27 12:00,\n");
  const QString body = station.today();
  INFO(body.toStdString());
  CHECK(body.contains("orders.csv:3:26"));
  CHECK(body.contains("&lt;b&gt;slaw"));
  CHECK(body.contains("href=\"/make/sesame-slaw\""));
  const Browser tablet = station.signed_in("MK");
  const Answer refused = tablet.get("/sheets?plan=yes");
  CHECK(refused.status == 422);
  CHECK(refused.body.contains("&lt;b&gt;slaw"));
}

TEST_CASE("an order of today whose time has passed is counted, one of yesterday is a fault",
          "[command][station][plan][refused]") {
  const Ordered station("foundry-offices,FO-1,sesame-slaw,800 kg,2026-11-25 12:00,\n");
  CHECK(station.today().contains("Orders whose time has passed: 1"));
  CHECK_FALSE(station.today().contains("CANNOT BE MET"));
  station.folder.write("orders.csv", kColumns + "foundry-offices,FO-1,sesame-slaw,8 kg,2026-11-24 12:00,\n");
  CHECK(station.today().contains("orders.csv:2:"));
}

TEST_CASE("what is recorded changes the plan: a batch that is made is told with its lot", "[command][station][plan]") {
  // Far more than can be on hand: the making stays, whatever was made.
  const Ordered station("orchard-hill-school,OH-2215,chilli-lime-butter,400 kg,2026-11-27 12:00,1 day\n");
  const QString body = station.today();
  INFO(body.toStdString());
  CHECK(body.contains("Made today:"));
  CHECK(body.contains(kButter));
  CHECK(body.count("<b>Next</b>") <= 1);
}

TEST_CASE("the plan's sheets are a PDF, for who is signed in, in the working order", "[command][station][plan][pdf]") {
  const Ordered station(kSlaw);
  CHECK(station.browser("phone").get("/sheets?plan=yes").status == 401);
  const Browser tablet = station.signed_in("MK");
  CHECK(tablet.get("/sheets").body.contains("href=\"/sheets?plan=yes\""));
  CHECK(tablet.get("/sheets?plan=yes").body.startsWith("%PDF-"));
}

TEST_CASE("refused: a station whose orders are not there", "[command][station][plan][refused]") {
  const Folder folder;
  const Ran ran = folder.lardiner({"--kitchen", kDemoKitchen, "station", "--orders", "none.csv"});
  CHECK(ran.status != 0);
  CHECK(ran.err.contains("none.csv"));
}
