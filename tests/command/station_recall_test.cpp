// A recall from the station: found by a supplier's lot, seen before it is opened, its sheet had, closed again.
#include "station.h"

using namespace lardiner::command;

namespace {

const QString kBought = QStringLiteral("/recall/MB-5521?item=butter-unsalted");

QList<QPair<QString, QString>> step(const QString& what, const QString& reason, const QString& of = {}) {
  return {{"item", "butter-unsalted"}, {"step", what}, {"reason", reason}, {"of", of}};
}

}  // namespace

TEST_CASE("find knows a lot by what can be read of its code, and a day", "[command][ledger][station]") {
  const Station station;
  const Browser phone = station.browser("phone");
  CHECK(phone.get("/find?q=5521").body.contains("/lot/MB-5521?item=butter-unsalted"));
  CHECK(phone.get("/find?q=MB-5521").to.endsWith("/lot/MB-5521?item=butter-unsalted"));
  CHECK(phone.get("/find?q=2026-11-25").body.contains("/lot/" + kButter));
  for (const char* nothing : {"55", "5_21", "%25521", "2026-11-20"}) {
    INFO(nothing);
    CHECK_FALSE(phone.get("/find?q=" + QString::fromLatin1(nothing)).body.contains("/lot/MB-5521"));
  }
}

TEST_CASE("what a recall reaches is seen before it is opened, by who is signed in and nobody else",
          "[command][ledger][station]") {
  const Station station;
  const QString before = station.heads();
  const Answer stranger = station.browser("stranger").get(kBought);
  CHECK(stranger.status == 401);
  CHECK_FALSE(stranger.body.contains("Meadowfold"));
  CHECK(station.browser("stranger").get("/recall-sheet/MB-5521?item=butter-unsalted").status == 401);
  const Browser plain = station.signed_in("JO");
  const QString seen = plain.get(kBought).body;
  CHECK(seen.contains("Meadowfold"));
  CHECK(seen.contains("NOT OPENED: what would be recalled"));
  CHECK(seen.contains(kButter));
  CHECK(seen.contains("strong word"));
  CHECK_FALSE(seen.contains("value=\"open\""));
  CHECK(plain.send("/recall/MB-5521", step("open", "metal found")).status == 403);
  CHECK(plain.get("/recall/MB-5521?item=nothing").status == 404);
  CHECK(station.strong().get(kBought).body.contains("value=\"open\""));
  CHECK(station.heads() == before);
}

TEST_CASE("a recall is opened with a reason, marks all that it reaches, and is closed again",
          "[command][ledger][station]") {
  const Station station;
  const Browser chef = station.strong(), phone = station.browser("phone");
  const QString before = station.heads();
  CHECK(chef.send("/recall/MB-5521", step("open", "  ")).status == 422);
  CHECK(station.heads() == before);
  const Answer opened = chef.send("/recall/MB-5521", step("open", "metal <found>"));
  CHECK(opened.status == 200);
  CHECK(opened.body.contains("metal &lt;found&gt;"));
  CHECK_FALSE(opened.body.contains("value=\"open\""));
  CHECK(phone.get("/lot/" + kButter).body.contains("IN A RECALL: DO NOT USE"));
  CHECK_FALSE(phone.get("/lot/" + kButter).body.contains("metal"));
  CHECK(chef.get("/recall/" + kButter + "?item=chilli-lime-butter")
            .body.contains("/recall/MB-5521?item=butter-unsalted"));
  const QString of = opened.body.section("name=\"of\" value=\"", 1).section('"', 0, 0);
  CHECK(of.startsWith("A-"));
  const QString open = station.heads();
  CHECK(chef.send("/recall/MB-5521", step("close", "", of)).status == 422);
  CHECK(chef.send("/recall/MB-5521", step("close", "another lot", "A-1")).status == 422);
  CHECK(station.heads() == open);
  CHECK(chef.send("/recall/MB-5521", step("close", "another lot", of)).status == 200);
  CHECK_FALSE(phone.get("/lot/" + kButter).body.contains("IN A RECALL"));
}

TEST_CASE("the recall sheet of the page is that of the command", "[command][ledger][station]") {
  const Station station;
  const Browser chef = station.strong();
  REQUIRE(chef.send("/recall/MB-5521", step("open", "metal found")).status == 200);
  const QString jar = station.folder.path("strong.jar");
  const QString address = station.Station::at + "/recall-sheet/MB-5521?item=butter-unsalted";
  REQUIRE(station.folder.run("curl", {"-s", "-b", jar, "-o", "page.pdf", address}).status == 0);
  REQUIRE(station.RecordedDay::at("2026-11-25T21:50", {"recall", "MB-5521", "--out", "command.pdf"}).status == 0);
  const auto text = [&](const QString& file) { return station.folder.run("pdftotext", {"-layout", file, "-"}).out; };
  CHECK(text("page.pdf").contains("metal found"));
  CHECK(text("page.pdf") == text("command.pdf"));
}
