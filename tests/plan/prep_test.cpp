// Prep sheets: bowls, the running reading of the scale, and what each line brings of allergens.
#include "plan/prep.h"

#include "work.h"

using namespace lardiner;
using namespace lardiner::plan;
using namespace lardiner::plan::kitchen;
using measure::Ratio;

namespace {

QByteArray in_bowl(const QByteArray& item, const QByteArray& amount, const QByteArray& bowl) {
  return "{ item = \"" + item + "\", amount = \"" + amount + "\", bowl = \"" + bowl + "\" },";
}

Prep prep_of(Work& work) { return prep(work.book, work.scaled(Makings{Ratio(1, 1)})); }

/// Of every bowl its name and what the scale shows after each line; "-" after a weighing on the fine scale.
QStringList readings(const Prep& prep) {
  QStringList all;
  for (const Bowl& bowl : prep.bowls) {
    QStringList in_it;
    for (const PrepLine& line : bowl.lines) in_it += line.reading ? shown(*line.reading) : QStringLiteral("-");
    all += bowl.name.in(QStringLiteral("en")) + u':' + in_it.join(u'|');
  }
  return all;
}

/// What the line of an item brings; "?" behind it where that is not known to be all.
QString brings(const Prep& prep, const char* item) {
  for (const Bowl& bowl : prep.bowls)
    for (const PrepLine& line : bowl.lines) {
      if (line.amount.line->item != QLatin1String(item)) continue;
      const QStringList entries(line.allergens.begin(), line.allergens.end());
      return entries.join(u',') + (line.allergens_known ? "" : "?");
    }
  return QStringLiteral("no such line");
}

}  // namespace

TEST_CASE("the reading of a bowl is the sum of what has gone into it", "[plan][prep]") {
  Work work(p(in_bowl("paprika", "600 g", "dry") + in_bowl("salt", "400 g", "dry") + in_bowl("cream", "2 kg", "wet") +
              in_bowl("lime", "250 g", "wet")));
  CHECK(readings(prep_of(work)) == QStringList{"dry:600 g|1 kg", "wet:2 kg|2.25 kg"});
}

TEST_CASE("lines without a bowl go into the vessel one after the other", "[plan][prep]") {
  Work work(p(line("cream", "2 kg") + line("salt", "40 g")));
  CHECK(readings(prep_of(work)) == QStringList{":2 kg|2.04 kg"});
}

TEST_CASE("a bowl that is named again later is tared again", "[plan][prep]") {
  Work work(p(in_bowl("paprika", "600 g", "dry") + line("cream", "2 kg") + in_bowl("salt", "400 g", "dry")));
  CHECK(readings(prep_of(work)) == QStringList{"dry:600 g", ":2 kg", "dry:400 g"});
}

TEST_CASE("a fine weighing has no reading in the bowl, but what was added counts in the next", "[plan][prep]") {
  Work work(p(line("cream", "500 g") + line("salt", "3.6 g") + line("crumbs", "200 g") + line("paprika", "3.6 g") +
              line("lime", "100 g")));
  CHECK(readings(prep_of(work)) == QStringList{":500 g|-|704 g|-|807 g"});
}

TEST_CASE("the last reading of a single bowl without fine lines is the printed total", "[plan][prep]") {
  Work work(p(line("cream", "300.4 g") + line("salt", "100.4 g") + line("crumbs", "200.4 g")));
  const Prep sheet = prep_of(work);
  CHECK(*sheet.bowls.back().lines.back().reading == sheet.scaled.input);
}

TEST_CASE("a line names the allergens that it brings through any depth, in the list's order", "[plan][prep]") {
  Work work(p(line("fish-cake", "1 kg") + line("cream", "1 kg") + line("salt", "50 g")));
  const Prep sheet = prep_of(work);
  CHECK(brings(sheet, "fish-cake") == QStringLiteral("milk,fish,wheat"));
  CHECK(brings(sheet, "cream") == QStringLiteral("milk"));
  CHECK(brings(sheet, "salt") == QString());
}

TEST_CASE("an entry of which several species are in a line is named once", "[plan][prep]") {
  Work work(ingredient("fish-mix", "yes", "fish", "[\"fish:cod\", \"fish:hake\"]") + p(line("fish-mix", "1 kg")));
  CHECK(brings(prep_of(work), "fish-mix") == QStringLiteral("fish"));
}

TEST_CASE("the entries are those of the kitchen's own list", "[plan][prep][src:eu-1169-2011/annex-ii]") {
  Work work(ingredient("dressing", "yes", "", "[\"mustard\", \"egg\"]") + p(line("dressing", "1 kg")));
  CHECK(brings(prep_of(work), "dressing") == QStringLiteral("egg"));
  work.book.kitchen.allergen_list = QStringLiteral("eu");
  CHECK(brings(prep_of(work), "dressing") == QStringLiteral("egg,mustard"));
}

TEST_CASE("a line of which a declaration is missing is not known to bring nothing", "[plan][prep]") {
  Work work(
      "[[ingredient]]\nid = \"relish\"\nname = \"relish\"\ntcs = \"no\"\ntcs_basis = \"test\"\nmust_be_cooked = "
      "false\n[[ingredient.supplier_item]]\nid = \"relish-a\"\nsupplier = \"A\"\n" +
      p(line("relish", "1 kg") + line("salt", "50 g")));
  CHECK(brings(prep_of(work), "relish") == QStringLiteral("?"));
  CHECK(brings(prep_of(work), "salt") == QString());
  work.book.kitchen.allergen_list = QStringLiteral("none-such");
  CHECK(brings(prep_of(work), "salt") == QStringLiteral("?"));
}
