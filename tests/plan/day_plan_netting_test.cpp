// What on hand serves what, what is passed over, and what is made and bought beyond it.
#include "plan_run.h"

using namespace lardiner;
using namespace lardiner::plan;
using namespace lardiner::plan::kitchen;

namespace {

using Why = PassedOver::Why;

book::Product& product_of(book::Book& book, const char* id) {
  return book.products[static_cast<size_t>(book.product_index.value(QLatin1String(id)))];
}

book::Ingredient& ingredient_of(book::Book& book, const char* id) {
  return book.ingredients[static_cast<size_t>(book.ingredient_index.value(QLatin1String(id)))];
}

// Ten cakes due on Thursday, good to the end of Friday.
std::vector<Order> ten_cakes() { return {order("fish-cake", "10 pieces", "2026-10-08 14:00", "2 days")}; }

std::vector<Why> reasons(const DayPlan& plan) {
  std::vector<Why> all;
  for (const PassedOver& passed : plan.passed_over) all.push_back(passed.why);
  return all;
}

// Whether the lot is used for ten cakes; else it is passed over for `why`.
bool used(const OnHand& lot, Why why, const book::Book& book = small()) {
  const DayPlan plan = plan_of(ten_cakes(), {lot}, book);
  CHECK(plan.unmet.empty());
  const bool taken = !plan.takes.empty();
  CHECK(reasons(plan) == (taken ? std::vector<Why>{} : std::vector<Why>{why}));
  return taken;
}

}  // namespace

TEST_CASE("what is on hand is taken first, and the rest is made", "[plan][day_plan][netting]") {
  const DayPlan plan =
      plan_of(ten_cakes(), {lot("fish-cake", "4 pieces", "2026-10-09"), lot("spiced-butter", "50 g", "2026-10-09"),
                            lot("cod", "100 g", "2026-10-09")});
  CHECK(taken(plan, "fish-cake") == amount("4 pieces"));
  CHECK(making(plan, "fish-cake").output == amount("6 pieces"));
  CHECK(making(plan, "spiced-butter").output == amount("70 g"));
  CHECK(bought(plan, "cod") == amount("425 g"));  // 420 g edible are 525 g as purchased
}

TEST_CASE("a take says what it is for", "[plan][day_plan][netting]") {
  const DayPlan plan =
      plan_of(ten_cakes(), {lot("fish-cake", "4 pieces", "2026-10-09"), lot("cod", "100 g", "2026-10-09")});
  REQUIRE(plan.takes.size() == 2);
  CHECK(plan.takes[0].what.kind == For::Kind::Making);
  CHECK(plan.makings[plan.takes[0].what.index].product->id == QStringLiteral("fish-cake"));
  CHECK(plan.takes[1].what.kind == For::Kind::Order);
  CHECK(plan.takes[1].what.index == 0);
}

TEST_CASE("of two lots that are good enough the first to expire goes first", "[plan][day_plan][netting]") {
  const DayPlan plan = plan_of({order("spiced-butter", "1 kg", "2026-10-08 14:00")},
                               {lot("spiced-butter", "1 kg", "2026-10-12"), lot("spiced-butter", "700 g", "2026-10-09"),
                                lot("spiced-butter", "900 g", "2026-10-07")});
  REQUIRE(plan.takes.size() == 2);
  CHECK(plan.on_hand[plan.takes[0].lot].use_by->end == at("2026-10-10"));
  CHECK(plan.takes[0].quantity == amount("700 g"));
  CHECK(plan.takes[1].quantity == amount("300 g"));
  CHECK(plan.makings.empty());
}

TEST_CASE("a lot must still be as good as the order wants it", "[plan][day_plan][netting]") {
  CHECK(used(lot("fish-cake", "10 pieces", "2026-10-09"), Why::TooShort));
  CHECK_FALSE(used(lot("fish-cake", "10 pieces", "2026-10-08"), Why::TooShort));
  CHECK_FALSE(used(lot("fish-cake", "10 pieces", "2026-10-09 23:59"), Why::TooShort));
}

TEST_CASE("a lot that goes into a making must be good for as long as what comes of it", "[plan][day_plan][netting]") {
  CHECK(used(lot("spiced-butter", "1 kg", "2026-10-09"), Why::TooShort));
  CHECK_FALSE(used(lot("spiced-butter", "1 kg", "2026-10-08"), Why::TooShort));
  CHECK(used(lot("cod", "1 kg", "2026-10-09"), Why::TooShort));
  CHECK_FALSE(used(lot("cod", "1 kg", "2026-10-08"), Why::TooShort));
}

