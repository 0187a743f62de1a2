// Assembly sheets: one unit, one tray, all of them.
#include "plan/assembly.h"

#include "work.h"

using namespace lardiner;
using namespace lardiner::plan;
using namespace lardiner::plan::kitchen;
using measure::Ratio;
using measure::Unit;

namespace {

QByteArray each(const QByteArray& item, const QByteArray& what, const QByteArray& more = {}) {
  return "{ item = \"" + item + "\", per_unit = \"" + what + "\"" + more + " },";
}

QByteArray tray(const QByteArray& holds, const QByteArray& kind = "tray") {
  return "[[product.container]]\nkind = \"" + kind + "\"\nholds = \"" + holds +
         "\"\nmedia = \"lid\"\npurpose = \"inside\"\n";
}

QByteArray parcels(const QByteArray& lines, const QByteArray& more = {}) {
  return p(lines, "makes = \"10 pieces\"\nunit_weight = \"85 g\"\n" + more);
}

Assembly assembly_of(Work& work, std::int64_t wanted) {
  const auto out = assembly(work.book, work.weighing, work.product(), wanted);
  if (!out) FAIL(problem::text(out.error()).toStdString());
  return *out;
}

QStringList refusals(Work& work, std::int64_t wanted) {
  const auto out = assembly(work.book, work.weighing, work.product(), wanted);
  return out ? QStringList{} : Work::said(out.error());
}

}  // namespace

TEST_CASE("make-over is counted up to whole units, and all lines are for those", "[plan][assembly]") {
  Work work(parcels(each("crumbs", "45 g") + each("spiced-butter", "40 g"), "make_over = \"3 %\"\n"));
  const Assembly sheet = assembly_of(work, 96);
  CHECK(sheet.wanted == 96);
  CHECK(sheet.make == 99);
  CHECK(shown(sheet.lines[0].each) == QStringLiteral("45 g"));
  CHECK(shown(sheet.lines[0].total) == QStringLiteral("4.455 kg"));
  CHECK(assembly_of(work, 100).make == 103);
}

TEST_CASE("what goes into a unit does not depend on how many are written in one making", "[plan][assembly]") {
  Work one(p(line("crumbs", "45 g") + line("cream", "40 g"), "unit_weight = \"85 g\"\n"));
  Work ten(parcels(line("crumbs", "450 g") + line("cream", "400 g")));
  CHECK(assembly_of(one, 7).lines[0].each == assembly_of(ten, 7).lines[0].each);
  CHECK(assembly_of(one, 7).lines[1].total == assembly_of(ten, 7).lines[1].total);
}

TEST_CASE("a little on a unit is weighed on the fine scale, enough on the kitchen's", "[plan][assembly]") {
  Work work(parcels(each("crumbs", "85.4 g") + each("paprika", "1.26 g") + each("salt", "1.26 g")));
  work.ingredient_to_change("salt").most_percent = Ratio(2, 100);
  const Assembly sheet = assembly_of(work, 10);
  CHECK(sheet.lines[0].each_weighed == amount("85 g"));
  CHECK(sheet.lines[1].each_weighed == amount("1.3 g"));
  CHECK(sheet.lines[2].each_weighed == amount("1.2 g"));
}

TEST_CASE("what is pulled for all units is as purchased, rounded up to the scale", "[plan][assembly]") {
  Work work(parcels(each("cod", "45.5 g") + each("fish-cake", "1 piece") + each("paprika", "0.11 g")));
  const Assembly sheet = assembly_of(work, 11);
  CHECK(shown(sheet.lines[0].to_pull) == QStringLiteral("626 g"));
  CHECK(shown(sheet.lines[1].to_pull) == QStringLiteral("1.1 kg"));
  CHECK(sheet.lines[2].to_pull == amount("1.3 g"));
}

TEST_CASE("pieces in a unit are counted, and of graded ones there are enough for sure",
          "[plan][assembly][src:practice]") {
  Work work(plain("scallop", "count_grade = \"21/25 per lb\"\n") +
            parcels(each("scallop", "3 pieces") + each("crumbs", "30 g")));
  const Assembly sheet = assembly_of(work, 35);
  CHECK(*sheet.lines[0].pieces == Ratio(3, 1));
  CHECK(!sheet.lines[1].pieces);
  CHECK(*sheet.lines[0].sure_weight == amount("5 lb"));
  CHECK(sheet.lines[0].to_pull == amount("2268 g"));
  CHECK(!sheet.lines[1].sure_weight);
}

TEST_CASE("a grade without a lower bound promises no weight", "[plan][assembly][src:practice]") {
  Work work(plain("scallop", "count_grade = \"U/15 per lb\"\nmeasure = [" + measured("1 piece", "35 g") + "]\n") +
            parcels(each("scallop", "1 piece") + each("crumbs", "50 g")));
  const Assembly sheet = assembly_of(work, 10);
  CHECK(!sheet.lines[0].sure_weight);
  CHECK(sheet.lines[0].to_pull == amount("350 g"));
}

TEST_CASE("the weight of a unit is what the book states, else the sum of its lines", "[plan][assembly]") {
  Work stated(parcels(each("crumbs", "45 g") + each("cream", "42 g"), "unit_least = \"82 g\"\nunit_most = \"90 g\"\n"));
  const Assembly sheet = assembly_of(stated, 1);
  CHECK(sheet.unit_weight == amount("85 g"));
  CHECK(sheet.unit_least == amount("82 g"));
  CHECK(sheet.unit_most == amount("90 g"));
  Work summed(parcels(each("crumbs", "45 g") + each("cream", "42 g")));
  summed.product_to_change().unit_weight.reset();
  CHECK(assembly_of(summed, 1).unit_weight == amount("87 g"));
  CHECK(!assembly_of(summed, 1).unit_least);
}

