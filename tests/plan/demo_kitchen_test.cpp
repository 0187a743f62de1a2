// The demo day's plan: its orders and its walk-in, every making in its window, and figures for all its sheets.
#include "plan/assembly.h"
#include "plan/day_plan.h"
#include "plan/prep.h"
#include "work.h"

using namespace lardiner;
using namespace lardiner::plan;
using namespace lardiner::plan::kitchen;
using measure::Dimension;
using measure::Quantity;
using measure::Ratio;
using measure::Unit;

namespace {

const QString kDemo = QStringLiteral(LARDINER_SOURCE_DIR "/samples/kitchen");

const book::Book& demo() {
  static const book::Book book = [] {
    const book::Reading reading = book::read_book(test_support::toml_files(kDemo), rule_files());
    if (!reading.findings.errors.empty()) FAIL(problem::text(reading.findings.errors).toStdString());
    return reading.book;
  }();
  return book;
}

reader::Rows rows_of(const QString& name) {
  QFile file(kDemo + name);
  REQUIRE(file.open(QIODevice::ReadOnly));
  const auto rows = reader::csv_rows(file.readAll(), name);
  if (!rows) FAIL(problem::text(rows.error()).toStdString());
  return *rows;
}

const DayPlan& demo_plan() {
  static const DayPlan plan = [] {
    const ReadSettings settings{at("2026-11-26 05:30"), false};
    const Orders orders = read_orders(rows_of(QStringLiteral("/orders/day.csv")), demo(), settings);
    const OnHandLots on_hand = read_on_hand(rows_of(QStringLiteral("/on-hand/walk-in.csv")), demo(), settings);
    CHECK(problem::text(orders.errors) == QString());
    CHECK(problem::text(on_hand.errors) == QString());
    return day_plan(demo(), orders.orders, on_hand.lots, settings.now);
  }();
  return plan;
}

std::vector<const PlannedMaking*> makings_of(const char* product) {
  std::vector<const PlannedMaking*> found;
  for (const PlannedMaking& making : demo_plan().makings)
    if (making.product->id == QLatin1String(product)) found.push_back(&making);
  return found;
}

bool passed_over(const char* item, PassedOver::Why why) {
  for (const PassedOver& lot : demo_plan().passed_over)
    if (lot.why == why && demo_plan().on_hand[lot.lot].item == QLatin1String(item)) return true;
  return false;
}

bool takes(const char* item, For::Kind kind) {
  for (const Take& take : demo_plan().takes)
    if (take.what.kind == kind && demo_plan().on_hand[take.lot].item == QLatin1String(item)) return true;
  return false;
}

bool takes(const char* item, const char* lot) {
  for (const Take& take : demo_plan().takes) {
    const OnHand& there = demo_plan().on_hand[take.lot];
    if (there.item == QLatin1String(item) && there.lot == QLatin1String(lot)) return true;
  }
  return false;
}

// The weighings of all bowls. Each bowl, tared, reads at its end what went in, to half a step of the scale.
Quantity weighed_into_bowls(const Prep& sheet) {
  Quantity all;
  for (const Bowl& bowl : sheet.bowls) {
    Quantity weighed;
    for (const PrepLine& line : bowl.lines) weighed = weighed + line.amount.weighed;
    if (const std::optional<Quantity> last = bowl.lines.back().reading) {
      INFO(bowl.name.in(QStringLiteral("en")).toStdString());
      CHECK_FALSE(measure::less(amount("0.5 g"), measure::less(weighed, *last) ? *last - weighed : weighed - *last));
    }
    all = all + weighed;
  }
  return all;
}

std::int64_t whole_pieces(Quantity quantity) {
  const Ratio pieces = measure::in_unit(quantity, Unit::Piece);
  REQUIRE(pieces.den() == 1);
  return pieces.num();
}

// A level disher holds its filling (0.85 to 1.15 g to the millilitre), a unit weighs what its lines do, and the trays
// hold what is wanted.
void check_assembly(const Assembly& sheet) {
  Quantity unit;
  for (const AssemblyLine& line : sheet.lines) {
    INFO(line.line->item.toStdString());
    unit = unit + line.each;
    CHECK(line.each_weighed.amount > 0);
    CHECK_FALSE(measure::less(line.to_pull, line.total));
    CHECK(line.allergens_known);
    CHECK(line.on_tray.has_value() == (line.line->laying != book::Laying::Placed));
    if (line.disher) {
      const Ratio density = measure::in_unit(line.each, Unit::Gram) / measure::in_unit(*line.disher, Unit::Millilitre);
      CHECK(Ratio(85, 100) <= density);
      CHECK(density <= Ratio(115, 100));
    }
    if (line.on_tray) CHECK(measure::less(*line.on_tray, amount("100 g")));
  }
  REQUIRE(sheet.unit_least);
  REQUIRE(sheet.unit_most);
  CHECK_FALSE(measure::less(unit, *sheet.unit_least));
  CHECK_FALSE(measure::less(*sheet.unit_most, unit));
  REQUIRE(sheet.trays);
  CHECK(sheet.trays->container->tare);
  CHECK(sheet.trays->container->rows * sheet.trays->container->columns * sheet.trays->whole + sheet.trays->odd ==
        sheet.wanted);
  REQUIRE(sheet.out_of_cold);
  CHECK(sheet.out_of_cold->units > 0);
}

}  // namespace

