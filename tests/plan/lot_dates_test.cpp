// Until when a lot on hand is good: its label, and what the kitchen's own rules say less.
#include "plan/lot_dates.h"

#include "plan/drawn_lots.h"
#include "plan_run.h"

using namespace lardiner;
using namespace lardiner::plan;
using namespace lardiner::plan::kitchen;

namespace {

using book::EndKind;
using book::State;
using Why = PassedOver::Why;

OnHand prepared(OnHand lot, const char* when) {
  lot.prepared = at(when);
  return lot;
}

// The first instant at which it is past; invalid where none is known.
QDateTime end_of(const OnHand& lot, const book::Book& book = small()) {
  const Calendar calendar(kZone, at(kNow));
  Keeping keeping(book, calendar);
  const std::optional<batch::StatedEnd> date = LotDates(book, {lot}, keeping, calendar).of(lot);
  return date ? date->end : QDateTime();
}

// Whether the plan takes it for ten cakes on the next day; else it is passed over for `why`.
bool used(const OnHand& lot, Why why) {
  const DayPlan plan = plan_of({order("fish-cake", "10 pieces", "2026-10-08 14:00")}, {lot});
  if (!plan.takes.empty()) return plan.passed_over.empty();
  REQUIRE(plan.passed_over.size() == 1);
  CHECK(plan.passed_over.front().why == why);
  return false;
}

bool drawn(const OnHand& lot) {
  book::Weighing weighing(small());
  return !drawn_lots(small(), weighing, {{lot.item, amount("100 g")}}, {lot}, QDate(2026, 10, 7)).empty();
}

}  // namespace

TEST_CASE("a lot of ours is good no longer than the book's life from its preparation", "[plan][lot_dates]") {
  // Spiced butter keeps 5 days, the day of preparation being the first.
  const char* const late = "2026-10-20";
  CHECK(end_of(prepared(lot("spiced-butter", "1 kg", late), "2026-10-06 09:00")) == at("2026-10-11"));
  CHECK(end_of(prepared(lot("spiced-butter", "1 kg", late), "2026-10-06")) == at("2026-10-11"));
  CHECK(end_of(lot("spiced-butter", "1 kg", late)) == at("2026-10-21"));
  CHECK(end_of(prepared(lot("spiced-butter", "1 kg", "2026-10-08"), "2026-10-06 09:00")) == at("2026-10-09"));
}

TEST_CASE("what the book gives from a preparation may be over already", "[plan][lot_dates]") {
  const auto butter = [](const char* when) { return prepared(lot("spiced-butter", "1 kg", "2026-10-20"), when); };
  CHECK(used(butter("2026-10-04 23:30"), Why::PastDate));  // to the end of Thu 8
  CHECK_FALSE(used(butter("2026-10-03 23:30"), Why::TooShort));
  CHECK_FALSE(used(butter("2026-10-02 00:30"), Why::PastDate));
  CHECK(drawn(butter("2026-10-03 00:30")));
  CHECK_FALSE(drawn(butter("2026-10-02 23:30")));
}

TEST_CASE("the adopted rule set's days bound a ready-to-eat lot too", "[plan][lot_dates]") {
  const book::Book long_kept = read_kitchen(
      product("lime-sauce", "LIS", "yes", line("lime", "1 kg"), "makes = \"1 kg\"\n" + life("chilled", "7 days")));
  CHECK(end_of(prepared(lot("lime-sauce", "1 kg", "2026-11-20"), "2026-10-06"), long_kept) == at("2026-10-13"));
}

TEST_CASE("an ambient lot of ours is good no longer than its best-before from its preparation", "[plan][lot_dates]") {
  const auto seasoning = [](const char* end, const char* when) {
    return prepared(lot("seasoning", "1 kg", end, State::Ambient, EndKind::BestBefore), when);
  };
  CHECK(end_of(seasoning("2027-10-01", "2026-10-01")) == at("2027-04-02"));
  CHECK(end_of(seasoning("2026-12-01", "2026-10-01")) == at("2026-12-02"));
  CHECK(end_of(seasoning(nullptr, "2026-10-01")) == at("2027-04-02"));
  CHECK(used(seasoning(nullptr, "2026-05-01"), Why::PastDate));  // only quality counts in the butter
  CHECK_FALSE(used(seasoning(nullptr, "2026-04-01"), Why::PastDate));
}

TEST_CASE("a preparation makes up for no date of what needs temperature control", "[plan][lot_dates]") {
  CHECK_FALSE(used(prepared(lot("spiced-butter", "1 kg", nullptr), "2026-10-06"), Why::NoDate));
  CHECK_FALSE(drawn(prepared(lot("spiced-butter", "1 kg", nullptr), "2026-10-06")));
}

TEST_CASE("the days of a lot that was frozen, or thawed, or opened, are not counted from its preparation",
          "[plan][lot_dates]") {
  for (const State state : {State::Frozen, State::Thawed, State::Opened})
    CHECK(end_of(prepared(lot("spiced-butter", "1 kg", "2026-10-20", state), "2026-10-06")) == at("2026-10-21"));
}

TEST_CASE("a best-before of what needs temperature control is no use-by once it is thawed or opened",
          "[plan][lot_dates]") {
  const auto butter = [](State state, EndKind kind) {
    return lot("butter-unsalted", "1 kg", "2026-12-01", state, kind);
  };
  for (const State state : {State::Thawed, State::Opened}) {
    CHECK_FALSE(used(butter(state, EndKind::BestBefore), Why::NoDate));
    CHECK_FALSE(drawn(butter(state, EndKind::BestBefore)));
    CHECK(used(butter(state, EndKind::UseBy), Why::NoDate));
    CHECK(drawn(butter(state, EndKind::UseBy)));
  }
  CHECK(used(butter(State::Chilled, EndKind::BestBefore), Why::NoDate));
  CHECK(drawn(butter(State::Chilled, EndKind::BestBefore)));
  CHECK(used(lot("crumbs", "1 kg", "2026-12-01", State::Opened, EndKind::BestBefore), Why::NoDate));
}

TEST_CASE("a thawed lot past its best-before is told as past, not as undated", "[plan][lot_dates]") {
  CHECK_FALSE(used(lot("butter-unsalted", "1 kg", "2026-10-06", State::Thawed, EndKind::BestBefore), Why::PastDate));
}
