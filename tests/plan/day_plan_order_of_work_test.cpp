// In which order a plan's makings are begun, and where it is cleaned down.
#include "plan_run.h"

using namespace lardiner;
using namespace lardiner::plan;
using namespace lardiner::plan::kitchen;

namespace {

QStringList order_of(const DayPlan& plan) {
  QStringList all;
  for (const PlannedMaking& m : plan.makings) all += (m.clean_down ? QStringLiteral("/ ") : QString()) + m.product->id;
  return all;
}

// Sauces of cream alone, of cream and crumbs, of hake, of oil without anything.
book::Book with_sauces() {
  const auto sauce = [](const QByteArray& id, const QByteArray& code, const QByteArray& lines) {
    return product(id, code, "yes", lines, "makes = \"1 kg\"\n" + life("chilled", "3 days") + container());
  };
  return read_kitchen(sauce("cream-sauce", "CRS", line("cream", "1 kg")) +
                      sauce("crumb-sauce", "CMS", line("cream", "500 g") + line("crumbs", "500 g")) +
                      sauce("hake-mix", "HAM", line("hake", "1 kg")) +
                      sauce("lime-sauce", "LIS", line("lime", "1 kg")) +
                      sauce("crumb-topping", "CRT", line("crumbs", "1 kg")));
}

std::vector<Order> all_sauces(const char* due) {
  std::vector<Order> orders;
  for (const char* id : {"hake-mix", "crumb-sauce", "cream-sauce", "crumb-topping", "lime-sauce"})
    orders.push_back(order(id, "1 kg", due));
  return orders;
}

}  // namespace

TEST_CASE("ready-to-eat comes before raw, then the fewest allergens, cleaned down where one is left behind",
          "[plan][day_plan][work]") {
  CHECK(order_of(plan_of(all_sauces("2026-10-08 14:00"), {}, with_sauces())) ==
        QStringList{QStringLiteral("lime-sauce"), QStringLiteral("cream-sauce"), QStringLiteral("/ crumb-topping"),
                    QStringLiteral("crumb-sauce"), QStringLiteral("/ hake-mix")});
}

TEST_CASE("time comes before cleanliness, and then it is cleaned down", "[plan][day_plan][work]") {
  std::vector<Order> orders{order("hake-mix", "1 kg", "2026-10-07 08:00"),
                            order("lime-sauce", "1 kg", "2026-10-10 14:00", "3 days")};
  const book::Book book = with_sauces();
  const DayPlan plan = plan_of(orders, {}, book);
  CHECK(order_of(plan) == QStringList{QStringLiteral("hake-mix"), QStringLiteral("/ lime-sauce")});
  CHECK(plan.makings[0].start == at(kNow));
  CHECK(plan.makings[1].start == at("2026-10-10 06:00"));
}

TEST_CASE("nothing is begun that would make something else too late", "[plan][day_plan][work]") {
  book::Book book = read_kitchen(product("lime-base", "LIB", "yes", line("lime", "1 kg"),
                                         "makes = \"1 kg\"\n" + life("chilled", "3 days") + container()) +
                                 product("lime-sauce", "LIS", "yes", line("lime-base", "1 kg"),
                                         "makes = \"1 kg\"\n" + life("chilled", "3 days") + container()) +
                                 product("hake-mix", "HAM", "yes", line("hake", "1 kg"),
                                         "makes = \"1 kg\"\n" + life("chilled", "3 days") + container()));
  book::Step rest;
  rest.seconds = std::pair(3 * 3600, 3 * 3600);
  book.products[static_cast<size_t>(book.product_index.value(QStringLiteral("lime-base")))].steps = {rest};
  const auto work = [&](const char* due) {
    return order_of(
        plan_of({order("lime-sauce", "1 kg", "2026-10-07 14:00"), order("hake-mix", "1 kg", due)}, {}, book));
  };
  CHECK(work("2026-10-07 09:00") ==
        QStringList{QStringLiteral("lime-base"), QStringLiteral("lime-sauce"), QStringLiteral("hake-mix")});
  CHECK(work("2026-10-07 08:59") ==
        QStringList{QStringLiteral("lime-base"), QStringLiteral("hake-mix"), QStringLiteral("/ lime-sauce")});
}

