// Formulas scaled to what is wanted: published worked values, every target, and its refusals.
#include "plan/scaling.h"

#include <cmath>

#include "gnu_units.h"
#include "work.h"

using namespace lardiner;
using namespace lardiner::plan;
using namespace lardiner::plan::kitchen;
using measure::Ratio;
using measure::Unit;

namespace {

QByteArray percent(const QByteArray& item, const QByteArray& number, const QByteArray& of) {
  return "{ item = \"" + item + "\", percent = " + number + ", of = \"" + of + "\" },";
}

QByteArray parts(const QByteArray& item, const QByteArray& number) {
  return "{ item = \"" + item + "\", parts = " + number + " },";
}

QByteArray per_unit(const QByteArray& item, const QByteArray& what) {
  return "{ item = \"" + item + "\", per_unit = \"" + what + "\" },";
}

QByteArray dumplings(const QByteArray& more = {}) {
  return p(per_unit("cod", "30 g") + per_unit("crumbs", "12 g"),
           "makes = \"40 pieces\"\nunit_weight = \"42 g\"\n" + more);
}

QByteArray soup(const QByteArray& more = {}) { return p(line("cream", "2 kg") + line("salt", "25 g"), more); }

}  // namespace

TEST_CASE("2 lb of diced watermelon at 61 % edible are 3.28 lb as purchased: 3.5 lb are bought",
          "[plan][scaling][src:usda-fbg/appendix-b]") {
  Work work(plain("watermelon", "edible = \"61 %\"\n") + p(line("watermelon", "1 lb")));
  const Scaled scaled = work.scaled(give("2 lb"));
  const measure::Quantity hundredth = measure::quantity(Ratio(1, 100), Unit::Pound);
  const measure::Quantity half = measure::quantity(Ratio(1, 2), Unit::Pound);
  CHECK(measure::rounded_to_step(scaled.lines[0].pull, hundredth) == measure::quantity(Ratio(328, 100), Unit::Pound));
  CHECK(measure::rounded_up_to_step(scaled.lines[0].pull, half) == measure::quantity(Ratio(35, 10), Unit::Pound));
}

TEST_CASE("3 lb of cherries at a factor of 1.19 are 3 lb 9 oz as purchased", "[plan][scaling][src:afrs/A-00700]") {
  Work work(plain("cherries") + p(line("cherries", "3 lb")));
  work.ingredient_to_change("cherries").edible = Ratio(100, 119);
  const Scaled scaled = work.scaled(Makings{Ratio(1, 1)});
  CHECK(measure::rounded_to_step(scaled.lines[0].pull, measure::one(Unit::Ounce)) == amount("3 lb 9 oz"));
}

TEST_CASE("10 lb of onion at 90 % edible are 11.2 lb as purchased, rounded up",
          "[plan][scaling][src:usda-sr28/11282]") {
  Work work(plain("onion", "edible = \"90 %\"\n") + p(line("onion", "10 lb")));
  work.book.kitchen.scale_step = measure::quantity(Ratio(1, 10), Unit::Pound);
  CHECK(work.scaled(give("10 lb")).lines[0].to_pull == measure::quantity(Ratio(112, 10), Unit::Pound));
}

TEST_CASE("GNU units agrees with what is pulled of an edible weight in any unit", "[plan][scaling]") {
  struct Pull {
    const char* weight;
    const char* expression;
    int edible;
  };
  for (const Pull& pull : {Pull{"2 lb", "2 lb / 0.61", 61}, Pull{"10 lb", "10 lb / 0.90", 90},
                           Pull{"13.7 oz", "13.7 oz / 0.53", 53}, Pull{"4.2 kg", "4.2 kg / 0.87", 87}}) {
    INFO(pull.expression);
    Work work(plain("onion") + p(line("onion", pull.weight)));
    work.ingredient_to_change("onion").edible = Ratio(pull.edible, 100);
    const double ours = static_cast<double>(work.scaled(Makings{Ratio(1, 1)}).lines[0].pull.amount);
    const double theirs = test_support::gnu_units({QLatin1String(pull.expression), QStringLiteral("ng")});
    CHECK(std::abs(theirs - ours) <= 1 + ours * 1e-14);
  }
}

