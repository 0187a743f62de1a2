// Tests of batch/use_by: the dates of inputs, and the cook that ends the clocks of raw ones.
#include "batch/use_by.h"
#include "use_by_question.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::ask;
using book::EndKind;
using book::State;

TEST_CASE("every TCS input caps the batch at its own use-by", "[batch][use_by][src:food-code-2022/3-501.17(C)]") {
  Question asked = seven_days("2026-06-03 10:00");
  asked.caps = {cap("salsa", "2026-06-08"), cap("beans", "2026-06-20")};
  CHECK(last_day(asked) == day("2026-06-08"));
  asked.caps.erase(asked.caps.begin());
  CHECK(last_day(asked) == day("2026-06-09"));
}

TEST_CASE("burgers cooked on Jun 1 go into chili on Jun 3: the chili ends on Jun 7",
          "[batch][use_by][src:snhd-datemarking/faq]") {
  const QDate burgers = last_day(seven_days("2026-06-01 12:00"));
  Question chili = seven_days("2026-06-03 12:00");
  chili.cooked_at = at("2026-06-03 13:00");
  chili.caps = {cap("burgers", qPrintable(burgers.toString(Qt::ISODate)))};
  CHECK(last_day(chili) == day("2026-06-07"));
}

TEST_CASE("tuna opened on day 1, salad made on day 3: four more days", "[batch][use_by][src:gilmer-wv/tuna]") {
  Question tuna = question("2026-06-01 09:00", {rule(State::Opened, days(7))});
  tuna.timeline = {event(Happening::Opened, "2026-06-01 09:00")};
  Question salad = seven_days("2026-06-03 09:00");
  salad.caps = {cap("tuna", qPrintable(last_day(tuna).toString(Qt::ISODate)))};
  CHECK(last_day(salad) == day("2026-06-07"));  // after day 3, four more days
  CHECK(day("2026-06-03").daysTo(last_day(salad)) == 4);
}

TEST_CASE("raw inputs cap too: raw fish with an earlier date caps a raw tray", "[batch][use_by]") {
  Question tray = question("2026-06-03 10:00", {rule(State::Chilled, days(3))});
  tray.caps = {cap("raw cod", "2026-06-04")};
  CHECK(last_day(tray) == day("2026-06-04"));
  tray.caps = {cap("raw cod", "2026-06-09")};
  CHECK(last_day(tray) == day("2026-06-05"));
}

TEST_CASE("a cook that met its minimum makes its day day 1", "[batch][use_by]") {
  Question asked = seven_days("2026-06-03 22:00");
  CHECK(last_day(asked) == day("2026-06-09"));
  asked.cooked_at = at("2026-06-04 01:00");
  CHECK(last_day(asked) == day("2026-06-10"));
  CHECK(use_by(asked)->reasons.front().rule == QStringLiteral("chilled, 7 days, day 1 is Thu 4 Jun 2026"));
}

TEST_CASE("no reading, no reset: without a cook day 1 is the day of the making", "[batch][use_by]") {
  Question asked = seven_days("2026-06-03 22:00");
  asked.cooked_at = std::nullopt;
  CHECK(last_day(asked) == day("2026-06-09"));
}

TEST_CASE("a cook ends the clocks of raw inputs only, on a reading that met the minimum", "[batch][use_by]") {
  CHECK(cook_ends_clock({.raw = true, .rework = false}, true));
  CHECK_FALSE(cook_ends_clock({.raw = true, .rework = false}, false));
  CHECK_FALSE(cook_ends_clock({.raw = false, .rework = false}, true));
}

TEST_CASE("rework keeps the oldest date through a cook", "[batch][use_by]") {
  CHECK_FALSE(cook_ends_clock({.raw = true, .rework = true}, true));
  Question asked = seven_days("2026-06-03 10:00");
  asked.cooked_at = at("2026-06-03 11:00");
  asked.caps = {cap("chicken tinga (rework)", "2026-06-05")};
  CHECK(last_day(asked) == day("2026-06-05"));
}

TEST_CASE("ready-to-eat inputs keep their date through cooking", "[batch][use_by]") {
  Question asked = seven_days("2026-06-03 10:00");
  asked.cooked_at = at("2026-06-03 11:00");
  asked.caps = {cap("cooked beans", "2026-06-06")};
  CHECK(last_day(asked) == day("2026-06-06"));
}