TEST_CASE("a cook ends the clock of a raw lot: it must be good until it is cooked", "[plan][day_plan][netting]") {
  book::Book book =
      read_kitchen(product("poached-cod", "POC", "yes", line("cod", "1 kg") + line("cream", "100 g"),
                           "makes = \"1 kg\"\nprocess = \"cook\"\n" + life("chilled", "6 days") + container()));
  const auto takes = [&](const OnHand& lot) {
    return !plan_of({order("poached-cod", "1 kg", "2026-10-08 14:00", "5 days")}, {lot}, book).takes.empty();
  };
  CHECK(takes(lot("cod", "1 kg", "2026-10-08")));
  CHECK_FALSE(takes(lot("cod", "1 kg", "2026-10-07")));
  CHECK_FALSE(takes(lot("cream", "1 kg", "2026-10-08")));  // ready to eat: no cook renews it
  CHECK(takes(lot("cream", "1 kg", "2026-10-12")));
  book::Step marinate, roast;
  marinate.kind = book::StepKind::Marinate;
  marinate.seconds = std::pair(3600, 3600);
  roast.kind = book::StepKind::Cook;
  roast.seconds = std::pair(3600, 3600);
  product_of(book, "poached-cod").steps = {marinate, roast};  // from 12:00, out of the oven at 14:00
  CHECK(takes(lot("cod", "1 kg", "2026-10-08 14:01")));
  CHECK_FALSE(takes(lot("cod", "1 kg", "2026-10-08 14:00")));
}

TEST_CASE("a lot past its date is passed over, whether it is asked for or not", "[plan][day_plan][netting]") {
  CHECK_FALSE(used(lot("fish-cake", "10 pieces", "2026-10-06"), Why::PastDate));
  CHECK(reasons(plan_of({}, {lot("hake", "1 kg", "2026-10-06")})) == std::vector{Why::PastDate});
  CHECK(reasons(plan_of({}, {lot("hake", "1 kg", "2026-10-07")})).empty());
}

TEST_CASE("a lot that needs temperature control and has no date is passed over where it is asked for",
          "[plan][day_plan][netting]") {
  CHECK_FALSE(used(lot("cod", "1 kg", nullptr), Why::NoDate));
  CHECK(used(lot("crumbs", "1 kg", nullptr), Why::NoDate));
  CHECK(plan_of(ten_cakes(), {lot("hake", "1 kg", nullptr)}).passed_over.empty());
}

TEST_CASE("the best-before of what is shelf-stable must only be good when it is used", "[plan][day_plan][netting]") {
  const auto best_before = [](const char* item, const char* end) {
    return lot(item, "1 kg", end, book::State::Ambient, book::EndKind::BestBefore);
  };
  CHECK(used(best_before("crumbs", "2026-10-08"), Why::TooShort));
  CHECK_FALSE(used(best_before("crumbs", "2026-10-07"), Why::TooShort));
  // In a dry product it is the date of the whole.
  const auto seasoning = [&](const char* end) {
    return plan_of({order("seasoning", "1 kg", "2026-10-08 14:00", "30 days")}, {best_before("salt", end)})
        .takes.size();
  };
  CHECK(seasoning("2026-10-20") == 0);
  CHECK(seasoning("2026-11-06") == 1);
}

TEST_CASE("a frozen lot is used where the book says that it keeps long enough once thawed",
          "[plan][day_plan][netting]") {
  // Cod keeps 2 days thawed. It leaves the freezer a day before, on Wed 7, and is good to the end of Thu 8.
  const auto thawed = [](const char* life) {
    const DayPlan plan = plan_of({order("fish-cake", "10 pieces", "2026-10-08 14:00", life)},
                                 {lot("cod", "1 kg", nullptr, book::State::Frozen)});
    if (plan.takes.empty()) CHECK(reasons(plan) == std::vector{Why::FrozenUnknown});
    return !plan.takes.empty();
  };
  CHECK(thawed("1 days"));
  CHECK_FALSE(thawed("2 days"));
  CHECK_FALSE(used(lot("butter-unsalted", "1 kg", "2026-12-01", book::State::Frozen), Why::FrozenUnknown));
  CHECK(used(lot("butter-unsalted", "1 kg", "2026-12-01"), Why::FrozenUnknown));
}

