// When each making of a plan can start: latest, earliest, and what has no window.
#include "plan_run.h"

using namespace lardiner;
using namespace lardiner::plan;
using namespace lardiner::plan::kitchen;

namespace {

// The product of the small kitchen with one step of so many minutes at the most.
void give_step(book::Book& book, const char* product, int minutes, book::StepKind kind = book::StepKind::Work) {
  book::Step step;
  step.kind = kind;
  step.seconds = std::pair(minutes * 30, minutes * 60);
  book.products[static_cast<size_t>(book.product_index.value(QLatin1String(product)))].steps.push_back(step);
}

book::Product& product_of(book::Book& book, const char* id) {
  return book.products[static_cast<size_t>(book.product_index.value(QLatin1String(id)))];
}

}  // namespace

TEST_CASE("the latest start is the due time less the most of each step, and so on down", "[plan][day_plan][windows]") {
  book::Book book = small();
  give_step(book, "fish-cake", 90);
  give_step(book, "spiced-butter", 30);
  give_step(book, "spiced-butter", 60, book::StepKind::Chill);
  const DayPlan plan = plan_of({order("fish-cake", "10 pieces", "2026-10-08 14:00")}, {}, book);
  CHECK(making(plan, "fish-cake").latest == at("2026-10-08 12:30"));
  CHECK(making(plan, "fish-cake").seconds == 90 * 60);
  CHECK(making(plan, "fish-cake").time_stated);
  CHECK(making(plan, "spiced-butter").latest == at("2026-10-08 11:00"));
  CHECK(making(plan, "seasoning").latest == at("2026-10-08 11:00"));
  CHECK_FALSE(making(plan, "seasoning").time_stated);
}

TEST_CASE("a step that does not say how long it takes is told, and the others count", "[plan][day_plan][windows]") {
  book::Book book = small();
  give_step(book, "fish-cake", 90);
  product_of(book, "fish-cake").steps.emplace_back();
  const DayPlan plan = plan_of({order("fish-cake", "10 pieces", "2026-10-08 14:00")}, {}, book);
  CHECK(making(plan, "fish-cake").seconds == 90 * 60);
  CHECK_FALSE(making(plan, "fish-cake").time_stated);
}

TEST_CASE("what is cooled without a timed step is given the whole time that the code allows",
          "[plan][day_plan][windows][src:food-code-2022/3-501.14]") {
  book::Book book = small();
  give_step(book, "spiced-butter", 30);
  product_of(book, "spiced-butter").cooled = true;
  const auto latest = [&] {
    return making(plan_of({order("spiced-butter", "1 kg", "2026-10-08 14:00")}, {}, book), "spiced-butter").latest;
  };
  CHECK(latest() == at("2026-10-08 07:30"));
  product_of(book, "spiced-butter").cooled_from_ambient = true;
  CHECK(latest() == at("2026-10-08 09:30"));
  give_step(book, "spiced-butter", 120, book::StepKind::Cool);
  CHECK(latest() == at("2026-10-08 11:30"));
}

TEST_CASE("the earliest start is the first day from which it keeps as long as is wanted",
          "[plan][day_plan][windows][src:food-code-2022/3-501.17]") {
  // Butter keeps 5 days, the day of preparation being the first: wanted good on Fri 16, it is made on Mon 12.
  const DayPlan plan = plan_of({order("spiced-butter", "1 kg", "2026-10-14 14:00", "3 days")});
  CHECK(making(plan, "spiced-butter").earliest == at("2026-10-12 00:00"));
  CHECK(making(plan, "spiced-butter").latest == at("2026-10-14 14:00"));
  CHECK_FALSE(making(plan, "spiced-butter").any_time_before);
  CHECK(making(plan, "seasoning").any_time_before);
  CHECK(making(plan, "seasoning").earliest == at(kNow));
}

TEST_CASE("the earliest start is never before the time of the run", "[plan][day_plan][windows]") {
  const DayPlan plan = plan_of({order("spiced-butter", "1 kg", "2026-10-08 14:00")});
  CHECK(making(plan, "spiced-butter").earliest == at(kNow));
  CHECK(making(plan, "spiced-butter").any_time_before);
}

TEST_CASE("without a life wanted, the last good day may be the due day", "[plan][day_plan][windows]") {
  CHECK(making(plan_of({order("fish-cake", "10 pieces", "2026-10-14 14:00")}), "fish-cake").earliest ==
        at("2026-10-13 00:00"));
  CHECK(making(plan_of({order("fish-cake", "10 pieces", "2026-10-14 14:00", "1 days")}), "fish-cake").earliest ==
        at("2026-10-13 00:00"));
  CHECK(making(plan_of({order("fish-cake", "10 pieces", "2026-10-14 14:00", "2 days")}), "fish-cake").earliest ==
        at("2026-10-14 00:00"));
}