TEST_CASE("a product is not trimmed: what is pulled of it is what goes in", "[plan][scaling]") {
  Work work(p(line("seasoning", "250 g") + line("cod", "400 g")));
  const Scaled scaled = work.scaled(Makings{Ratio(2, 1)});
  CHECK(shown(scaled.lines[0].to_pull) == QStringLiteral("500 g"));
  CHECK(shown(scaled.lines[1].to_pull) == QStringLiteral("1 kg"));
}

TEST_CASE("equal parts by weight for 108 g are 54 g and 54 g", "[plan][scaling][src:practice]") {
  Work work(p(parts("paprika", "1") + parts("salt", "1"), "makes = \"1 kg\"\n"));
  const Scaled scaled = work.scaled(give("108 g"));
  CHECK(weighed(scaled) == QStringList{"54 g", "54 g"});
  CHECK(shown(scaled.input) == QStringLiteral("108 g"));
}

TEST_CASE("a mix of seeds at three to one for 2 kg is 1.5 kg and 500 g", "[plan][scaling][src:practice]") {
  Work work(p(parts("paprika", "3") + parts("salt", "1"), "makes = \"400 g\"\n"));
  CHECK(weighed(work.scaled(give("2 kg"))) == QStringList{"1.5 kg", "500 g"});
}

TEST_CASE("a baker's percentage follows the flour", "[plan][scaling][src:practice]") {
  Work work(p(line("crumbs", "1 kg") + percent("cream", "60", "crumbs") + percent("salt", "2", "crumbs")));
  CHECK(weighed(work.scaled(use_up("crumbs", "3.2 kg"))) == QStringList{"3.2 kg", "1.92 kg", "64 g"});
}

TEST_CASE("what is asked for comes out: the cook yield makes what goes in more", "[plan][scaling]") {
  Work work(soup("cook_yield = \"80 %\"\n"));
  const Scaled scaled = work.scaled(give("8.1 kg"));
  CHECK(scaled.makings == Ratio(5, 1));
  CHECK(shown(scaled.input) == QStringLiteral("10.125 kg"));
  CHECK(shown(scaled.output) == QStringLiteral("8.1 kg"));
}

TEST_CASE("a formula asked for what it says it makes is the formula as written", "[plan][scaling]") {
  Work work(soup("makes = \"1.9 kg\"\n"));
  CHECK(work.makings(give("1.9 kg")) == Ratio(1, 1));
  CHECK(shown(work.scaled(give("3.8 kg")).output) == QStringLiteral("3.8 kg"));
}

TEST_CASE("what is made by volume is asked for by volume, and by the weight of that", "[plan][scaling]") {
  Work work(soup("makes = \"2 L\"\n"));
  CHECK(work.makings(give("5 L")) == Ratio(5, 2));
  CHECK(work.makings(give("4.05 kg")) == Ratio(2, 1));
}

TEST_CASE("make-over is counted up to whole pieces, and added to pieces only", "[plan][scaling]") {
  Work work(dumplings("make_over = \"3 %\"\n"));
  CHECK(work.makings(give("40 pieces")) == Ratio(42, 40));
  CHECK(work.makings(give("100 pieces")) == Ratio(103, 40));
  CHECK(work.makings(give("1.68 kg")) == Ratio(1, 1));
  CHECK(*work.scaled(give("40 pieces")).units == Ratio(42, 1));
}

TEST_CASE("a weight of what is made in units is so many unit weights", "[plan][scaling]") {
  Work work(p(line("cod", "700 g") + line("crumbs", "300 g"), "makes = \"1 kg\"\nunit_weight = \"50 g\"\n"));
  CHECK(work.makings(give("60 pieces")) == Ratio(3, 1));
  CHECK(*work.scaled(give("3 kg")).units == Ratio(60, 1));
}

TEST_CASE("all of an ingredient goes through its trim yield", "[plan][scaling]") {
  Work work(p(line("cod", "800 g") + line("crumbs", "200 g")));
  CHECK(work.makings(use_up("cod", "3 kg")) == Ratio(3, 1));
  CHECK(work.makings(use_up("crumbs", "3 kg")) == Ratio(15, 1));
}

TEST_CASE("all of an item is shared by all its lines", "[plan][scaling]") {
  Work work(p(line("salt", "30 g") + line("cream", "1 kg") + line("salt", "20 g")));
  CHECK(work.makings(use_up("salt", "500 g")) == Ratio(10, 1));
}

