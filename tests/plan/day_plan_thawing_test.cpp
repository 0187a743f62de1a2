// When a frozen lot of a plan leaves the freezer.
#include "plan_run.h"

using namespace lardiner;
using namespace lardiner::plan;
using namespace lardiner::plan::kitchen;

namespace {

// When the only lot that the plan takes leaves the freezer.
std::optional<QDateTime> thaw_by(const OnHand& lot, const Order& order, const book::Book& book = small()) {
  const DayPlan plan = plan_of({order}, {lot}, book);
  REQUIRE(plan.takes.size() == 1);
  return plan.takes.front().thaw_by;
}

OnHand frozen(const char* item, const char* quantity) { return lot(item, quantity, "2026-12-01", book::State::Frozen); }

const auto kCakes = [](const char* due) { return order("fish-cake", "10 pieces", due); };

}  // namespace

TEST_CASE("a frozen lot leaves the freezer a day before the planned start; a chilled one is in none",
          "[plan][day_plan][thawing]") {
  const DayPlan plan = plan_of({kCakes("2026-10-10 14:00")}, {frozen("cod", "1 kg")});
  REQUIRE(plan.takes.size() == 1);
  CHECK(making(plan, "fish-cake").start == at("2026-10-10 06:00"));
  CHECK(plan.takes.front().thaw_by == at("2026-10-09 06:00"));
  CHECK_FALSE(thaw_by(lot("cod", "1 kg", "2026-10-12"), kCakes("2026-10-10 14:00")));
}

TEST_CASE("nothing leaves the freezer beforehand where thawing is a step of the making", "[plan][day_plan][thawing]") {
  book::Book book = small();
  book::Step thaw;
  thaw.kind = book::StepKind::Thaw;
  thaw.seconds = std::pair(3600, 3600);
  CHECK(thaw_by(frozen("cod", "1 kg"), kCakes("2026-10-08 14:00"), book));
  book.products[static_cast<size_t>(book.product_index.value(QStringLiteral("fish-cake")))].steps = {thaw};
  CHECK_FALSE(thaw_by(frozen("cod", "1 kg"), kCakes("2026-10-08 14:00"), book));
}

TEST_CASE("what needs no temperature control may thaw as it goes in", "[plan][day_plan][thawing]") {
  CHECK_FALSE(thaw_by(frozen("crumbs", "1 kg"), kCakes("2026-10-08 14:00")));
}

TEST_CASE("what goes out frozen stays in the freezer; what goes out thawed leaves it a day before it is due",
          "[plan][day_plan][thawing]") {
  const QByteArray thawed = life("thawed", "3 days"), kept = life("frozen", "2 months") + container();
  const book::Book chilled = read_kitchen({}, kept, thawed + kept);
  CHECK(thaw_by(frozen("fish-cake", "10 pieces"), kCakes("2026-10-08 14:00"), chilled) == at("2026-10-07 14:00"));
  const book::Book frozen_out = read_kitchen({}, kept, thawed + life("frozen", "2 months") + container("frozen"));
  CHECK_FALSE(thaw_by(frozen("fish-cake", "10 pieces"), kCakes("2026-10-08 14:00"), frozen_out));
}