TEST_CASE("what goes into a product must keep as long as the product", "[plan][day_plan][windows]") {
  // Cakes good to the end of Thu 15; the butter in them keeps 5 days: not before Sun 11.
  const DayPlan plan = plan_of({order("fish-cake", "10 pieces", "2026-10-14 14:00", "2 days")});
  CHECK(making(plan, "spiced-butter").earliest == at("2026-10-11 00:00"));
}

TEST_CASE("a making waits for what goes into it", "[plan][day_plan][windows]") {
  book::Book book = small();
  give_step(book, "spiced-butter", 120);
  const DayPlan plan = plan_of({order("fish-cake", "10 pieces", "2026-10-07 14:00")}, {}, book);
  CHECK(making(plan, "fish-cake").earliest == at("2026-10-07 08:00"));
  CHECK(making(plan, "fish-cake").start >= at("2026-10-07 08:00"));
  CHECK_FALSE(making(plan, "fish-cake").any_time_before);
}

TEST_CASE("a limit in hours is counted to the second", "[plan][day_plan][windows]") {
  const book::Book book = read_kitchen({}, life("chilled", "2 days"), life("chilled", "30 h"));
  const DayPlan plan = plan_of({order("fish-cake", "10 pieces", "2026-10-09 14:00", "6 h")}, {}, book);
  const QDateTime earliest = making(plan, "fish-cake").earliest;
  CHECK(earliest >= at("2026-10-08 14:00"));
  CHECK(earliest < at("2026-10-08 14:00").addSecs(2));
}

TEST_CASE("hours are elapsed where the clocks go back; days are calendar days",
          "[plan][day_plan][windows][src:iana-tzdb]") {
  const book::Book hours = read_kitchen({}, life("chilled", "2 days"), life("chilled", "30 h"));
  const DayPlan back = plan_of({order("fish-cake", "10 pieces", "2026-11-01 12:00", "6 h")}, {}, hours);
  // 30 h before 18:00 on the day of 25 hours.
  CHECK(making(back, "fish-cake").earliest.secsTo(at("2026-10-31 13:00")) <= 0);
  CHECK(making(back, "fish-cake").earliest.secsTo(at("2026-10-31 13:00")) > -2);
  const DayPlan days = plan_of({order("fish-cake", "10 pieces", "2026-11-01 12:00", "1 days")});
  CHECK(making(days, "fish-cake").earliest == at("2026-10-31 00:00"));
}

TEST_CASE("steps are elapsed time where the clocks go forward", "[plan][day_plan][windows][src:iana-tzdb]") {
  book::Book book = small();
  give_step(book, "fish-cake", 240);
  const DayPlan plan = plan_of({order("fish-cake", "10 pieces", "2027-03-14 05:00")}, {}, book, "2027-03-13 06:00");
  CHECK(making(plan, "fish-cake").latest == at("2027-03-14 00:00"));
}

TEST_CASE("needs whose windows meet are one making, and others are not", "[plan][day_plan][windows]") {
  const DayPlan one = plan_of(
      {order("fish-cake", "10 pieces", "2026-10-08 14:00"), order("fish-cake", "5 pieces", "2026-10-08 18:00")});
  CHECK(making(one, "fish-cake").output == amount("15 pieces"));
  CHECK(making(one, "fish-cake").latest == at("2026-10-08 14:00"));
  REQUIRE(making(one, "fish-cake").wanted_by.size() == 2);
  CHECK(making(one, "fish-cake").wanted_by[1].index == 1);
  CHECK(making(one, "fish-cake").wanted_by[1].quantity == amount("5 pieces"));
  const DayPlan two = plan_of(
      {order("fish-cake", "10 pieces", "2026-10-08 14:00"), order("fish-cake", "5 pieces", "2026-10-12 18:00")});
  CHECK(std::count_if(two.makings.begin(), two.makings.end(),
                      [](const PlannedMaking& m) { return m.product->id == QStringLiteral("fish-cake"); }) == 2);
}

