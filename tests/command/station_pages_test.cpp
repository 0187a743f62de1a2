// Further pages of the station: dispatch and what became of it, the close of day, a day's record and its review,
// sheets, lineage, and a container that is divided.
#include "station.h"

using namespace lardiner::command;

namespace {

using Form = QList<QPair<QString, QString>>;

const QString kKey = kButter + "|chilli-lime-butter";

// `more` takes the place of fields of its name.
Form leaving(const Form& more) {
  Form form{{"site", "harbour-street-cafe"}, {"at", "2026-11-25 21:45"}, {"note", "DN-900"}, {"temperature", "38 °F"}};
  for (const auto& field : more) form.removeIf([&](const auto& one) { return one.first == field.first; });
  return form + more;
}

}  // namespace

TEST_CASE("what leaves is chosen or scanned, recorded all together, and its note says it",
          "[command][ledger][station][pages]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  const Answer page = tablet.get("/dispatch");
  CHECK(page.status == 200);
  CHECK(page.body.contains("name=\"go." + kKey + "|4\""));
  CHECK(station.browser("phone").get("/dispatch").status == 401);
  const Answer left = tablet.send("/dispatch", leaving({{"go." + kKey, "5-6"}, {"codes", kButter + " 7\n"}}));
  INFO(left.body.toStdString());
  CHECK(left.status == 200);
  CHECK(left.body.contains("Recorded:"));
  CHECK(left.body.contains("DN-900"));
  CHECK(station.evening({"history", kButter}).out.contains("dispatched, lot A26329CLB03L, containers 5-7"));
  CHECK(tablet.get("/note/DN-900?pdf=yes").body.startsWith("%PDF-"));
  CHECK(tablet.get("/note/DN-901").status == 404);
  CHECK(tablet.send("/note/DN-900", {{"event", "arrived"}, {"accepted", "yes"}, {"at", "2026-11-25 21:48"}}).status ==
        422);
  const Answer arrived =
      tablet.send("/note/DN-900",
                  {{"event", "arrived"}, {"accepted", "yes"}, {"at", "2026-11-25 21:48"}, {"temperature", "39 °F"}});
  CHECK(arrived.status == 200);
  const Answer back = tablet.send("/note/DN-900", {{"event", "returned"},
                                                   {"lot", kButter},
                                                   {"containers", "5"},
                                                   {"at", "2026-11-25 21:49"},
                                                   {"reason", "too many"},
                                                   {"temperature", "39 °F"}});
  CHECK(back.status == 200);
  const QString history = station.evening({"history", kButter}).out;
  CHECK(history.contains("arrived"));
  CHECK(history.contains("returned, lot A26329CLB03L, container 5"));
  // What is held for it stays; its number is not given again.
  CHECK(tablet.send("/dispatch", leaving({{"go." + kKey, "8"}, {"note", "A-261125-1"}})).status == 422);
  CHECK(tablet.get("/dispatch").body.contains("value=\"A-261125-1\""));
  REQUIRE(tablet.send("/dispatch", leaving({{"codes", "A26329TMS04I 2"}, {"note", "A-261125-1"}})).status == 200);
  CHECK(tablet.get("/dispatch").body.contains("value=\"A-261125-2\""));
}

TEST_CASE("nothing leaves that is not good, or that nobody named; what was typed stays",
          "[command][ledger][station][pages]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  REQUIRE(tablet.send("/happened/" + kButter, {{"event", "hold"}, {"at", "2026-11-25 21:46"}, {"reason", "smell"}})
              .status == 200);
  const QString before = station.heads();
  for (const Form& form : {leaving({{"go." + kKey, "5"}}), leaving({{"codes", kButter}}),
                           leaving({{"codes", "A26329CLB03X"}}), leaving({{"go." + kKey, "five"}}),
                           leaving({{"go." + kKey, ","}}), leaving({{"go.A26329CLB03X|nothing", "1"}}), leaving({})}) {
    const Answer refused = tablet.send("/dispatch", form);
    CHECK(refused.status == 422);
    CHECK(refused.body.contains("value=\"DN-900\""));
  }
  CHECK(tablet.send("/dispatch", leaving({{"go." + kKey, "5"}})).body.contains("ON HOLD: DO NOT USE"));
  CHECK(station.heads() == before);
}

