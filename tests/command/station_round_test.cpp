// The round with a thermometer, receiving and correcting on the station's pages.
#include <QUrl>
#include <algorithm>

#include "station.h"

using namespace lardiner;
using namespace lardiner::command;

namespace {

using Form = QList<QPair<QString, QString>>;

const QString kNow = QStringLiteral("2026-11-25 21:50");

// Without the spaces that keep a figure and its unit on one line.
QString plain(const Answer& page) { return QString(page.body).replace(QChar(0x00A0), u' '); }

Form readings(const QString& first, const QString& second) {
  return {{"step", "temperatures"}, {"at", kNow}, {"reads.walk-in 1", first}, {"reads.walk-in 2", second}};
}

// With other values in some of its fields.
Form delivery(const QList<QPair<QString, QString>>& more) {
  Form form{{"supplier_item", "meadowfold-butter-25"},
            {"lot", "MB-6001"},
            {"quantity", "10 lb"},
            {"count", "2"},
            {"kind", "case"},
            {"temperature", "39 F"},
            {"place", "walk-in 1"},
            {"date", "2026-12-20"},
            {"ends", "use_by"},
            {"at", kNow},
            {"accepted", "yes"},
            {"note", "DN 17/3"},
            {"from", "Meadowfold"}};
  for (const auto& [name, value] : more) {
    const auto named = [wanted = name](const auto& one) { return one.first == wanted; };
    std::find_if(form.begin(), form.end(), named)->second = value;
  }
  return form;
}

}  // namespace

TEST_CASE("the temperatures of a round are recorded together, with what each place is held to",
          "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("JO");
  CHECK(station.browser("phone").get("/rounds").status == 401);
  CHECK(plain(tablet.get("/rounds")).contains("39 °F (4 °C) or below"));
  const Answer recorded = tablet.send("/rounds", readings("38 F", "37.5 F"));
  CHECK(recorded.status == 200);
  CHECK(recorded.body.count("Recorded:") == 2);
  CHECK_FALSE(recorded.body.contains("OUT OF LIMIT"));
  CHECK(tablet.get("/rounds").body.contains("37.5"));
}

TEST_CASE("a round with one fault records nothing, keeps what was typed, and shows the fault beside its place",
          "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("JO");
  const QString before = station.heads();
  const Answer refused = tablet.send("/rounds", readings("38 F", "warm <b>"));
  CHECK(refused.status == 422);
  const QString beside = refused.body.section("name=\"reads.walk-in 2\"", 1).section("name=\"reads.freezer 1\"", 0, 0);
  CHECK(beside.contains("is not a temperature"));
  CHECK(refused.body.count("is not a temperature") == 1);
  CHECK(refused.body.contains("value=\"38 F\""));
  CHECK(refused.body.contains("warm &lt;b&gt;"));
  CHECK(tablet.send("/rounds", readings("", " ")).status == 422);
  CHECK(tablet.send("/rounds", {{"step", "temperatures"}, {"at", "2026-11-26 21:50"}, {"reads.walk-in 1", "38 F"}})
            .status == 422);
  CHECK(station.heads() == before);
}

TEST_CASE("all that stands in a place out of its limits is held from the round, and once held is not asked for again",
          "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("JO"), phone = station.browser("phone");
  const Answer warm = tablet.send("/rounds", readings("46 F", ""));
  CHECK(warm.body.contains("OUT OF LIMIT"));
  CHECK_FALSE(warm.body.contains("lardiner record"));
  REQUIRE(warm.body.contains("value=\"hold\""));
  CHECK(warm.body.contains("/lot/" + kButter));
  CHECK(tablet.get("/rounds").body.contains("value=\"hold\""));
  CHECK_FALSE(phone.get("/lot/" + kButter).body.contains("ON HOLD"));
  const Answer held =
      tablet.send("/rounds", {{"step", "hold"}, {"place", "walk-in 1"}, {"at", kNow}, {"reason", "walk-in 1: 46 °F"}});
  CHECK(held.status == 200);
  CHECK(held.body.contains("Concerns: Chilli-lime butter " + kButter));
  CHECK(held.body.contains("call orchard-hill-school: it has lot A26329CTN081"));
  CHECK_FALSE(held.body.contains("value=\"hold\""));
  CHECK(phone.get("/lot/" + kButter).body.contains("ON HOLD"));
}

TEST_CASE("a later reading within the limits does not take the hold away; an empty place says that nothing is held",
          "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("JO");
  const Form warm{{"step", "temperatures"}, {"at", "2026-11-25 21:40"}, {"reads.walk-in 1", "46 F"}};
  REQUIRE(tablet.send("/rounds", warm).status == 200);
  CHECK(tablet.send("/rounds", readings("38 F", "")).body.contains("value=\"hold\""));
  const Answer empty =
      tablet.send("/rounds", {{"step", "hold"}, {"place", "pot wash"}, {"at", kNow}, {"reason", "a smell"}});
  CHECK(empty.body.contains("nothing is on hold"));
}