TEST_CASE("a making waits for the lots that must thaw for it; with less than a day left they are passed over",
          "[plan][day_plan][netting]") {
  const auto plan_for = [](const char* due) {
    return plan_of({order("fish-cake", "10 pieces", due)}, {lot("cod", "1 kg", nullptr, book::State::Frozen)});
  };
  const DayPlan in_time = plan_for("2026-10-08 06:00");  // kNow is the day before, at 6
  CHECK(taken(in_time, "cod") == amount("875 g"));
  CHECK(making(in_time, "fish-cake").earliest == at("2026-10-08 06:00"));
  CHECK(making(in_time, "fish-cake").start == at("2026-10-08 06:00"));
  const DayPlan too_late = plan_for("2026-10-08 05:59");
  CHECK(too_late.takes.empty());
  CHECK(reasons(too_late) == std::vector{Why::NoTimeToThaw});
  CHECK(too_late.unmet.empty());  // cod is bought
}

TEST_CASE("a making does not begin so soon that what has thawed for it is over too early",
          "[plan][day_plan][netting]") {
  // 2 days thawed. The cakes must be good on Sat 10: taken out on Fri 9, not today.
  const DayPlan plan = plan_of({order("fish-cake", "10 pieces", "2026-10-10 14:00", "1 day")},
                               {lot("cod", "1 kg", nullptr, book::State::Frozen)});
  CHECK(taken(plan, "cod") == amount("875 g"));
  CHECK(making(plan, "fish-cake").earliest == at("2026-10-10 00:00"));
}

TEST_CASE("a thawing that is a step of the making starts the thawed days with it", "[plan][day_plan][netting]") {
  book::Book book = small();
  book::Step thaw;
  thaw.kind = book::StepKind::Thaw;
  thaw.seconds = std::pair(3600, 3600);
  product_of(book, "fish-cake").steps.push_back(thaw);
  CHECK(used(lot("cod", "1 kg", nullptr, book::State::Frozen), Why::FrozenUnknown, book));
}

TEST_CASE("a frozen lot goes out as it is where orders are kept frozen; a chilled one does not",
          "[plan][day_plan][netting]") {
  const book::Book book =
      read_kitchen({}, life("frozen", "2 months") + container(), life("frozen", "2 months") + container("frozen"));
  const auto out = [&](book::State state, const char* end) {
    return taken(plan_of({order("fish-cake", "10 pieces", "2026-10-08 14:00", "20 days")},
                         {lot("fish-cake", "10 pieces", end, state, book::EndKind::BestBefore)}, book),
                 "fish-cake");
  };
  CHECK(out(book::State::Frozen, "2026-11-20") == amount("10 pieces"));
  CHECK(out(book::State::Frozen, "2026-10-20").amount == 0);
  CHECK(out(book::State::Chilled, "2026-11-20").amount == 0);
}

TEST_CASE("what cannot be made in time is served from the shelf before what can", "[plan][day_plan][netting]") {
  book::Book book = small();
  book::Step work;
  work.seconds = std::pair(3600, 3600);
  product_of(book, "fish-cake").steps.push_back(work);
  const DayPlan plan =
      plan_of({order("fish-cake", "5 pieces", "2026-10-07 12:00"), order("fish-cake", "5 pieces", "2026-10-07 06:30")},
              {lot("fish-cake", "5 pieces", "2026-10-08")}, book);
  CHECK(plan.unmet.empty());
  REQUIRE(plan.takes.size() == 1);
  CHECK(plan.orders[plan.takes[0].what.index].due == at("2026-10-07 06:30"));
}

TEST_CASE("what no making keeps long enough for is served from the shelf before what can be made",
          "[plan][day_plan][netting]") {
  const DayPlan plan = plan_of({order("fish-cake", "5 pieces", "2026-10-08 08:00"),
                                order("fish-cake", "5 pieces", "2026-10-08 12:00", "4 days")},
                               {lot("fish-cake", "5 pieces", "2026-10-20")});
  CHECK(plan.unmet.empty());
  REQUIRE(plan.takes.size() == 1);
  CHECK(plan.takes[0].what.index == 1);
  CHECK(making(plan, "fish-cake").output == amount("5 pieces"));
}