TEST_CASE("what bears a label that is no longer true does not leave", "[command][ledger][station][pages]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  REQUIRE(tablet.send("/happened/" + kButter, {{"event", "opened"}, {"at", "2026-11-25 21:45"}, {"containers", "5"}})
              .status == 200);
  const QString before = station.heads();
  const Answer refused = tablet.send("/dispatch", leaving({{"go." + kKey + "|4", "4-6"}}));
  CHECK(refused.status == 422);
  CHECK(refused.body.contains("Needs a new label"));
  CHECK(station.heads() == before);
  CHECK(tablet.send("/dispatch", leaving({{"go." + kKey + "|4", "4, 6"}})).status == 200);
}

TEST_CASE("what comes back is released with the strong word alone; a note's number may have a stroke",
          "[command][ledger][station][pages]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  REQUIRE(tablet.send("/dispatch", leaving({{"go." + kKey, "6"}, {"note", "HS/12"}})).status == 200);
  CHECK(tablet.get("/note/HS%2F12").status == 200);
  const Form back{{"event", "returned"},
                  {"lot", kButter},
                  {"containers", "6"},
                  {"at", "2026-11-25 21:49"},
                  {"temperature", "39 °F"}};
  const QString before = station.heads();
  CHECK(tablet.send("/note/HS/12", back + Form{{"reason", " Released"}}).status == 403);
  CHECK(station.heads() == before);
  CHECK(tablet.send("/note/HS/12", back + Form{{"reason", "too many"}}).status == 200);
}

TEST_CASE("a count asks about what was not seen before it is missing", "[command][ledger][station][pages]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  CHECK(station.browser("phone").get("/close").status == 401);
  CHECK(tablet.get("/close").body.contains("href=\"/close?place=walk-in"));
  const Answer page = tablet.get("/close?place=walk-in%201");
  CHECK(page.body.contains("value=\"" + kKey + "\""));
  const QString before = station.heads();
  Form all{{"place", "walk-in 1"}};
  static const QRegularExpression boxes("name=\"all\" value=\"([^\"]*)\"");
  for (auto found = boxes.globalMatch(page.body); found.hasNext();) {
    const QString key = found.next().captured(1);
    if (key != kKey) all.append({"all", key});
  }
  const Form some = all + Form{{"seen." + kKey, "4-27, 29"}, {"half." + kKey, "30"}};
  const Answer looked = tablet.send("/close", some + Form{{"step", "look"}});
  INFO(looked.body.toStdString());
  CHECK(looked.status == 200);
  CHECK(station.heads() == before);
  // 25 to 28 stand in the freezer: that they are here is told.
  CHECK(looked.body.contains("Should stand elsewhere"));
  const Form less = all + Form{{"seen." + kKey, "4-24"}, {"half." + kKey, "30"}};
  const Answer asked = tablet.send("/close", less + Form{{"step", "look"}});
  static const QRegularExpression shown("name=\"shown\" value=\"([^\"]*)\"");
  const QString seen = shown.match(asked.body).captured(1);
  CHECK(seen.contains(kKey + "/29/"));
  CHECK(asked.body.contains("A26329CLB03L: 29"));
  // It was not shown; or something else was.
  for (const Form& other : {less, less + Form{{"shown", "x"}}, some + Form{{"shown", seen}},
                            less + Form{{"codes", kButter + " 25"}, {"shown", seen}}}) {
    CHECK(tablet.send("/close", other + Form{{"step", "record"}}).body.contains("Not seen"));
    CHECK(station.heads() == before);
  }
  const Answer recorded = tablet.send("/close", less + Form{{"step", "record"}, {"shown", seen}});
  INFO(recorded.body.toStdString());
  CHECK(recorded.status == 200);
  CHECK(recorded.body.contains("Recorded:"));
  const QString history = station.evening({"history", kButter}).out;
  CHECK(history.contains("container 30, 50 % left"));
  CHECK(history.contains("container 29, 0 % left"));
  CHECK(history.contains("containers 4-24, 100 % left"));
  CHECK(tablet.send("/close", {{"place", "walk-in 1"}, {"seen." + kKey, "x"}, {"step", "look"}}).status == 422);
  CHECK(tablet.send("/close", {{"place", "walk-in 1"}, {"codes", kButter}, {"step", "look"}}).status == 422);
  CHECK(tablet.send("/close", {{"place", "walk-in 1"}, {"codes", kButter + " 4"}, {"step", "look"}}).status == 200);
  CHECK(tablet.send("/close", {{"place", ""}, {"step", "look"}}).status == 404);
  CHECK(tablet.send("/close", {{"place", "the moon"}, {"step", "look"}}).status == 404);
}