TEST_CASE("pieces that are there are counted where the formula counts, else weighed by the book's measures",
          "[plan][scaling]") {
  Work work(p(line("lime", "4 pieces") + line("cream", "1 kg")) +
            product("q", "QQQ", "no", line("lime", "120 g") + line("cream", "1 kg"), ""));
  CHECK(work.makings(use_up("lime", "10 pieces")) == Ratio(5, 2));
  CHECK(work.makings(use_up("lime", "10 pieces"), "q") == Ratio(5, 1));
}

TEST_CASE("all of a product goes by its weight, or by the volume in which it is made", "[plan][scaling]") {
  Work work(p(line("broth", "500 mL") + line("fish-cake", "200 g")) +
            product("broth", "BRO", "no", line("cream", "2 kg"), "makes = \"2 L\"\n"));
  CHECK(work.makings(use_up("broth", "3 L")) == Ratio(6, 1));
  CHECK(work.makings(use_up("broth", "3 kg")) == Ratio(6, 1));
  CHECK(work.makings(use_up("fish-cake", "12 pieces")) == Ratio(6, 1));
}

TEST_CASE("a vessel is filled to what it takes and never over, as printed", "[plan][scaling]") {
  Work work(p(line("cream", "2 kg") + line("paprika", "1.23 g") + line("salt", "25 g")));
  work.product_to_change().vessel_takes = amount("9.0004 kg");
  const Scaled scaled = work.scaled(FillVessel{});
  CHECK(scaled.pulls == 1);
  CHECK(shown(scaled.lines[1].weighed) == QStringLiteral("5.5 g"));
  CHECK(!measure::less(amount("9.0004 kg"), scaled.input));
  CHECK(measure::less(amount("8.999 kg"), scaled.input));
}

TEST_CASE("what the vessel does not take at once is made in equal pulls", "[plan][scaling]") {
  Work work(soup());
  work.product_to_change().vessel_takes = amount("9 kg");
  const Scaled twenty = work.scaled(give("20.25 kg"));
  CHECK(twenty.pulls == 3);
  CHECK(twenty.makings == Ratio(10, 3));
  CHECK(weighed(twenty) == QStringList{"6.667 kg", "83 g"});
  CHECK(work.scaled(give("9 kg")).pulls == 1);
  CHECK(work.scaled(give("9.001 kg")).pulls == 2);
}

TEST_CASE("a line of under twenty steps of the scale is weighed on the fine one", "[plan][scaling][src:practice]") {
  Work work(p(line("cream", "1 kg") + line("salt", "20 g") + line("paprika", "19.96 g")));
  const Scaled scaled = work.scaled(Makings{Ratio(1, 1)});
  CHECK(!scaled.lines[1].fine);
  CHECK(scaled.lines[2].fine);
  CHECK(scaled.lines[2].step == amount("0.1 g"));
  CHECK(scaled.lines[2].weighed == amount("20 g"));
}

TEST_CASE("what the fine scale cannot show well, or no fine scale is there for, is told to the milligram at last",
          "[plan][scaling]") {
  Work work(p(line("cream", "1 kg") + line("salt", "0.34 g") + line("paprika", "0.0123 g") + line("lime", "0.5 g")));
  const Scaled fine = work.scaled(Makings{Ratio(1, 1)});
  CHECK(weighed(fine).mid(1) == QStringList{"0.3 g", "12 mg", "0.5 g"});
  CHECK(fine.lines[1].weighed == amount("0.34 g"));
  CHECK(fine.lines[1].step == amount("10 mg"));
  CHECK(fine.lines[3].step == amount("0.1 g"));
  work.book.kitchen.fine_scale_step.reset();
  CHECK(work.scaled(Makings{Ratio(30, 1)}).lines[1].step == amount("0.1 g"));
}

TEST_CASE("the residue of the total goes to the largest line, never to a fine or restricted one", "[plan][scaling]") {
  Work work(p(line("salt", "100.4 g") + line("cream", "300.4 g") + line("crumbs", "200.4 g") + line("paprika", "5 g")));
  CHECK(weighed(work.scaled(Makings{Ratio(1, 1)})) == QStringList{"100 g", "301 g", "200 g", "5 g"});
  work.ingredient_to_change("cream").most_percent = Ratio(60, 100);
  CHECK(weighed(work.scaled(Makings{Ratio(1, 1)})) == QStringList{"100 g", "300 g", "202 g", "5 g"});
}