TEST_CASE("a level disher holds a quart shared by its number", "[plan][assembly][src:practice]") {
  Work work(parcels(each("spiced-butter", "60 g", ", disher = 16") + each("crumbs", "25 g")));
  const Assembly sheet = assembly_of(work, 10);
  CHECK(*sheet.lines[0].disher == amount("2 fl oz"));
  CHECK(!sheet.lines[1].disher);
}

TEST_CASE("what is brushed or drizzled is told by the tray", "[plan][assembly]") {
  Work work(parcels(each("crumbs", "80 g") + each("cream", "1.25 g", ", laying = \"brushed\""), tray("24 pieces")));
  const Assembly sheet = assembly_of(work, 30);
  CHECK(*sheet.lines[1].on_tray == amount("30 g"));
  CHECK(!sheet.lines[0].on_tray);
  Work no_tray(parcels(each("crumbs", "80 g") + each("cream", "1.25 g", ", laying = \"brushed\"")));
  CHECK(!assembly_of(no_tray, 30).lines[1].on_tray);
}

TEST_CASE("the wanted units lie on whole trays and an odd one; make-over is for what is lost", "[plan][assembly]") {
  Work work(parcels(each("crumbs", "85 g"),
                    "make_over = \"10 %\"\n" + tray("6 pieces", "case") + tray("24 pieces") + tray("12 pieces")));
  const Assembly odd = assembly_of(work, 60);
  REQUIRE(odd.trays);
  CHECK(odd.trays->container->holds == amount("24 pieces"));
  CHECK(odd.trays->whole == 2);
  CHECK(odd.trays->odd == 12);
  CHECK(assembly_of(work, 48).trays->odd == 0);
  CHECK(assembly_of(work, 5).trays->whole == 0);
}

TEST_CASE("without a tray that holds pieces there are no trays", "[plan][assembly]") {
  Work work(parcels(each("crumbs", "85 g"), tray("6 pieces", "case") + tray("2 kg")));
  CHECK(!assembly_of(work, 60).trays);
}

TEST_CASE("no more is taken out of the cold than hands assemble in the time allowed", "[plan][assembly]") {
  Work work(parcels(each("crumbs", "85 g"), "units_per_hour = 130\n"));
  work.book.kitchen.out_of_cold_seconds = 1800;
  const Assembly sheet = assembly_of(work, 200);
  REQUIRE(sheet.out_of_cold);
  CHECK(sheet.out_of_cold->seconds == 1800);
  CHECK(sheet.out_of_cold->units == 65);
  CHECK(sheet.out_of_cold->times == 4);
  CHECK(assembly_of(work, 195).out_of_cold->times == 3);
  CHECK(assembly_of(work, 12).out_of_cold->units == 12);
}

TEST_CASE("where one unit takes longer than the time out of the cold no number is given", "[plan][assembly]") {
  Work work(parcels(each("crumbs", "85 g"), "units_per_hour = 1\n"));
  work.book.kitchen.out_of_cold_seconds = 1800;
  CHECK(assembly_of(work, 4).out_of_cold->units == 0);
  CHECK(assembly_of(work, 4).out_of_cold->times == 0);
  work.book.kitchen.out_of_cold_seconds = 0;
  CHECK(!assembly_of(work, 4).out_of_cold);
}

TEST_CASE("the first five units are weighed, then every twentieth", "[plan][assembly][src:practice]") {
  Work work(parcels(each("crumbs", "85 g")));
  CHECK(assembly_of(work, 3).check_weigh == std::vector<std::int64_t>{1, 2, 3});
  CHECK(assembly_of(work, 19).check_weigh == std::vector<std::int64_t>{1, 2, 3, 4, 5});
  CHECK(assembly_of(work, 61).check_weigh == std::vector<std::int64_t>{1, 2, 3, 4, 5, 20, 40, 60});
}

TEST_CASE("a line of an assembly names the allergens that it brings", "[plan][assembly]") {
  Work work(parcels(each("crumbs", "45 g") + each("spiced-butter", "40 g")));
  const Assembly sheet = assembly_of(work, 10);
  CHECK(sheet.lines[0].allergens == std::vector<QString>{QStringLiteral("wheat")});
  CHECK(sheet.lines[1].allergens == std::vector<QString>{QStringLiteral("milk")});
  CHECK(sheet.lines[1].allergens_known);
}

TEST_CASE("what is not made in pieces is not assembled, and no unit is none", "[plan][assembly]") {
  Work work(p(line("cream", "1 kg")));
  CHECK(refusals(work, 10) ==
        QStringList{"product \"p\" is not made in pieces", "state makes in pieces, or unit_weight"});
  Work parcel(parcels(each("crumbs", "85 g")));
  CHECK(refusals(parcel, 0) == QStringList{"no piece of product \"p\" is asked for", "ask for 1 piece or more"});
  CHECK(refusals(parcel, 1).isEmpty());
}

TEST_CASE("a line of a unit without a weight is told as the book tells it", "[plan][assembly]") {
  Work work(parcels(each("cream", "1 tbsp")));
  CHECK(refusals(work, 10) ==
        QStringList{"the line \"cream\" of product \"p\" has no weight, which sheets need: nothing says what a "
                    "volume of \"cream\" weighs",
                    "add [[ingredient.measure]] to \"cream\" with amount, weighs and source"});
}

TEST_CASE("nothing edible of an ingredient, which no book has, is not divided by", "[plan][assembly]") {
  Work work(parcels(each("crumbs", "85 g")));
  work.ingredient_to_change("crumbs").edible = Ratio();
  CHECK(refusals(work, 10) == QStringList{"nothing of ingredient \"crumbs\" is edible", "correct edible"});
}