TEST_CASE("checks and corrective actions are recorded from the round, and stand in the day's record",
          "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("JO");
  const Form check{{"step", "check"}, {"at", kNow}, {"what", "sanitizer strength"}, {"place", "pot wash"}};
  const QString before = station.heads();
  CHECK(tablet.send("/rounds", check + Form{{"in_order", "no"}}).status == 422);  // without saying what is wrong
  CHECK(tablet.send("/rounds", check).status == 422);
  CHECK(station.heads() == before);
  CHECK(tablet.send("/rounds", check + Form{{"in_order", "no"}, {"note", "50 ppm"}}).status == 200);
  CHECK(tablet.send("/rounds", {{"step", "action"}, {"at", kNow}, {"action", "made anew"}, {"place", "pot wash"}})
            .status == 200);
  const QString page = tablet.get("/day/2026-11-25").body;
  CHECK(page.contains("sanitizer strength"));
  CHECK(page.contains("50 ppm"));
  CHECK(page.contains("made anew"));
}

TEST_CASE("a delivery is received package by package, and what came is here", "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("JO");
  CHECK(station.browser("phone").get("/receive").status == 401);
  CHECK(station.browser("phone").get("/receive/butter-unsalted").status == 401);
  CHECK(tablet.get("/receive/nothing").status == 404);
  const Answer found = tablet.get("/receive?q=BUTTER");
  CHECK(found.body.contains("/receive/butter-unsalted"));
  CHECK_FALSE(found.body.contains("/receive/chicken-thigh"));
  const Answer form = tablet.get("/receive/butter-unsalted");
  CHECK(form.body.contains("CONTAINS milk"));

  const QString before = station.heads();
  const Answer refused = tablet.send("/receive/butter-unsalted", delivery({{"temperature", ""}}));
  CHECK(refused.status == 422);  // TCS food without a temperature
  CHECK(refused.body.contains("value=\"MB-6001\""));
  CHECK(tablet.send("/receive/butter-unsalted", delivery({{"accepted", "no"}})).status == 422);  // without a reason
  CHECK(tablet.send("/receive/butter-unsalted", delivery({{"supplier_item", "nobody"}})).status == 422);
  CHECK(station.heads() == before);

  const Answer came = tablet.send("/receive/butter-unsalted", delivery({}));
  CHECK(came.status == 200);
  CHECK(came.body.contains("note=DN%2017%2F3"));  // the next package of the delivery
  CHECK_FALSE(came.body.contains("walk-in"));
  CHECK(came.body.contains("href=\"/lot/MB-6001?item=butter-unsalted\""));
  CHECK(came.body.contains("DN 17/3, Meadowfold"));
  CHECK(tablet.get("/receive/milk-whole?note=DN%2017%2F3").body.contains("value=\"DN 17/3\""));
  const QString lot = tablet.get("/lot/MB-6001").body;
  CHECK(lot.contains("walk-in 1"));
  CHECK(lot.contains("GOOD"));
  CHECK(tablet.send("/receive/butter-unsalted", delivery({})).status == 422);  // the same delivery twice
}

TEST_CASE("a supplier's lot may have a stroke, a hash or a space: each of its pages is found",
          "[command][ledger][station]") {
  const Station station;
  const Browser chef = station.strong();
  for (const QString lot : {"24/113", "24#113?", "24 113 %2F"}) {
    INFO(lot.toStdString());
    REQUIRE(chef.send("/receive/butter-unsalted", delivery({{"lot", lot}})).status == 200);
    const QString named = QString::fromLatin1(QUrl::toPercentEncoding(lot));
    const QString of = named + "?item=butter-unsalted";
    CHECK(chef.get("/lot/" + named).body.contains("walk-in 1"));
    for (const char* page : {"/lot/", "/correct/", "/recall/", "/recall-sheet/", "/lineage/", "/open/", "/api/lots/"}) {
      INFO(page);
      CHECK(chef.get(page + of).status == 200);
    }
    CHECK(chef.get("/lot/" + named + "/further").status == 404);
    CHECK(chef.send("/happened/" + named,
                    {{"item", "butter-unsalted"}, {"event", "moved"}, {"place", "walk-in 2"}, {"at", kNow}})
              .status == 200);
    CHECK(chef.send("/recall/" + named, {{"item", "butter-unsalted"}, {"reason", "a call"}}).status == 200);
  }
}

TEST_CASE("what came too warm is warned of as it is received", "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("JO");
  const Answer warm = tablet.send("/receive/butter-unsalted", delivery({{"temperature", "52 F"}}));
  CHECK(warm.status == 200);
  CHECK(warm.body.contains("class=\"warning\""));
  CHECK_FALSE(warm.body.contains("event="));
  CHECK(warm.body.contains("MB-6001"));
}