TEST_CASE("of two largest lines the same one takes the residue, whichever is added first", "[plan][scaling]") {
  Work work(p(line("cream", "300.4 g") + line("crumbs", "300.4 g") + line("salt", "100 g")));
  CHECK(weighed(work.scaled(Makings{Ratio(1, 1)})) == QStringList{"301 g", "300 g", "100 g"});
  Work turned(p(line("crumbs", "300.4 g") + line("cream", "300.4 g") + line("salt", "100 g")));
  CHECK(weighed(turned.scaled(Makings{Ratio(1, 1)})) == QStringList{"300 g", "301 g", "100 g"});
}

TEST_CASE("a line with a maximum by law is rounded down, and the total not below the exact one", "[plan][scaling]") {
  Work work(p(line("cod", "10 kg") + line("salt", "24.97 g") + line("paprika", "2.58 g")));
  work.ingredient_to_change("salt").most_percent = Ratio(1, 400);
  work.ingredient_to_change("paprika").most_percent = Ratio(1, 1000);
  const Scaled scaled = work.scaled(Makings{Ratio(1, 1)});
  CHECK(scaled.lines[1].restricted);
  CHECK(weighed(scaled) == QStringList{"10.002 kg", "24 g", "2.5 g"});
  CHECK(!measure::less(scaled.input, amount("10.02755 kg")));
}

TEST_CASE("where all lines are fine each is rounded, and the total is their sum", "[plan][scaling]") {
  Work work(p(line("salt", "3.04 g") + line("paprika", "2.04 g")));
  const Scaled scaled = work.scaled(Makings{Ratio(1, 1)});
  CHECK(weighed(scaled) == QStringList{"3 g", "2 g"});
  CHECK(scaled.input == amount("5 g"));
}

TEST_CASE("where many lines round one way the largest does not bear it all", "[plan][scaling]") {
  QByteArray lines;
  for (int i = 0; i < 40; ++i) lines += line("salt", "20.5 g");
  Work work(p(lines));
  const Scaled scaled = work.scaled(Makings{Ratio(1, 1)});
  for (const ScaledLine& line : scaled.lines) CHECK(line.weighed == amount("21 g"));
  CHECK(scaled.input == amount("840 g"));
}

TEST_CASE("pieces that the formula counts are told beside the weight", "[plan][scaling]") {
  Work work(p(line("lime", "3 pieces") + line("cream", "1 kg")) +
            product("q", "QQQ", "no", per_unit("lime", "0.5 pieces") + per_unit("cod", "90 g"),
                    "makes = \"10 pieces\"\nunit_weight = \"120 g\"\n") +
            product("r", "RRR", "no",
                    "{ item = \"cod\", amount = \"2 kg\", main = true }, { item = \"lime\", per_main = \"2 pieces\", "
                    "each = \"1 kg\" }",
                    ""));
  CHECK(*work.scaled(Makings{Ratio(5, 2)}).lines[0].pieces == Ratio(15, 2));
  CHECK(!work.scaled(Makings{Ratio(1, 1)}).lines[1].pieces);
  CHECK(*work.scaled(give("30 pieces"), "q").lines[0].pieces == Ratio(15, 1));
  CHECK(*work.scaled(Makings{Ratio(3, 1)}, "r").lines[1].pieces == Ratio(12, 1));
}

TEST_CASE("of counted pieces with a grade so much is pulled that there are enough of them for sure",
          "[plan][scaling]") {
  Work work(plain("scallop", "count_grade = \"20/30 per lb\"\n") +
            p(line("scallop", "60 pieces") + line("cod", "1 kg")));
  const Scaled scaled = work.scaled(Makings{Ratio(1, 1)});
  CHECK(scaled.lines[0].net == measure::quantity(Ratio(60, 25), Unit::Pound));
  CHECK(scaled.lines[0].to_pull == amount("1361 g"));
}

TEST_CASE("less than a piece, or nothing, is refused; one piece is not", "[plan][scaling]") {
  Work work(dumplings());
  const QStringList less{"this is less than one piece of product \"p\"", "ask for what gives 1 piece or more"};
  CHECK(work.refusals(give("0.5 pieces")) == less);
  CHECK(work.refusals(give("41 g")) == less);
  CHECK(work.refusals(use_up("crumbs", "11 g")) == less);
  CHECK(work.refusals(Makings{Ratio(1, 41)}) == less);
  CHECK(work.refusals(give("1 piece")).isEmpty());
  CHECK(work.refusals(use_up("crumbs", "12 g")).isEmpty());
  const QStringList nothing{"nothing of product \"p\" is asked for", "ask for an amount above 0"};
  CHECK(work.refusals(give("0 pieces")) == nothing);
  CHECK(work.refusals(give("0 g")) == nothing);
  CHECK(work.refusals(Makings{Ratio()}) == nothing);
  CHECK(Work::said(scaled(work.book, work.weighing, work.product(), Ratio()).error()) ==
        QStringList{"nothing of product \"p\" is to be made", "ask for an amount above 0"});
}

