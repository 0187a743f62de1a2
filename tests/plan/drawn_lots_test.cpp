// Lots that a single making takes: the first to expire first, and none that is not known to be good.
#include "plan/drawn_lots.h"

#include "plan_run.h"

using namespace lardiner;
using namespace lardiner::plan;
using kitchen::amount;
using kitchen::lot;

namespace {

const QDate kDay(2026, 10, 7);

QString drawn(const std::vector<Wanted>& wanted, const std::vector<OnHand>& lots) {
  const book::Book& book = kitchen::small();
  book::Weighing weighing(book);
  QStringList parts;
  for (const DrawnLot& one : drawn_lots(book, weighing, wanted, lots, kDay))
    parts << lots[one.lot].lot + u' ' + measure::display(one.weight, measure::System::Metric);
  return parts.join(QStringLiteral(", "));
}

OnHand named(const char* name, OnHand one) {
  one.lot = QString::fromLatin1(name);
  return one;
}

}  // namespace

TEST_CASE("a making takes the lots that expire first, whatever their order, and leaves open what is not there",
          "[plan][drawn_lots]") {
  const OnHand late = named("L", lot("butter-unsalted", "2 kg", "2026-10-20"));
  const OnHand soon = named("S", lot("butter-unsalted", "500 g", "2026-10-08"));
  CHECK(drawn({{"butter-unsalted", amount("900 g")}}, {late, soon}) == "S 500 g, L 400 g");
  CHECK(drawn({{"butter-unsalted", amount("900 g")}}, {soon, late}) == "S 500 g, L 400 g");
  CHECK(drawn({{"butter-unsalted", amount("9 kg")}}, {soon, late}) == "S 500 g, L 2 kg");
  CHECK(drawn({{"paprika", amount("9 kg")}}, {soon, late}) == "");
}

TEST_CASE("the same gram is not taken twice", "[plan][drawn_lots]") {
  const OnHand only = named("A", lot("butter-unsalted", "1 kg", "2026-10-20"));
  CHECK(drawn({{"butter-unsalted", amount("700 g")}, {"butter-unsalted", amount("700 g")}}, {only}) ==
        "A 700 g, A 300 g");
}

TEST_CASE("a lot must be good until the end of the day of the making", "[plan][drawn_lots]") {
  const std::vector<Wanted> butter{{"butter-unsalted", amount("1 kg")}};
  CHECK(drawn(butter, {named("A", lot("butter-unsalted", "1 kg", "2026-10-07"))}) == "A 1 kg");
  CHECK(drawn(butter, {named("A", lot("butter-unsalted", "1 kg", "2026-10-06"))}) == "");
  CHECK(drawn(butter, {named("A", lot("butter-unsalted", "1 kg", "2026-10-07 14:00"))}) == "");
  CHECK(drawn({{"paprika", amount("1 kg")}}, {named("A", lot("paprika", "1 kg", "2026-10-06"))}) == "");
}

TEST_CASE("what needs temperature control is not taken without a date, nor frozen; what needs none is",
          "[plan][drawn_lots]") {
  const std::vector<Wanted> butter{{"butter-unsalted", amount("1 kg")}};
  CHECK(drawn(butter, {named("A", lot("butter-unsalted", "1 kg", nullptr))}) == "");
  CHECK(drawn(butter, {named("A", lot("butter-unsalted", "1 kg", "2026-12-01", book::State::Frozen))}) == "");
  CHECK(drawn(butter, {named("A", lot("butter-unsalted", "1 kg", "2026-12-01"))}) == "A 1 kg");
  const OnHand undated = named("U", lot("paprika", "1 kg", nullptr, book::State::Ambient));
  const OnHand dated = named("D", lot("paprika", "400 g", "2027-01-01", book::State::Ambient));
  CHECK(drawn({{"paprika", amount("1 kg")}}, {undated, dated}) == "D 400 g, U 600 g");
}

TEST_CASE("pieces are taken by what they weigh as purchased, where the book says it", "[plan][drawn_lots]") {
  // A lime of 60 g edible is 150 g as purchased, at a trim yield of 40 %.
  CHECK(drawn({{"lime", amount("1 kg")}}, {named("A", lot("lime", "4 pieces", nullptr))}) == "A 600 g");
  CHECK(drawn({{"paprika", amount("1 kg")}}, {named("A", lot("paprika", "4 pieces", nullptr))}) == "");
}
