// How many units what is there gives, and which item limits them.
#include "plan/assembly.h"
#include "work.h"

using namespace lardiner;
using namespace lardiner::plan;
using namespace lardiner::plan::kitchen;
using measure::Ratio;

namespace {

QByteArray each(const QByteArray& item, const QByteArray& what) {
  return "{ item = \"" + item + "\", per_unit = \"" + what + "\" },";
}

QByteArray parcels(const QByteArray& lines) { return p(lines, "makes = \"10 pieces\"\nunit_weight = \"85 g\"\n"); }

QByteArray scallop(const QByteArray& grade, const QByteArray& more = {}) {
  return plain("scallop", "count_grade = \"" + grade + "\"\n" + more);
}

There there(const char* item, const char* quantity) { return {QString::fromLatin1(item), amount(quantity)}; }

QString number(std::optional<std::int64_t> units) { return units ? QString::number(*units) : QStringLiteral("?"); }

/// Each item with its units at worst, likely and best.
QStringList units(Work& work, const std::vector<There>& all) {
  const auto out = units_from(work.book, work.weighing, work.product(), all);
  if (!out) return Work::said(out.error());
  QStringList shown;
  for (const Suffices& item : *out)
    shown += QStringLiteral("%1 %2/%3/%4")
                 .arg(item.item, number(item.units.worst), number(item.units.likely), number(item.units.best));
  return shown;
}

}  // namespace

TEST_CASE("the item that gives the fewest units is the limiting one, in front", "[plan][units_from]") {
  Work work(parcels(each("crumbs", "45 g") + each("spiced-butter", "40 g")));
  CHECK(units(work, {there("crumbs", "4.5 kg"), there("spiced-butter", "3.99 kg")}) ==
        QStringList{"spiced-butter 99/99/99", "crumbs 100/100/100"});
}

TEST_CASE("what is there of an ingredient is as purchased", "[plan][units_from]") {
  Work work(parcels(each("cod", "40 g") + each("crumbs", "45 g")));
  CHECK(units(work, {there("cod", "1 kg")}) == QStringList{"cod 20/20/20"});
  CHECK(units(work, {there("cod", "999 g")}) == QStringList{"cod 19/19/19"});
}

TEST_CASE("5 lb of 21/25 to the pound are 105 to 125 pieces, of which only the worst is sure",
          "[plan][units_from][src:practice]") {
  Work one(scallop("21/25 per lb") + parcels(each("scallop", "1 piece") + each("crumbs", "70 g")));
  CHECK(units(one, {there("scallop", "5 lb")}) == QStringList{"scallop 105/115/125"});
  Work three(scallop("21/25 per lb") + parcels(each("scallop", "3 pieces") + each("crumbs", "30 g")));
  CHECK(units(three, {there("scallop", "5 lb")}) == QStringList{"scallop 35/38/41"});
  CHECK(units(three, {there("scallop", "100 pieces")}) == QStringList{"scallop 33/33/33"});
}

TEST_CASE("a grade without a lower bound has no worst case, and so limits first", "[plan][units_from][src:practice]") {
  Work work(scallop("U/15 per lb", "measure = [" + measured("1 piece", "35 g") + "]\n") +
            parcels(each("scallop", "2 pieces") + each("crumbs", "15 g")));
  CHECK(units(work, {there("crumbs", "30 g"), there("scallop", "10 lb")}) ==
        QStringList{"scallop ?/?/75", "crumbs 2/2/2"});
}

TEST_CASE("graded pieces of what goes in by weight are as light, or as heavy, as their grade allows",
          "[plan][units_from]") {
  Work work(scallop("20/30 per lb") + parcels(each("scallop", "0.1 lb") + each("crumbs", "40 g")));
  CHECK(units(work, {there("scallop", "300 pieces")}) == QStringList{"scallop 100/120/150"});
  CHECK(units(work, {there("scallop", "10 lb")}) == QStringList{"scallop 100/100/100"});
}

TEST_CASE("what is counted in one line and weighed in another has no sure number by weight", "[plan][units_from]") {
  Work work(scallop("20/30 per lb") +
            parcels(each("scallop", "1 piece") + each("scallop", "0.06 lb") + each("crumbs", "50 g")));
  CHECK(units(work, {there("scallop", "10 lb")}) == QStringList{"scallop ?/100/100"});
}

TEST_CASE("a share that no nanogram holds exactly does not cost a unit", "[plan][units_from]") {
  Work work(p("{ item = \"crumbs\", parts = 2 }, { item = \"cream\", parts = 1 }",
              "makes = \"10 pieces\"\nunit_weight = \"100 g\"\n"));
  CHECK(units(work, {there("crumbs", "2 kg")}) == QStringList{"crumbs 30/30/30"});
  CHECK(units(work, {there("crumbs", "1999.9 g")}) == QStringList{"crumbs 29/29/29"});
}

TEST_CASE("pieces of what has a measure weigh by that", "[plan][units_from]") {
  Work work(parcels(each("lime", "15 g") + each("crumbs", "70 g")));
  CHECK(units(work, {there("lime", "10 pieces")}) == QStringList{"lime 40/40/40"});
}

TEST_CASE("nothing there gives no unit", "[plan][units_from]") {
  Work work(parcels(each("crumbs", "85 g")));
  CHECK(units(work, {there("crumbs", "0 g")}) == QStringList{"crumbs 0/0/0"});
}

TEST_CASE("an item that is not in the formula is refused, each of them told", "[plan][units_from]") {
  Work work(parcels(each("crumbs", "85 g")));
  CHECK(units(work, {there("crumb", "1 kg"), there("crumbs", "1 kg"), there("crumbs", "1 L")}) ==
        QStringList{"\"crumb\" is not in the formula of product \"p\"", "did you mean crumbs?",
                    "nothing says what a volume of \"crumbs\" weighs",
                    "add [[ingredient.measure]] to \"crumbs\" with amount, weighs and source"});
}

TEST_CASE("what is not made in pieces gives no units", "[plan][units_from]") {
  Work work(p(line("cream", "1 kg")));
  CHECK(units(work, {there("cream", "1 kg")}) ==
        QStringList{"product \"p\" is not made in pieces", "state makes in pieces, or unit_weight"});
}