TEST_CASE("pieces of what is not made in pieces, and a volume of what is not made by volume, are refused",
          "[plan][scaling]") {
  Work work(soup());
  CHECK(work.refusals(give("12 pieces")) ==
        QStringList{"product \"p\" is not made in pieces", "state makes in pieces, or unit_weight"});
  CHECK(work.refusals(give("2 L")) ==
        QStringList{"product \"p\" is not made by volume, and nothing says what a volume of it weighs",
                    "ask for a weight, or state makes as a volume"});
}

TEST_CASE("an item that is not in the formula is refused, with the nearest that is", "[plan][scaling]") {
  Work work(soup());
  CHECK(work.refusals(use_up("creem", "2 kg")) ==
        QStringList{"\"creem\" is not in the formula of product \"p\"", "did you mean cream?"});
  CHECK(work.refusals(use_up("paprika", "2 kg")) ==
        QStringList{"\"paprika\" is not in the formula of product \"p\"", "write the id of an item of its formula"});
}

TEST_CASE("a volume or piece of which nothing says the weight is refused", "[plan][scaling]") {
  Work work(p(line("cream", "1 kg") + line("seasoning", "100 g")));
  CHECK(work.refusals(use_up("cream", "2 L")) ==
        QStringList{"nothing says what a volume of \"cream\" weighs",
                    "add [[ingredient.measure]] to \"cream\" with amount, weighs and source"});
  CHECK(work.refusals(use_up("seasoning", "2 pieces")) ==
        QStringList{"nothing says what a piece of \"seasoning\" weighs",
                    "give \"seasoning\" a unit_weight, or a makes of which the weight is known"});
}

TEST_CASE("a vessel that the book does not state cannot be filled", "[plan][scaling]") {
  Work work(soup());
  CHECK(work.refusals(FillVessel{}) ==
        QStringList{"product \"p\" does not say what its vessel takes", "state vessel and vessel_takes"});
  work.product_to_change().vessel_takes = amount("1 g");
  CHECK(work.refusals(give("11 kg")) ==
        QStringList{"product \"p\" would be made in more than 10000 pulls of what its vessel takes",
                    "ask for less, or correct vessel_takes"});
}

TEST_CASE("a line of less than a milligram is refused, one of a milligram is not", "[plan][scaling]") {
  Work work(p(line("cream", "1 kg") + line("salt", "10 mg")));
  CHECK(work.refusals(Makings{Ratio(1, 11)}) ==
        QStringList{"the line \"salt\" of product \"p\" comes to less than 1 mg in a pull, which no scale shows",
                    "make more of it at a time, or mix what is so little into something else first"});
  CHECK(work.scaled(Makings{Ratio(1, 10)}).lines[1].weighed == amount("1 mg"));
}

TEST_CASE("a line without a weight is told as the book tells it", "[plan][scaling]") {
  Work work(p(line("cream", "1 L")));
  for (const Target& target : {Target(give("1 kg")), Target(use_up("cream", "2 kg")), Target(Makings{Ratio(1, 1)})})
    CHECK(work.refusals(target) ==
          QStringList{"the line \"cream\" of product \"p\" has no weight, which sheets need: nothing says what a "
                      "volume of \"cream\" weighs",
                      "add [[ingredient.measure]] to \"cream\" with amount, weighs and source"});
}

TEST_CASE("a yield of zero, which no book has, gives nothing and is not divided by", "[plan][scaling]") {
  Work work(soup());
  work.product_to_change().cook_yield = Ratio();
  CHECK(work.refusals(give("2 kg")) ==
        QStringList{"nothing comes out of product \"p\"", "correct its formula, or its cook_yield"});
  work.product_to_change().cook_yield = Ratio(1, 1);
  work.ingredient_to_change("cream").edible = Ratio();
  CHECK(work.refusals(give("2 kg")) == QStringList{"nothing of ingredient \"cream\" is edible", "correct edible"});
}
