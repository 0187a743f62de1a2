// A form that is refused comes back with all that was typed, and why beside it.
#include "station.h"

using namespace lardiner::command;

TEST_CASE("a refused form of a lot keeps all that was typed, and one that was taken begins anew",
          "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  const QList<QPair<QString, QString>> typed{
      {"event", "discarded"},      {"at", "2026-11-25 21:46"}, {"containers", "5, 99"},      {"temperature", "3 \"F"},
      {"place", "walk-in <left>"}, {"left", "half"},           {"reason", "dropped & split"}};
  const Answer refused = tablet.send("/happened/" + kButter, typed);
  CHECK(refused.status == 422);
  const QString page = refused.body.simplified();
  CHECK(page.contains("value=\"discarded\" required checked"));
  CHECK(page.contains("name=\"at\" value=\"2026-11-25 21:46\""));
  CHECK(page.contains("name=\"containers\" value=\"5, 99\""));
  CHECK(page.contains("name=\"temperature\" value=\"3 &quot;F\""));
  CHECK(page.contains("name=\"place\" value=\"walk-in &lt;left&gt;\""));
  CHECK(page.contains("<option value=\"half\" selected>"));
  CHECK(page.contains("name=\"reason\" value=\"dropped &amp; split\""));
  CHECK(page.section("class=\"happened\"", 1).section("</form>", 0, 0).contains("role=\"alert\""));
  const Answer taken = tablet.send(
      "/happened/" + kButter,
      {{"event", "discarded"}, {"at", "2026-11-25 21:46"}, {"containers", "5"}, {"reason", "dropped & split"}});
  CHECK(taken.status == 200);
  CHECK_FALSE(taken.body.contains("required checked"));
  CHECK_FALSE(taken.body.contains("name=\"reason\" value=\"dropped"));
}

TEST_CASE("labels that are refused keep which were asked for, in their own form", "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  const Answer refused = tablet.send("/labels/" + kButter, {{"containers", "77"}, {"medium", "side"}});
  CHECK(refused.status == 422);
  CHECK(refused.body.contains("name=\"containers\" value=\"77\""));
  CHECK(refused.body.contains("<option value=\"side\" selected>"));
  CHECK(refused.body.section("class=\"print\"", 1).section("</form>", 0, 0).contains("role=\"alert\""));
  CHECK_FALSE(refused.body.section("class=\"happened\"", 1).section("</form>", 0, 0).contains("role=\"alert\""));
}

TEST_CASE("a refused opening of a package keeps its time, and a refused batch all of its form",
          "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  const Answer opened =
      tablet.send("/open/MD-8841", {{"item", "milk-whole"}, {"what", "opened"}, {"made_at", "2026-11-25 26:30"}});
  CHECK(opened.status == 422);
  CHECK(opened.body.contains("name=\"made_at\" value=\"2026-11-25 26:30\""));
  const Answer made = tablet.send("/make/chilli-lime-butter", {{"quantity", "six"},
                                                               {"containers", "12 tub 500 g"},
                                                               {"made_at", "2026-11-25 19:00"},
                                                               {"number", "9"},
                                                               {"core", "165 °F"},
                                                               {"step", "record"}});
  CHECK(made.status == 422);
  for (const char* kept : {"value=\"six\"", "value=\"12 tub 500 g\"", "value=\"2026-11-25 19:00\"",
                           "name=\"number\" value=\"9\"", "value=\"165 °F\""}) {
    INFO(kept);
    CHECK(made.body.contains(QString::fromUtf8(kept)));
  }
}