TEST_CASE("the demo day's plan starts every making within its window, in the order of work", "[plan][demo]") {
  const DayPlan& plan = demo_plan();
  CHECK(plan.makings.size() >= 12);
  for (size_t i = 0; i < plan.makings.size(); ++i) {
    const PlannedMaking& making = plan.makings[i];
    INFO(making.product->id.toStdString());
    CHECK(making.time_stated);
    CHECK(making.earliest <= making.start);
    CHECK(making.start <= making.latest);
    if (i > 0) CHECK(plan.makings[i - 1].start <= making.start);
    for (const For& of : making.wanted_by)
      if (of.kind == For::Kind::Making) CHECK(making.start.addSecs(making.seconds) <= plan.makings[of.index].latest);
  }
}

TEST_CASE("the prep of every component of the demo day can be weighed, and each bowl reads at its end what went in",
          "[plan][demo][prep]") {
  book::Weighing weighing(demo());
  int checked = 0;
  for (const PlannedMaking& making : demo_plan().makings) {
    INFO(making.product->id.toStdString());
    const auto pull = scaled(demo(), weighing, *making.product, making.makings);
    if (!pull) FAIL(problem::text(pull.error()).toStdString());
    const Prep sheet = prep(demo(), *pull);
    CHECK(weighed_into_bowls(sheet) == sheet.scaled.input);
    for (const ScaledLine& line : sheet.scaled.lines) {
      INFO(line.line->item.toStdString());
      CHECK(line.weighed.amount > 0);
      CHECK_FALSE(measure::less(line.to_pull, line.weighed));
    }
    ++checked;
  }
  CHECK(checked >= 12);
}

TEST_CASE("the assembly of every item of the demo day that is made in units has sane figures",
          "[plan][demo][assembly]") {
  book::Weighing weighing(demo());
  int checked = 0;
  for (const PlannedMaking& making : demo_plan().makings) {
    if (making.output.dimension != Dimension::Count) continue;
    INFO(making.product->id.toStdString());
    std::int64_t wanted = 0;
    for (const For& of : making.wanted_by) wanted += whole_pieces(of.quantity);
    const auto sheet = assembly(demo(), weighing, *making.product, wanted);
    if (!sheet) FAIL(problem::text(sheet.error()).toStdString());
    CHECK(sheet->make == whole_pieces(making.output));
    check_assembly(*sheet);
    ++checked;
  }
  CHECK(checked >= 5);
}

TEST_CASE("the demo day shows what a plan does: sub-batches, netting, a level, buying, and one refusal",
          "[plan][demo]") {
  const DayPlan& plan = demo_plan();
  const PlannedMaking& filling = *makings_of("black-bean-filling").front();
  CHECK(std::any_of(filling.wanted_by.begin(), filling.wanted_by.end(), [&](const For& of) {
    return of.kind == For::Kind::Making && plan.makings[of.index].product->formula_of == "black-bean-empanada";
  }));
  CHECK(takes("smoked-pepper-seasoning", For::Kind::Making));
  CHECK(takes("tomatillo-salsa", For::Kind::Order));
  CHECK(takes("egg-bean-burrito", For::Kind::Order));    // frozen, as it is
  CHECK(takes("cod-fillet", "SM-1190"));                 // frozen, to be thawed
  CHECK(takes("sesame-slaw-dressing", "A26326SSD04N"));  // too old for the order of dressing, not for the slaw
  const auto butter = makings_of("garlic-herb-butter");
  REQUIRE(butter.size() == 1);
  CHECK(butter[0]->wanted_by[0].kind == For::Kind::Level);
  CHECK(makings_of("pickled-red-onion").empty());
  CHECK(passed_over("fish-cake", PassedOver::Why::PastDate));
  CHECK(passed_over("cotija", PassedOver::Why::NoDate));
  REQUIRE(plan.unmet.size() == 1);
  CHECK(plan.unmet[0].product == "roasted-vegetables");
  CHECK(plan.unmet[0].why == Unmet::Why::TooLate);
  CHECK(shown(plan.unmet[0].quantity) == QStringLiteral("4 kg"));
  CHECK(std::all_of(plan.buys.begin(), plan.buys.end(),
                    [](const Buy& buy) { return buy.units || buy.ingredient->id == QLatin1String("water"); }));
}