TEST_CASE("makings are whole multiples of what the book says; the rest is for nobody yet",
          "[plan][day_plan][amounts]") {
  book::Book book = small();
  product_of(book, "spiced-butter").made_in = amount("1 kg");
  const DayPlan plan = plan_of(ten_cakes(), {}, book);
  CHECK(making(plan, "spiced-butter").output == amount("1 kg"));
  REQUIRE(making(plan, "spiced-butter").wanted_by.size() == 1);
  CHECK(making(plan, "spiced-butter").wanted_by[0].quantity == amount("200 g"));
  CHECK(making(plan, "seasoning").output == amount("100 g"));
  product_of(book, "spiced-butter").made_in = amount("200 g");
  CHECK(making(plan_of(ten_cakes(), {}, book), "spiced-butter").output == amount("200 g"));
}

TEST_CASE("to pieces the make-over is added, in whole pieces", "[plan][day_plan][amounts]") {
  book::Book book = small();
  product_of(book, "fish-cake").make_over = {3, 100};
  CHECK(making(plan_of(ten_cakes(), {}, book), "fish-cake").output == amount("11 pieces"));
  CHECK(making(plan_of({order("fish-cake", "100 pieces", "2026-10-08 14:00")}, {}, book), "fish-cake").output ==
        amount("103 pieces"));
}

TEST_CASE("pieces ordered by weight are whole pieces", "[plan][day_plan][amounts]") {
  CHECK(making(plan_of({order("fish-cake", "1.01 kg", "2026-10-08 14:00")}), "fish-cake").output ==
        amount("11 pieces"));
}

TEST_CASE("a level is made up to after all needs are netted, in whole multiples", "[plan][day_plan][level]") {
  book::Book book = small();
  product_of(book, "spiced-butter").keep_on_hand = amount("2 kg");
  product_of(book, "spiced-butter").made_in = amount("500 g");
  const auto made = [&](const char* on_hand) {
    return making(plan_of(ten_cakes(), {lot("spiced-butter", on_hand, "2026-10-10")}, book), "spiced-butter").output;
  };
  CHECK(made("1 kg") == amount("1.5 kg"));   // 200 g go into the cakes, 1.2 kg lack
  CHECK(made("100 g") == amount("2.5 kg"));  // 100 g for the cakes and 2 kg
  CHECK_FALSE(makes(plan_of(ten_cakes(), {lot("spiced-butter", "2.2 kg", "2026-10-10")}, book), "spiced-butter"));
  // What is past its date at the end of the last due day is no level.
  const DayPlan old = plan_of(ten_cakes(), {lot("spiced-butter", "3 kg", "2026-10-07")}, book);
  CHECK(making(old, "spiced-butter").output == amount("2.5 kg"));
}

TEST_CASE("a level alone, without orders, draws on the levels of what is in it", "[plan][day_plan][level]") {
  book::Book book = small();
  product_of(book, "spiced-butter").keep_on_hand = amount("2 kg");
  product_of(book, "seasoning").keep_on_hand = amount("1 kg");
  const DayPlan plan = plan_of({}, {lot("seasoning", "1 kg", nullptr, book::State::Ambient)}, book);
  CHECK(making(plan, "spiced-butter").output == amount("2 kg"));
  REQUIRE(making(plan, "spiced-butter").wanted_by.size() == 1);
  CHECK(making(plan, "spiced-butter").wanted_by[0].kind == For::Kind::Level);
  CHECK(taken(plan, "seasoning") == amount("200 g"));
  CHECK(making(plan, "seasoning").output == amount("200 g"));
}

TEST_CASE("a level that cannot be made is told as such", "[plan][day_plan][level]") {
  book::Book book =
      read_kitchen(product("dip", "DIP", "yes", line("cream", "1 cup"), life("chilled", "3 days") + container()));
  product_of(book, "dip").keep_on_hand = amount("1 kg");
  const DayPlan plan = plan_of({}, {}, book);
  CHECK_FALSE(only_unmet(plan).order);
  CHECK(only_unmet(plan).product == QStringLiteral("dip"));
  CHECK(only_unmet(plan).quantity == amount("1 kg"));
  CHECK(only_unmet(plan).why == Unmet::Why::NoWeight);
}

