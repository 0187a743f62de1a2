// What the lists of the United States, the EU and UK, and Canada make of what is declared.
#include "book/allergen.h"

#include "rules.h"

using namespace lardiner;
using namespace lardiner::book;

namespace {

std::vector<Declaration> declared(const QStringList& texts) {
  static const AllergenLaw law = rules_test::allergen_law();
  std::vector<Declaration> all;
  for (const QString& text : texts) {
    const auto read = parse_declaration(text, law);
    if (!read) FAIL(problem::text(read.error()).toStdString());
    all.push_back(*read);
  }
  return all;
}

QString shown(const ListedAllergen& one) {
  QString text = one.entry;
  if (!one.species.isEmpty()) text += u':' + one.species;
  if (one.in_ingredient_list_only) text += QStringLiteral(" (ingredient list)");
  return text;
}

// "fish:cod, milk" as `list` names what is declared, in its own order.
QString on(const char* list, const QStringList& texts) {
  static const AllergenLaw law = rules_test::allergen_law();
  const AllergenList* found = law.list(QLatin1String(list));
  REQUIRE(found != nullptr);
  QStringList all;
  for (const ListedAllergen& one : listed(declared(texts), *found)) all += shown(one);
  return all.join(QStringLiteral(", "));
}

QStringList entries(const char* list) {
  static const AllergenLaw law = rules_test::allergen_law();
  QStringList ids;
  for (const ListEntry& entry : law.list(QLatin1String(list))->entries) ids += entry.id;
  return ids;
}

}  // namespace

TEST_CASE("the US list has nine entries, and sulphites for the ingredient list",
          "[book][allergen][src:21-usc-321/qq-1][src:21-cfr-101/100-a-4]") {
  CHECK(entries("us").join(u' ') ==
        QStringLiteral("milk egg fish crustacean tree-nut wheat peanut soy sesame sulphites"));
}

TEST_CASE("the EU and UK list has the fourteen of Annex II", "[book][allergen][src:eu-1169-2011/annex-ii]") {
  CHECK(entries("eu").join(u' ') == QStringLiteral("gluten-cereals crustacean egg fish peanut soy milk tree-nut celery "
                                                   "mustard sesame sulphites lupin mollusc"));
}

TEST_CASE("the Canadian list has the priority allergens and the gluten sources",
          "[book][allergen][src:canada-fdr/b-01-010-1]") {
  CHECK(entries("ca").join(u' ') ==
        QStringLiteral("egg milk mustard peanut crustacean mollusc fish sesame soy sulphites "
                       "tree-nut wheat triticale barley oats rye"));
}

TEST_CASE("every entry and exemption names its source, and only the EU and UK emphasise", "[book][allergen]") {
  for (const AllergenList& list : rules_test::allergen_law().lists) {
    CHECK_FALSE(list.source.isEmpty());
    CHECK(list.emphasised == (list.id == QLatin1String("eu")));
    for (const ListEntry& entry : list.entries) CHECK_FALSE(entry.source.isEmpty());
    for (const Exemption& exemption : list.exemptions) CHECK_FALSE(exemption.source.isEmpty());
  }
}

TEST_CASE("whey, semolina, cashews and cod are milk, wheat, cashew and cod in the US",
          "[book][allergen][src:21-usc-343/w-2]") {
  const QStringList texts{QStringLiteral("milk"), QStringLiteral("wheat"), QStringLiteral("tree-nut:cashew"),
                          QStringLiteral("fish:cod")};
  CHECK(on("us", texts) == QStringLiteral("milk, fish:cod, tree-nut:cashew, wheat"));
  CHECK(on("ca", texts) == QStringLiteral("milk, fish:cod, tree-nut:cashew, wheat"));
  CHECK(on("eu", texts) == QStringLiteral("gluten-cereals:wheat, fish, milk, tree-nut:cashew"));
}

TEST_CASE("coconut alone is no entry anywhere, and chestnut neither",
          "[book][allergen][src:fda-allergen-qa5/appendix]") {
  const QStringList texts{QStringLiteral("tree-nut:coconut"), QStringLiteral("tree-nut:chestnut")};
  CHECK(on("us", texts) == QString());
  CHECK(on("eu", texts) == QString());
  CHECK(on("ca", texts) == QString());
}

TEST_CASE("each of the twelve US tree nuts is listed by its name", "[book][allergen][src:fda-allergen-qa5/appendix]") {
  const QStringList twelve{QStringLiteral("almond"),     QStringLiteral("black-walnut"),
                           QStringLiteral("brazil-nut"), QStringLiteral("california-walnut"),
                           QStringLiteral("cashew"),     QStringLiteral("hazelnut"),
                           QStringLiteral("heartnut"),   QStringLiteral("macadamia"),
                           QStringLiteral("pecan"),      QStringLiteral("pine-nut"),
                           QStringLiteral("pistachio"),  QStringLiteral("walnut")};
  for (const QString& nut : twelve)
    CHECK(on("us", {QStringLiteral("tree-nut:") + nut}) == QStringLiteral("tree-nut:") + nut);
  CHECK(rules_test::allergen_law().list(QStringLiteral("us"))->entries[4].species == twelve);
}