TEST_CASE("what can be begun on a day is begun on it, and does not wait for something cleaner",
          "[plan][day_plan][work]") {
  std::vector<Order> orders{order("hake-mix", "1 kg", "2026-10-09 14:00"),
                            order("lime-sauce", "1 kg", "2026-10-09 14:00", "2 days")};
  CHECK(order_of(plan_of(orders, {}, with_sauces())) ==
        QStringList{QStringLiteral("hake-mix"), QStringLiteral("/ lime-sauce")});
}

TEST_CASE("unknown allergens come last, and are cleaned up after", "[plan][day_plan][work]") {
  book::Book book = with_sauces();
  for (book::Ingredient& ingredient : book.ingredients)
    if (ingredient.id == QStringLiteral("lime")) ingredient.supplier_items[0].declared = {};
  std::vector<Order> orders{order("lime-sauce", "1 kg", "2026-10-08 14:00"),
                            order("crumb-sauce", "1 kg", "2026-10-08 14:00"),
                            order("hake-mix", "1 kg", "2026-10-08 14:00")};
  CHECK(order_of(plan_of(orders, {}, book)) ==
        QStringList{QStringLiteral("crumb-sauce"), QStringLiteral("/ lime-sauce"), QStringLiteral("/ hake-mix")});
}

TEST_CASE("what goes into a making stands before it", "[plan][day_plan][work]") {
  CHECK(order_of(plan_of({order("fish-cake", "10 pieces", "2026-10-08 14:00")})) ==
        QStringList{QStringLiteral("seasoning"), QStringLiteral("spiced-butter"), QStringLiteral("fish-cake")});
}

TEST_CASE("it is cleaned down between classes of raw animal food, not where what comes next has the same",
          "[plan][day_plan][work][src:food-code-2022/3-302.11]") {
  const auto raw = [](const QByteArray& id, const QByteArray& food) { return ingredient(id, "yes", food, "\"none\""); };
  const auto mix = [](const QByteArray& id, const QByteArray& code, const QByteArray& lines,
                      const QByteArray& more = {}) {
    return product(id, code, "yes", lines, "makes = \"1 kg\"\n" + more + life("chilled", "3 days") + container());
  };
  const QByteArray items = raw("thigh", "poultry") + raw("breast", "poultry") + raw("beef", "ground-meat") +
                           raw("flour", "plant-hot-held") + mix("thigh-mix", "THM", line("thigh", "1 kg")) +
                           mix("breast-mix", "BRM", line("breast", "1 kg")) +
                           mix("beef-mix", "BEM", line("beef", "1 kg")) + mix("dough", "DOU", line("flour", "1 kg")) +
                           mix("both-mix", "BOM", line("thigh-mix", "500 g") + line("beef", "500 g")) +
                           mix("thigh-cooked", "THC", line("thigh", "1 kg"), "process = \"cook\"\n") +
                           mix("cooked-and-beef", "CAB", line("thigh-cooked", "500 g") + line("beef", "500 g"));
  // The first is due first, and nothing else can be begun before it.
  const auto work = [&](const char* first, const char* second, const book::Book& book) {
    return order_of(
        plan_of({order(first, "1 kg", "2026-10-07 06:00"), order(second, "1 kg", "2026-10-07 08:00")}, {}, book));
  };
  const auto cleaned = [&](const char* first, const char* second, const book::Book& book) {
    const QStringList all = work(first, second, book);
    REQUIRE(all.size() >= 2);
    return all.back().startsWith(QStringLiteral("/ "));
  };
  const book::Book book = read_kitchen(items);
  CHECK(work("thigh-mix", "beef-mix", book) == QStringList{QStringLiteral("thigh-mix"), QStringLiteral("/ beef-mix")});
  CHECK(work("thigh-mix", "breast-mix", book) ==
        QStringList{QStringLiteral("thigh-mix"), QStringLiteral("breast-mix")});
  CHECK_FALSE(cleaned("thigh-mix", "both-mix", book));  // poultry is in it, through a raw mix
  CHECK_FALSE(cleaned("beef-mix", "both-mix", book));
  CHECK(cleaned("both-mix", "beef-mix", book));
  CHECK(cleaned("thigh-mix", "dough", book));
  CHECK_FALSE(cleaned("dough", "thigh-mix", book));  // a plant food
  CHECK(cleaned("thigh-mix", "cooked-and-beef", book));
  book::Book unknown = book;
  for (book::Ingredient& ingredient : unknown.ingredients)
    if (ingredient.id == QStringLiteral("breast")) ingredient.must_be_cooked.reset();
  CHECK(cleaned("breast-mix", "thigh-mix", unknown));
}