TEST_CASE("a day's record is read and reviewed by a second person", "[command][ledger][station][pages]") {
  const Station station;
  const Browser tablet = station.signed_in("JO");
  CHECK(station.browser("phone").get("/day/2026-11-25").status == 401);
  CHECK(tablet.get("/day").to.endsWith("/day/2026-11-25"));
  const Answer day = tablet.get("/day/2026-11-25");
  CHECK(day.status == 200);
  CHECK(day.body.contains("Chilli-lime butter"));
  CHECK(tablet.get("/day/2026-11-25?pdf=yes").body.startsWith("%PDF-"));
  CHECK(tablet.get("/day/2026-13-01").status == 404);
  const Answer reviewed = tablet.send("/day/2026-11-25", {{"note", "read with MK"}});
  CHECK(reviewed.status == 200);
  CHECK(reviewed.body.contains("Recorded:"));
  CHECK(tablet.get("/day/2026-11-25").body.contains("read with MK"));
  CHECK_FALSE(tablet.get("/day/2026-11-25").body.contains("not reviewed yet"));
}

TEST_CASE("who reviews a day alone has not reviewed what they recorded themselves, nor what was recorded since",
          "[command][ledger][station][pages]") {
  const Station station;  // MK has reviewed it
  const Browser tablet = station.signed_in("MK");
  const auto day = [&] { return tablet.get("/day/2026-11-25").body.replace(QChar(0x00A0), ' '); };
  CHECK(day().contains("Entries not reviewed yet by a second person: 7"));
  REQUIRE(tablet
              .send("/happened/" + kButter,
                    {{"event", "frozen"}, {"at", "2026-11-25 21:46"}, {"containers", "5"}, {"place", "freezer 1"}})
              .status == 200);
  CHECK(day().contains("Entries not reviewed yet by a second person: 8"));
}

TEST_CASE("a sheet is shown and had as PDF; what cannot be made says why", "[command][ledger][station][pages]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  CHECK(station.browser("phone").get("/sheets").status == 401);
  const Answer prep = tablet.get("/sheets?product=chilli-lime-butter&amount=4%20kg&number=7&kind=prep");
  CHECK(prep.status == 200);
  CHECK(prep.body.contains("Unsalted butter"));
  CHECK(tablet.get("/sheets?product=chilli-lime-butter&amount=4%20kg&kind=prep&pdf=yes").body.startsWith("%PDF-"));
  const Answer assembly = tablet.get("/sheets?product=black-bean-empanada&amount=48&kind=assembly");
  INFO(assembly.body.toStdString());
  CHECK(assembly.status == 200);
  for (const char* wrong :
       {"product=chilli-lime-butter&amount=much&kind=prep", "product=nothing&amount=1%20kg&kind=prep",
        "product=chilli-lime-butter&amount=4&kind=assembly"}) {
    const Answer refused = tablet.get(QStringLiteral("/sheets?") + QLatin1String(wrong));
    CHECK(refused.status == 422);
    CHECK_FALSE(refused.body.contains(QRegularExpression("[ >(]--")));  // no option; a token may have it within
  }
}

TEST_CASE("a lot's lineage is a picture, and lists that lead on", "[command][ledger][station][pages]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  const QString address = "/lineage/" + kButter + "?item=chilli-lime-butter";
  CHECK(station.browser("phone").get(address).status == 401);
  const Answer page = tablet.get(address);
  CHECK(page.status == 200);
  CHECK(page.body.contains("data:image/svg+xml;base64,"));
  CHECK(page.body.contains("MB-5521"));
  CHECK(tablet.get("/lineage/A26329CLB03X?item=chilli-lime-butter").status == 404);
}

TEST_CASE("a tub is divided on its lot's page", "[command][ledger][station][pages]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  const Form form{{"event", "split"}, {"at", "2026-11-25 21:45"}, {"containers", "5"}, {"kind", "tub"}};
  CHECK(tablet.send("/happened/" + kButter, form).status == 422);
  CHECK(tablet.send("/happened/" + kButter, form + Form{{"count", "2"}}).status == 200);
  CHECK(station.evening({"history", kButter}).out.contains("split, lot A26329CLB03L, container 5"));
}
