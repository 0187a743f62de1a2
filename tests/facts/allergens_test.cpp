// What labels say of allergens: by destination, never less than what is declared, and nothing that is not known.
#include <QRegularExpression>
#include <random>

#include "kitchen.h"

using namespace lardiner;
using namespace lardiner::facts;
using namespace lardiner::facts::tray;

namespace {

batch::Batch butter_with(std::vector<book::Declaration> contains, std::vector<book::Declaration> may_contain = {},
                         const char* site = "") {
  batch::Batch out = butter();
  out.declared = {true, book::gathered(std::move(contains)), book::gathered(std::move(may_contain))};
  out.record.site = QString::fromLatin1(site);
  return out;
}

QString contains_of(std::vector<book::Declaration> contains, const char* site = "") {
  return words_of(run_of(butter_with(std::move(contains), {}, site)), FactId::Contains);
}

QString may_contain_of(std::vector<book::Declaration> contains, std::vector<book::Declaration> may,
                       const char* site = "") {
  return words_of(run_of(butter_with(std::move(contains), std::move(may), site)), FactId::MayContain);
}

}  // namespace

TEST_CASE("CONTAINS names each allergen of the destination's list once, in the list's order",
          "[facts][allergens][src:21-usc-343/w]") {
  CHECK(contains_of({holds("wheat"), holds("milk"), holds("milk")}) == "CONTAINS milk, wheat");
  CHECK(strong_words(run_of(butter_with({holds("milk")})), FactId::Contains) == QStringList{"CONTAINS milk"});
}

TEST_CASE("nuts, fish and crustaceans are named with their species in brackets",
          "[facts][allergens][src:21-usc-343/w]") {
  CHECK(contains_of({holds("tree-nut", "pecan"), holds("tree-nut", "cashew"), holds("fish", "cod"),
                     holds("crustacean", "prawn")}) ==
        "CONTAINS fish (cod), crustaceans (prawn), tree nuts (cashew, pecan)");
}

TEST_CASE("a species that nobody named does not take its substance off the label", "[facts][allergens]") {
  CHECK(contains_of({holds("fish")}) == "CONTAINS fish");
  CHECK(contains_of({holds("fish"), holds("fish", "cod")}) == "CONTAINS fish (cod)");
}

TEST_CASE("the list is the site's, else the kitchen's",
          "[facts][allergens][src:eu-1169-2011/II][src:canada-fdr/B.01.010.1]") {
  const std::vector<book::Declaration> both{holds("celery"), holds("mustard"), holds("barley"), holds("milk")};
  CHECK(contains_of(both) == "CONTAINS milk");
  CHECK(contains_of(both, "harbour") == "CONTAINS milk");
  CHECK(contains_of(both, "calais") == "CONTAINS cereals containing gluten (barley), milk, celery, mustard");
  const QString canada = contains_of(both, "windsor");
  CHECK(canada.startsWith("CONTAINS "));
  for (const char* word : {"milk", "mustard", "barley"}) CHECK(canada.contains(QLatin1String(word)));
  CHECK_FALSE(canada.contains("celery"));
}

TEST_CASE("a food with nothing of the list says so by the list's name, and never 'free from'", "[facts][allergens]") {
  CHECK(contains_of({}) == "None of the US major allergens");
  CHECK(contains_of({}, "calais") == "None of the 14 allergens of EU law");
  CHECK(contains_of({}, "windsor") == "None of the priority allergens of Canada");
  CHECK(contains_of({holds("celery")}) == "None of the US major allergens");
}

TEST_CASE("beside a 'may contain', nothing of the list is said of the ingredients only", "[facts][allergens]") {
  const LabelRun run = run_of(butter_with({}, {holds("peanut")}));
  CHECK(words_of(run, FactId::Contains) == "None of the US major allergens as an ingredient");
  CHECK(words_of(run, FactId::MayContain) == "May contain peanuts");
}

TEST_CASE("'may contain' does not repeat what is contained", "[facts][allergens]") {
  CHECK(may_contain_of({holds("milk")}, {holds("milk"), holds("egg")}) == "May contain egg");
  CHECK(may_contain_of({holds("milk")}, {holds("milk")}).isEmpty());
  CHECK(may_contain_of({holds("fish", "cod")}, {holds("fish", "hake"), holds("fish", "cod")}) ==
        "May contain fish (hake)");
  CHECK(may_contain_of({}, {holds("celery")}).isEmpty());
  CHECK(may_contain_of({}, {holds("celery")}, "calais") == "May contain celery");
}