TEST_CASE("needs are not merged where what goes in would not keep for all of them", "[plan][day_plan][windows]") {
  // Cakes keep 8 days, the butter in them 2: a making for Thursday's orders cannot serve Monday's too.
  const book::Book short_lived = read_kitchen({}, life("chilled", "5 days"), life("chilled", "2 days"));
  book::Book book = short_lived;
  product_of(book, "fish-cake").shelf_lives[0].length.count = 8;
  const DayPlan plan =
      plan_of({order("fish-cake", "10 pieces", "2026-10-08 14:00"), order("fish-cake", "5 pieces", "2026-10-08 18:00"),
               order("fish-cake", "7 pieces", "2026-10-12 18:00")},
              {}, book);
  CHECK(plan.unmet.empty());
  std::vector<measure::Quantity> made;
  for (const PlannedMaking& m : plan.makings)
    if (m.product->id == QStringLiteral("fish-cake")) made.push_back(m.output);
  CHECK(made == std::vector{amount("15 pieces"), amount("7 pieces")});
}

TEST_CASE("frozen goods keep as long as their frozen best-before, and what goes in only to the freezer",
          "[plan][day_plan][windows]") {
  const book::Book book =
      read_kitchen({}, life("frozen", "2 months") + container(), life("frozen", "2 months") + container("frozen"));
  const DayPlan plan = plan_of({order("fish-cake", "10 pieces", "2026-10-14 14:00", "40 days")}, {}, book);
  CHECK(plan.unmet.empty());
  CHECK(making(plan, "spiced-butter").latest == at("2026-10-14 14:00"));
  // Kept chilled it cannot be.
  const DayPlan chilled = plan_of({order("fish-cake", "10 pieces", "2026-10-14 14:00", "40 days")});
  CHECK(only_unmet(chilled).why == Unmet::Why::LifeTooShort);
}

TEST_CASE("unmet: a start in the past, by how much", "[plan][day_plan][unmet]") {
  book::Book book = small();
  give_step(book, "fish-cake", 90);
  const DayPlan plan = plan_of({order("fish-cake", "10 pieces", "2026-10-07 07:00")}, {}, book);
  const Unmet& unmet = only_unmet(plan);
  CHECK(unmet.why == Unmet::Why::TooLate);
  CHECK(unmet.seconds == 30 * 60);
  CHECK(unmet.order == 0);
  CHECK(unmet.quantity == amount("10 pieces"));
  CHECK(unmet.item == QStringLiteral("fish-cake"));
  CHECK(plan.makings.empty());
  CHECK(plan.buys.empty());
  CHECK(plan_of({order("fish-cake", "10 pieces", "2026-10-07 07:30")}, {}, book).unmet.empty());
}

TEST_CASE("unmet: something in it cannot start in time; nothing is then made or bought for it",
          "[plan][day_plan][unmet]") {
  book::Book book = small();
  give_step(book, "seasoning", 150);
  const DayPlan plan = plan_of({order("fish-cake", "10 pieces", "2026-10-07 08:00")}, {}, book);
  CHECK(only_unmet(plan).why == Unmet::Why::TooLate);
  CHECK(only_unmet(plan).seconds == 30 * 60);
  CHECK(only_unmet(plan).item == QStringLiteral("seasoning"));
  CHECK(plan.makings.empty());
  CHECK(plan.buys.empty());
  CHECK(plan_of({order("fish-cake", "10 pieces", "2026-10-07 08:30")}, {}, book).unmet.empty());
  // With seasoning, or butter, on hand it can be made at once.
  CHECK(plan_of({order("fish-cake", "10 pieces", "2026-10-07 08:00")}, {lot("seasoning", "20 g", nullptr)}, book)
            .unmet.empty());
  CHECK(plan_of({order("fish-cake", "10 pieces", "2026-10-07 08:00")}, {lot("spiced-butter", "200 g", "2026-10-09")},
                book)
            .unmet.empty());
  CHECK(plan_of({order("fish-cake", "10 pieces", "2026-10-07 08:00")}, {lot("seasoning", "19 g", nullptr)}, book)
            .unmet.size() == 1);
}

TEST_CASE("one order that is too late takes no other with it", "[plan][day_plan][unmet]") {
  book::Book book = small();
  give_step(book, "seasoning", 150);
  const DayPlan plan =
      plan_of({order("fish-cake", "10 pieces", "2026-10-07 08:00"), order("fish-cake", "5 pieces", "2026-10-07 14:00")},
              {}, book);
  CHECK(only_unmet(plan).order == 0);
  CHECK(making(plan, "fish-cake").output == amount("5 pieces"));
}

