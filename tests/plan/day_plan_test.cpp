// The day's plan by hand: three levels, amounts, windows.
#include "plan_run.h"

using namespace lardiner;
using namespace lardiner::plan;
using namespace lardiner::plan::kitchen;

TEST_CASE("an order goes through three levels to what must be bought", "[plan][day_plan]") {
  // 24 cakes of 100 g: 1.68 kg cod (2.1 kg at 80 %), 480 g butter (432 g and 48 g seasoning), 240 g crumbs.
  const DayPlan plan = plan_of({order("fish-cake", "24 pieces", "2026-10-08 14:00")});
  CHECK(plan.unmet.empty());
  REQUIRE(plan.makings.size() == 3);
  CHECK(making(plan, "fish-cake").output == amount("24 pieces"));
  CHECK(making(plan, "fish-cake").makings == measure::Ratio(12, 5));
  CHECK(making(plan, "spiced-butter").output == amount("480 g"));
  CHECK(making(plan, "seasoning").output == amount("48 g"));
  CHECK(bought(plan, "cod") == amount("2.1 kg"));
  CHECK(bought(plan, "butter-unsalted") == amount("432 g"));
  CHECK(bought(plan, "paprika") == amount("28.8 g"));
  CHECK(bought(plan, "salt") == amount("19.2 g"));
  CHECK(bought(plan, "crumbs") == amount("240 g"));
}

TEST_CASE("nothing ordered, nothing made", "[plan][day_plan]") {
  const DayPlan plan = plan_of({}, {lot("cod", "2 kg", "2026-10-08")});
  CHECK(plan.makings.empty());
  CHECK(plan.takes.empty());
  CHECK(plan.buys.empty());
  CHECK(plan.unmet.empty());
  CHECK(plan.passed_over.empty());
}