TEST_CASE("reheating does not restart the days", "[batch][use_by][src:jefferson-co/reheating]") {
  Question asked = seven_days("2026-06-01 10:00");
  Event reheated = event(Happening::Reheated, "2026-06-05 10:00", fahrenheit(165));
  reheated.seconds = 15;
  asked.timeline = {reheated};
  CHECK(last_day(asked) == day("2026-06-07"));
}

TEST_CASE("a cook before the making is refused", "[batch][use_by]") {
  Question asked = seven_days("2026-06-03 10:00");
  asked.cooked_at = at("2026-06-03 09:00");
  CHECK(refusal(asked) == QStringLiteral("cooked at Wed 3 Jun 2026 09:00, before it was made at Wed 3 Jun 2026 10:00\n"
                                         "  correct the time of one of the two"));
  asked.cooked_at = at("2026-06-03 10:00");
  CHECK(refusal(asked) == QString());
}

TEST_CASE("combined food keeps the earliest date", "[batch][use_by][src:food-code-2022/3-501.17(C)]") {
  Question asked = seven_days("2026-06-03 10:00");
  Cap first = cap("salsa", "2026-06-05");
  first.why = QStringLiteral("oldest part of it");
  asked.caps = {cap("salsa", "2026-06-07"), first};
  CHECK(last_day(asked) == day("2026-06-05"));
  CHECK(use_by(asked)->reasons.front().rule == QStringLiteral("salsa, lot L1: oldest part of it"));
}

TEST_CASE("a use-by always caps, of a shelf-stable input too", "[batch][use_by]") {
  Question asked = seven_days("2026-06-03 10:00");
  Cap oil = cap("sesame oil", "2026-06-04");
  oil.shelf_stable = true;
  asked.caps = {oil};
  CHECK(last_day(asked) == day("2026-06-04"));
}

TEST_CASE("a best-before of a shelf-stable input caps a dry product", "[batch][use_by]") {
  Question asked = question("2026-06-03 10:00", {rule(State::Ambient, months(6), EndKind::BestBefore)});
  asked.tcs = false;
  asked.caps = {best_before(cap("dried oregano", "2026-08-31"), true)};
  CHECK(last_day(asked) == day("2026-08-31"));
  CHECK(use_by(asked)->kind == EndKind::BestBefore);
  CHECK(use_by(asked)->warnings.empty());
}

TEST_CASE("a best-before of a shelf-stable input only warns in a short-lived product", "[batch][use_by]") {
  Question asked = seven_days("2026-06-03 10:00");
  asked.caps = {best_before(cap("dried oregano", "2026-06-05"), true)};
  CHECK(last_day(asked) == day("2026-06-09"));
  CHECK(use_by(asked)->warnings ==
        QStringList{QStringLiteral("dried oregano, lot L1: its best before, Fri 5 Jun 2026, comes before this date")});
  CHECK(use_by(asked)->kind == EndKind::UseBy);
}

TEST_CASE("a best-before that outlives the product is not spoken of", "[batch][use_by]") {
  Question asked = seven_days("2026-06-03 10:00");
  asked.caps = {best_before(cap("dried oregano", "2026-06-09"), true)};
  CHECK(use_by(asked)->warnings.empty());
}

TEST_CASE("a best-before of a chilled input caps", "[batch][use_by]") {
  Question asked = seven_days("2026-06-03 10:00");
  asked.caps = {best_before(cap("cream cheese", "2026-06-05"), false)};
  CHECK(last_day(asked) == day("2026-06-05"));
  CHECK(use_by(asked)->kind == EndKind::UseBy);
}

TEST_CASE("a frozen container warns of a best-before that comes before its own", "[batch][use_by]") {
  Question asked = seven_days("2026-06-03 10:00");
  asked.rules.push_back(rule(State::Frozen, months(3), EndKind::BestBefore));
  asked.timeline = {event(Happening::Frozen, "2026-06-04 10:00")};
  asked.caps = {best_before(cap("dried oregano", "2026-08-01"), true)};
  CHECK(use_by(asked)->warnings.size() == 1);
  asked.caps = {best_before(cap("dried oregano", "2026-12-01"), true)};
  CHECK(use_by(asked)->warnings.empty());
}