TEST_CASE("sulphites are told in the ingredient list for the US, in CONTAINS elsewhere",
          "[facts][allergens][src:21-cfr-101/101.100]") {
  CHECK(contains_of({sulphites(15)}) == "None of the US major allergens");
  CHECK(contains_of({sulphites(15)}, "calais") == "CONTAINS sulphites");
  CHECK(contains_of({sulphites(10)}, "calais") == "None of the 14 allergens of EU law");
  batch::Batch sold = butter_for_sale();
  sold.declared.contains.push_back(sulphites(15));
  const LabelRun run = run_of(sold);
  CHECK(words_of(run, FactId::Contains) == "CONTAINS milk");
  CHECK(words_of(run, FactId::Ingredients) == "Ingredients: Butter, Lime, Apricots (sulphites).");
}

TEST_CASE("allergens stand out in the ingredient list where the destination's law asks for it",
          "[facts][allergens][src:eu-1169-2011/21]") {
  batch::Batch sold = butter_for_sale();
  CHECK(strong_words(run_of(sold), FactId::Ingredients) == QStringList{"Ingredients: "});
  sold.record.site = QStringLiteral("calais");
  CHECK(strong_words(run_of(sold), FactId::Ingredients) == QStringList{"Ingredients: ", "Butter", "Apricots"});
}

TEST_CASE("a substitution's new allergens are told apart, in capitals", "[facts][allergens]") {
  batch::Batch batch = butter_with({holds("milk"), holds("sesame")});
  batch::Difference difference;
  difference.adds = {holds("sesame")};
  batch.differences = {difference};
  CHECK(words_of(run_of(batch), FactId::Difference) == "Substitution adds SESAME");
  batch.differences.front().adds = {holds("celery")};
  CHECK_FALSE(says(run_of(batch), FactId::Difference));
}

TEST_CASE("allergens that are not known are never printed as none", "[facts][allergens][refused]") {
  batch::Batch batch = butter();
  batch.declared = {};
  CHECK(refused(batch) ==
        "the allergens of \"lime-butter\" are not known\n"
        "  complete the declarations of its supplier items and the kitchen's allergen_list\n");
  batch.declared = {false, {holds("milk")}, {}};
  CHECK_FALSE(refused(batch).isEmpty());
}

TEST_CASE("whatever is declared, CONTAINS names all of it that the list asks for and nothing else",
          "[facts][allergens][property]") {
  std::mt19937 random(20261125);
  const auto pick = [&](int most) { return static_cast<int>(random() % static_cast<unsigned>(most)); };
  const book::AllergenLaw& law = kitchen().law;
  const words::Language& english = languages().front();
  const auto word = [&](const QString& id) { return english.word(QStringLiteral("allergen.") + id); };
  for (int round = 0; round < 300; ++round) {
    std::vector<book::Declaration> declared;
    for (int i = pick(9); i > 0; --i) {
      book::Declaration one;
      one.substance = law.substances[pick(static_cast<int>(law.substances.size()))];
      const QStringList species = law.species_of(one.substance);
      if (!species.isEmpty() && pick(4) > 0) one.species = species[pick(static_cast<int>(species.size()))];
      if (law.measured.contains(one.substance) && pick(3) > 0) one.mg_per_kg = measure::Ratio(pick(20), 1);
      declared.push_back(one);
    }
    for (const auto& [site, id] : {std::pair{"", "us"}, std::pair{"calais", "eu"}, std::pair{"windsor", "ca"}}) {
      const batch::Batch batch = butter_with(declared, {}, site);
      const QString said = contains_of(declared, site);
      CAPTURE(round, site, said);
      QStringList expected;
      for (const book::ListedAllergen& allergen :
           book::listed(batch.declared.contains, *law.list(QString::fromLatin1(id)))) {
        if (allergen.in_ingredient_list_only) continue;
        expected << word(allergen.entry);
        if (!allergen.species.isEmpty()) expected << word(allergen.species);
      }
      QStringList named = said.startsWith("CONTAINS ")
                              ? said.mid(9).split(QRegularExpression(QStringLiteral("[,()] *")), Qt::SkipEmptyParts)
                              : QStringList();
      for (QString& name : named) name = name.trimmed();
      expected.removeDuplicates();
      named.removeDuplicates();
      expected.sort();
      named.sort();
      CHECK(named == expected);
      CHECK(said.startsWith("None of ") == expected.isEmpty());
    }
  }
}