TEST_CASE("pine nuts are listed in the US and Canada, not in the EU", "[book][allergen][src:eu-1169-2011/annex-ii]") {
  CHECK(on("us", {QStringLiteral("tree-nut:pine-nut")}) == QStringLiteral("tree-nut:pine-nut"));
  CHECK(on("ca", {QStringLiteral("tree-nut:pine-nut")}) == QStringLiteral("tree-nut:pine-nut"));
  CHECK(on("eu", {QStringLiteral("tree-nut:pine-nut")}) == QString());
}

TEST_CASE("a nut, fish or crustacean of unnamed species is listed everywhere", "[book][allergen]") {
  const QStringList texts{QStringLiteral("tree-nut"), QStringLiteral("fish"), QStringLiteral("crustacean")};
  CHECK(on("us", texts) == QStringLiteral("fish, crustacean, tree-nut"));
  CHECK(on("eu", texts) == QStringLiteral("crustacean, fish, tree-nut"));
  CHECK(on("ca", texts) == QStringLiteral("crustacean, fish, tree-nut"));
}

TEST_CASE("the species is asked for where the law wants it", "[book][allergen][src:21-usc-343/w-2]") {
  const AllergenLaw law = rules_test::allergen_law();
  const auto lacks = [&](const char* list, const char* text) {
    return lacks_species(declared({QLatin1String(text)}).front(), *law.list(QLatin1String(list)));
  };
  CHECK(lacks("us", "fish"));
  CHECK(lacks("us", "tree-nut"));
  CHECK(lacks("us", "crustacean"));
  CHECK_FALSE(lacks("us", "fish:cod"));
  CHECK_FALSE(lacks("us", "mollusc"));
  CHECK_FALSE(lacks("us", "tree-nut exempt highly-refined-oil"));
  CHECK_FALSE(lacks("eu", "fish"));
  CHECK(lacks("eu", "tree-nut"));
  CHECK(lacks("ca", "mollusc"));
}

TEST_CASE("oysters are no US allergen, and molluscs in the EU and Canada",
          "[book][allergen][src:21-usc-321/qq-1][src:memory]") {
  CHECK(on("us", {QStringLiteral("mollusc:oyster")}) == QString());
  CHECK(on("eu", {QStringLiteral("mollusc:oyster")}) == QStringLiteral("mollusc"));
  CHECK(on("ca", {QStringLiteral("mollusc:oyster")}) == QStringLiteral("mollusc:oyster"));
}

TEST_CASE("mustard and celery are none in the US, both in the EU, mustard in Canada",
          "[book][allergen][src:eu-1169-2011/annex-ii][src:canada-fdr/b-01-010-1]") {
  const QStringList texts{QStringLiteral("mustard"), QStringLiteral("celery")};
  CHECK(on("us", texts) == QString());
  CHECK(on("eu", texts) == QStringLiteral("celery, mustard"));
  CHECK(on("ca", texts) == QStringLiteral("mustard"));
}

TEST_CASE("the anchovy of a Worcestershire sauce is named as fish", "[book][allergen][src:21-usc-343/w-2]") {
  const Declared sauce{true, gathered(declared({QStringLiteral("fish:anchovy")})), {}};
  const Declared stew{true, gathered(declared({QStringLiteral("celery")})), {}};
  const Declared pie = united(united(stew, sauce), Declared{true, {}, {}});
  const AllergenLaw law = rules_test::allergen_law();
  const auto us = listed(pie.contains, *law.list(QStringLiteral("us")));
  REQUIRE(us.size() == 1);
  CHECK(shown(us[0]) == QStringLiteral("fish:anchovy"));
}

TEST_CASE("each cereal with gluten is named in the EU, and is its own entry in Canada",
          "[book][allergen][src:eu-1169-2011/annex-ii][src:canada-fdr/b-01-010-1]") {
  const QStringList texts{QStringLiteral("wheat:spelt"), QStringLiteral("rye"), QStringLiteral("barley"),
                          QStringLiteral("oats"), QStringLiteral("triticale")};
  CHECK(on("eu", texts) == QStringLiteral("gluten-cereals:barley, gluten-cereals:oats, gluten-cereals:rye, "
                                          "gluten-cereals:triticale, gluten-cereals:wheat"));
  CHECK(on("ca", texts) == QStringLiteral("wheat, triticale, barley, oats, rye"));
  CHECK(on("us", texts) == QStringLiteral("wheat"));
  CHECK(on("us", {QStringLiteral("rye"), QStringLiteral("barley"), QStringLiteral("oats")}) == QString());
}