TEST_CASE("an order that no making can meet gets what is on hand, and the rest stays open", "[plan][day_plan][unmet]") {
  book::Book book = small();
  give_step(book, "fish-cake", 90);
  const DayPlan plan = plan_of({order("fish-cake", "10 pieces", "2026-10-07 07:00")},
                               {lot("fish-cake", "4 pieces", "2026-10-08")}, book);
  CHECK(only_unmet(plan).quantity == amount("6 pieces"));
  CHECK(taken(plan, "fish-cake") == amount("4 pieces"));
}

TEST_CASE("unmet: even made at the last moment it does not keep as long as is wanted", "[plan][day_plan][unmet]") {
  const DayPlan plan = plan_of({order("fish-cake", "10 pieces", "2026-10-08 14:00", "3 days")});
  CHECK(only_unmet(plan).why == Unmet::Why::LifeTooShort);
  CHECK(only_unmet(plan).seconds == 24 * 3600);
  CHECK(plan_of({order("fish-cake", "10 pieces", "2026-10-08 14:00", "2 days")}).unmet.empty());
}

TEST_CASE("unmet: what it is made of is not good for as long as it must be", "[plan][day_plan][unmet]") {
  const QByteArray butter = life("chilled", "5 days") + life("frozen", "2 months");
  const auto with = [&](const QByteArray& keeps) {
    return plan_of({order("fish-cake", "10 pieces", "2026-10-08 14:00", "2 days")}, {},
                   read_kitchen({}, butter, life("chilled", keeps) + life("frozen", "2 months")));
  };
  const DayPlan plan = with("1 days");
  CHECK(only_unmet(plan).why == Unmet::Why::NoWindow);
  CHECK(only_unmet(plan).item == QStringLiteral("spiced-butter"));
  CHECK(only_unmet(plan).seconds == 24 * 3600);
  CHECK(with("2 days").unmet.empty());
}

TEST_CASE("unmet: a formula without a weight, with the book's errors", "[plan][day_plan][unmet]") {
  const book::Book book = read_kitchen(product("dip", "DIP", "yes", line("cream", "1 cup") + line("salt", "5 g"),
                                               life("chilled", "3 days") + container()));
  const DayPlan plan =
      plan_of({order("dip", "1 kg", "2026-10-08 14:00"), order("spiced-butter", "1 kg", "2026-10-08 14:00")}, {}, book);
  CHECK(only_unmet(plan).why == Unmet::Why::NoWeight);
  CHECK(only_unmet(plan).seconds == 0);
  REQUIRE(only_unmet(plan).errors.size() == 1);
  CHECK(only_unmet(plan).errors[0].what.contains(QStringLiteral("nothing says what a volume of \"cream\" weighs")));
  CHECK(makes(plan, "spiced-butter"));
}

TEST_CASE("unmet: food that needs temperature control and has no shelf life, with what the book lacks",
          "[plan][day_plan][unmet]") {
  const book::Book book =
      read_kitchen(product("dip", "DIP", "yes", line("cream", "1 kg"), "makes = \"1 kg\"\n" + container()));
  const DayPlan plan = plan_of({order("dip", "1 kg", "2026-10-08 14:00")}, {}, book);
  CHECK(only_unmet(plan).why == Unmet::Why::LifeTooShort);
  CHECK(only_unmet(plan).seconds == 0);
  CHECK(only_unmet(plan).errors.size() == 1);
  CHECK(plan.makings.empty());
}

TEST_CASE("a cook ends the clocks of what is raw in it, and not of what is ready to eat", "[plan][day_plan][windows]") {
  // Raw fish cakes keep 2 days; baked ones 7. Baked on Wed 14 they are good to Tue 20, but for the butter in them.
  const QByteArray baked = product("baked-cake", "BAK", "yes", line("fish-cake", "10 pieces"),
                                   "makes = \"900 g\"\nprocess = \"cook\"\n" + life("chilled", "7 days") + container());
  const book::Book book = read_kitchen(baked);
  const DayPlan plan = plan_of({order("baked-cake", "900 g", "2026-10-14 14:00", "4 days")}, {}, book);
  CHECK(plan.unmet.empty());
  CHECK(making(plan, "fish-cake").latest == at("2026-10-14 14:00"));
  CHECK(making(plan, "spiced-butter").earliest == at("2026-10-13 00:00"));  // good to the end of Sat 17
  const DayPlan longer = plan_of({order("baked-cake", "900 g", "2026-10-14 14:00", "6 days")}, {}, book);
  CHECK(only_unmet(longer).why == Unmet::Why::NoWindow);
  CHECK(only_unmet(longer).item == QStringLiteral("spiced-butter"));
}