TEST_CASE("a correction asks for the strong word, moves a date to an earlier day only, and lists what it concerns",
          "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("JO"), chef = station.strong();
  const QString at = "/correct/" + kButter, page = at + "?item=chilli-lime-butter";
  CHECK(station.browser("phone").get(page).status == 401);
  CHECK_FALSE(tablet.get(page).body.contains("name=\"date\""));
  const Form earlier{{"item", "chilli-lime-butter"}, {"step", "date"}, {"ends", "use_by"}, {"date", "2026-11-27"}};
  const QString before = station.heads();
  CHECK(tablet.send(at, earlier + Form{{"reason", "x"}}).status == 403);
  CHECK(chef.send(at, earlier).status == 422);  // without a reason
  Form later = earlier + Form{{"reason", "x"}};
  later[3].second = "2027-11-27";
  CHECK(chef.send(at, later).status == 422);
  CHECK(station.heads() == before);
  const Answer done = chef.send(at, earlier + Form{{"reason", "a tub smelled"}});
  CHECK(done.status == 200);
  CHECK(done.body.contains("Concerns:"));
  CHECK(plain(station.browser("phone").get("/lot/" + kButter)).contains("27 Nov 2026", Qt::CaseInsensitive));
}

TEST_CASE("an allergen that a supplier declares later reaches all that holds it", "[command][ledger][station]") {
  const Station station;
  const Browser chef = station.strong();
  const Answer page = chef.get("/correct/MB-5521?item=butter-unsalted");
  CHECK(page.body.contains("<option value=\"fish\" >fish</option>"));
  CHECK_FALSE(page.body.contains("Larkfield"));  // it is Meadowfold's
  CHECK(chef.send("/correct/MB-5521", {{"item", "butter-unsalted"}, {"step", "x"}, {"reason", "x"}}).status == 404);
  CHECK(page.body.contains("<option value=\"fish:cod\" >fish (cod)</option>"));
  const Form adds{{"item", "butter-unsalted"},
                  {"step", "allergen"},
                  {"supplier_item", "meadowfold-butter-25"},
                  {"adds", "sesame"},
                  {"reason", "their letter"}};
  const QString before = station.heads();
  CHECK_FALSE(chef.get("/receive/butter-unsalted").body.contains("sesame"));
  Form nothing = adds;
  nothing[3].second = "";
  CHECK(chef.send("/correct/MB-5521", nothing).status == 422);
  CHECK(station.heads() == before);
  const Answer done = chef.send("/correct/MB-5521", adds);
  CHECK(done.status == 200);
  CHECK(done.body.contains(kButter));
  CHECK_FALSE(done.body.contains("selected"));  // a second press would be another correction
  CHECK(station.browser("phone").get("/lot/" + kButter).body.contains("sesame"));
  CHECK(chef.get("/receive/butter-unsalted").body.contains("sesame"));  // to be found on the next delivery too
}

TEST_CASE("a remark stands beside the entry that it is of", "[command][ledger][station]") {
  const Station station;
  const Browser chef = station.strong();
  const QString page = chef.get("/correct/" + kButter + "?item=chilli-lime-butter").body;
  static const QRegularExpression first("<option value=\"(A-[0-9]+)\"");
  const QString entry = first.match(page).captured(1);
  REQUIRE_FALSE(entry.isEmpty());
  const Form remark{
      {"item", "chilli-lime-butter"}, {"step", "remark"}, {"of", entry}, {"reason", "weighed on the other scale"}};
  CHECK(chef.send("/correct/" + kButter, remark).status == 200);
  CHECK(chef.get("/lot/" + kButter).body.contains("weighed on the other scale"));
}

TEST_CASE("a temperature, a part used and a corrective action are recorded on a lot's page",
          "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("JO");
  const auto happened = [&](Form form) {
    return tablet.send("/happened/" + kButter, Form{{"item", "chilli-lime-butter"}, {"at", kNow}} + form);
  };
  const QString before = station.heads();
  CHECK(happened({{"event", "reading"}, {"temperature", "39 F"}}).status == 422);  // of what is not said
  CHECK(happened({{"event", "part-used"}, {"containers", "4"}}).status == 422);
  CHECK(happened({{"event", "corrective-action"}}).status == 422);
  CHECK(station.heads() == before);
  CHECK(happened({{"event", "reading"}, {"what", "cold-held"}, {"temperature", "39 F"}, {"containers", "4"}}).status ==
        200);
  CHECK(happened({{"event", "part-used"}, {"containers", "4"}, {"quantity", "100 g"}}).status == 200);
  CHECK(happened({{"event", "corrective-action"}, {"action", "moved to the blast chiller"}}).status == 200);
  CHECK(tablet.get("/lot/" + kButter).body.contains("moved to the blast chiller"));
}