TEST_CASE("sulphites of 9 mg/kg are none, of exactly 10 Canada's and the US ingredient list's, of 11 everybody's",
          "[book][allergen][src:eu-1169-2011/annex-ii][src:canada-fdr/b-01-010-1][src:21-cfr-101/100-a-4]") {
  struct Row {
    const char* content;
    bool us, eu, ca;
  };
  const Row rows[] = {{"9 mg/kg", false, false, false},      {"9.999999 mg/kg", false, false, false},
                      {"10 mg/kg", true, false, true},       {"10 ppm", true, false, true},
                      {"10.000001 mg/kg", true, true, true}, {"11 mg/kg", true, true, true}};
  for (const Row& row : rows) {
    INFO(row.content);
    const QStringList texts{QStringLiteral("sulphites ") + QLatin1String(row.content)};
    CHECK(on("us", texts) == (row.us ? QStringLiteral("sulphites (ingredient list)") : QString()));
    CHECK(on("eu", texts) == (row.eu ? QStringLiteral("sulphites") : QString()));
    CHECK(on("ca", texts) == (row.ca ? QStringLiteral("sulphites") : QString()));
  }
}

TEST_CASE("an unknown content of sulphites is over every threshold", "[book][allergen]") {
  const QStringList texts{QStringLiteral("sulphites unknown")};
  CHECK(on("us", texts) == QStringLiteral("sulphites (ingredient list)"));
  CHECK(on("eu", texts) == QStringLiteral("sulphites"));
  CHECK(on("ca", texts) == QStringLiteral("sulphites"));
  const auto both = gathered(declared({QStringLiteral("sulphites 9 mg/kg"), QStringLiteral("sulphites unknown")}));
  REQUIRE(both.size() == 1);
  CHECK_FALSE(both[0].mg_per_kg.has_value());
}

TEST_CASE("of several contents of sulphites the highest stands", "[book][allergen]") {
  const auto both = gathered(declared({QStringLiteral("sulphites 15 mg/kg"), QStringLiteral("sulphites 9 mg/kg")}));
  REQUIRE(both.size() == 1);
  CHECK(*both[0].mg_per_kg == measure::Ratio(15, 1));
}

TEST_CASE("highly refined oil of soy is exempt in the US and the EU, of peanut in the US alone",
          "[book][allergen][src:21-usc-321/qq-2][src:eu-1169-2011/annex-ii][src:memory]") {
  const QStringList soy{QStringLiteral("soy exempt highly-refined-oil")};
  CHECK(on("us", soy) == QString());
  CHECK(on("eu", soy) == QString());
  CHECK(on("ca", soy) == QStringLiteral("soy"));
  const QStringList peanut{QStringLiteral("peanut exempt highly-refined-oil")};
  CHECK(on("us", peanut) == QString());
  CHECK(on("eu", peanut) == QStringLiteral("peanut"));
  CHECK(on("ca", peanut) == QStringLiteral("peanut"));
}

TEST_CASE("an exemption does not cover the same substance declared without it", "[book][allergen]") {
  const QStringList texts{QStringLiteral("soy exempt highly-refined-oil"), QStringLiteral("soy")};
  CHECK(on("us", texts) == QStringLiteral("soy"));
  CHECK(on("eu", texts) == QStringLiteral("soy"));
}

TEST_CASE("the exceptions of Annex II are the EU's alone", "[book][allergen][src:eu-1169-2011/annex-ii][src:memory]") {
  const std::pair<const char*, const char*> rows[] = {{"wheat exempt wheat-glucose-syrup", "wheat"},
                                                      {"wheat exempt wheat-maltodextrin", "wheat"},
                                                      {"fish:cod exempt fish-gelatine-fining", "fish:cod"},
                                                      {"fish exempt fish-gelatine-carrier", "fish"},
                                                      {"milk exempt lactitol", "milk"},
                                                      {"tree-nut:almond exempt distillate", "tree-nut:almond"},
                                                      {"soy exempt soy-tocopherol", "soy"},
                                                      {"soy exempt soy-phytosterol", "soy"},
                                                      {"soy exempt soy-stanol-ester", "soy"}};
  for (const auto& [text, in_the_us] : rows) {
    INFO(text);
    CHECK(on("eu", {QLatin1String(text)}) == QString());
    CHECK(on("us", {QLatin1String(text)}) == QLatin1String(in_the_us));
  }
  CHECK(on("eu", {QStringLiteral("barley exempt barley-glucose-syrup")}) == QString());
  CHECK(on("ca", {QStringLiteral("barley exempt barley-glucose-syrup")}) == QStringLiteral("barley"));
}

TEST_CASE("not stated is unknown, and makes whatever it goes into unknown", "[book][allergen]") {
  const Declared none{true, {}, {}};
  CHECK(united(none, none).stated);
  CHECK_FALSE(united(none, Declared{}).stated);
  CHECK_FALSE(united(Declared{}, none).stated);
}

TEST_CASE("may contain is kept apart from contains", "[book][allergen]") {
  const Declared a{true, gathered(declared({QStringLiteral("milk")})), gathered(declared({QStringLiteral("sesame")}))};
  const Declared b{true, gathered(declared({QStringLiteral("egg")})), gathered(declared({QStringLiteral("milk")}))};
  const Declared both = united(a, b);
  CHECK(both.contains == declared({QStringLiteral("egg"), QStringLiteral("milk")}));
  CHECK(both.may_contain == declared({QStringLiteral("milk"), QStringLiteral("sesame")}));
}