TEST_CASE("what is bought is counted in whole buying units, once for all makings", "[plan][day_plan][buying]") {
  book::Book book = small();
  ingredient_of(book, "cod").bought_by = amount("5 kg");
  const DayPlan plan = plan_of(
      {order("fish-cake", "60 pieces", "2026-10-08 14:00"), order("fish-cake", "20 pieces", "2026-10-12 14:00")}, {},
      book);
  const auto cod = std::find_if(plan.buys.begin(), plan.buys.end(),
                                [](const Buy& b) { return b.ingredient->id == QStringLiteral("cod"); });
  REQUIRE(cod != plan.buys.end());
  CHECK(cod->need == amount("7 kg"));
  CHECK(cod->units == 2);
  CHECK(cod->buy == amount("10 kg"));
  const auto first = std::find_if(plan.makings.begin(), plan.makings.end(),
                                  [](const PlannedMaking& m) { return m.product->id == QStringLiteral("fish-cake"); });
  CHECK(cod->by == first->start);
  const auto crumbs = std::find_if(plan.buys.begin(), plan.buys.end(),
                                   [](const Buy& b) { return b.ingredient->id == QStringLiteral("crumbs"); });
  REQUIRE(crumbs != plan.buys.end());
  CHECK_FALSE(crumbs->units);
  CHECK(crumbs->buy == crumbs->need);
}

TEST_CASE("exactly so many buying units are not one more", "[plan][day_plan][buying]") {
  book::Book book = small();
  ingredient_of(book, "cod").bought_by = amount("875 g");
  const DayPlan plan = plan_of(ten_cakes(), {}, book);
  const auto cod = std::find_if(plan.buys.begin(), plan.buys.end(),
                                [](const Buy& b) { return b.ingredient->id == QStringLiteral("cod"); });
  REQUIRE(cod != plan.buys.end());
  CHECK(cod->units == 1);
}

TEST_CASE("what is always there is not bought", "[plan][day_plan][buying]") {
  book::Book book = read_kitchen(product("lime-syrup", "LIS", "no", line("lime", "1 kg") + line("salt", "1 kg"),
                                         "makes = \"2 kg\"\n" + life("ambient", "1 months") + container("ambient")));
  const auto bought = [&] { return plan_of({order("lime-syrup", "2 kg", "2026-10-08 14:00")}, {}, book).buys.size(); };
  CHECK(bought() == 2);
  ingredient_of(book, "salt").always_there = true;
  CHECK(bought() == 1);
}

TEST_CASE("what is bought by the piece weighs what the book's measure says, trimmed", "[plan][day_plan][buying]") {
  // 60 g edible of 40 % are 150 g a lime; 1 kg edible is 2.5 kg, 17 limes.
  book::Book book = read_kitchen(product("lime-syrup", "LIS", "no", line("lime", "1 kg"),
                                         "makes = \"1 kg\"\n" + life("ambient", "1 months") + container("ambient")));
  ingredient_of(book, "lime").bought_by = amount("1 piece");
  const DayPlan plan = plan_of({order("lime-syrup", "1 kg", "2026-10-08 14:00")}, {}, book);
  REQUIRE(plan.buys.size() == 1);
  CHECK(plan.buys[0].need == amount("2.5 kg"));
  CHECK(plan.buys[0].units == 17);
  CHECK(plan.buys[0].buy == amount("17 pieces"));
  const DayPlan there =
      plan_of({order("lime-syrup", "1 kg", "2026-10-08 14:00")}, {lot("lime", "10 pieces", nullptr)}, book);
  CHECK(there.buys[0].need == amount("1 kg"));
}

TEST_CASE("graded pieces are bought by the weight that holds them for sure", "[plan][day_plan][buying]") {
  const QByteArray figs = ingredient("fig", "no", "", "\"none\"", "count_grade = \"21/25 per lb\"\n");
  const book::Book book = read_kitchen(figs + product("fig-plate", "FIP", "yes", line("fig", "42 pieces"),
                                                      "makes = \"800 g\"\n" + life("chilled", "2 days") + container()));
  const auto needed = [&](std::vector<OnHand> lots) {
    return bought(plan_of({order("fig-plate", "800 g", "2026-10-08 14:00")}, std::move(lots), book), "fig");
  };
  CHECK(needed({}) == amount("2 lb"));  // at worst 21 to the pound
  // Of 25 pieces that are there nobody knows but that they weigh a pound at the least.
  CHECK(needed({lot("fig", "25 pieces", "2026-10-10")}) == amount("1 lb"));
}
