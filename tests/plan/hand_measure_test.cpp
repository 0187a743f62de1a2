// Weights in spoons and cups, by the USDA's own measures.
#include "plan/hand_measure.h"

#include "work.h"

using namespace lardiner;
using namespace lardiner::plan;
using namespace lardiner::plan::kitchen;
using measure::Quantity;
using measure::Ratio;
using measure::Unit;

namespace {

book::Ingredient with(const std::vector<std::pair<Quantity, const char*>>& measures) {
  book::Ingredient ingredient;
  for (const auto& [volume, mass] : measures)
    ingredient.measures.push_back({volume, amount(mass), QStringLiteral("test"), {}});
  return ingredient;
}

/// USDA SR28 20081, 02047 and 02020.
book::Ingredient flour() { return with({{measure::one(Unit::Cup), "125 g"}}); }
book::Ingredient salt() {
  return with({{measure::one(Unit::Teaspoon), "6 g"}, {measure::one(Unit::Tablespoon), "18 g"}});
}
book::Ingredient garlic() {
  return with({{measure::one(Unit::Teaspoon), "3.1 g"}, {measure::one(Unit::Tablespoon), "9.7 g"}});
}

QString in_hand(const book::Ingredient& ingredient, const char* weight) {
  const std::optional<HandMeasure> found = hand_measure(ingredient, amount(weight));
  if (!found) return QStringLiteral("none");
  const QString unit = found->unit == Unit::Cup          ? QStringLiteral("cup")
                       : found->unit == Unit::Tablespoon ? QStringLiteral("tbsp")
                                                         : QStringLiteral("tsp");
  const QString count = QString::number(found->count.num());
  return (found->count.den() == 1 ? count : count + u'/' + QString::number(found->count.den())) + u' ' + unit;
}

struct Listed {
  Quantity volume;
  QString grams;
};

// A food's measures of one cup, tablespoon or teaspoon in the USDA's table.
std::vector<Listed> listed(const QByteArray& table, const char* ndb) {
  const std::pair<const char*, Unit> units[] = {
      {"cup", Unit::Cup}, {"tbsp", Unit::Tablespoon}, {"tsp", Unit::Teaspoon}};
  std::vector<Listed> all;
  for (const QByteArray& row : table.split('\n')) {
    const QStringList cells = QString::fromLatin1(row).trimmed().remove(u'~').split(u'^');
    if (cells.size() < 5 || cells[0] != QLatin1String(ndb) || cells[2].toDouble() != 1) continue;
    for (const auto& [name, unit] : units)
      if (cells[3] == QLatin1String(name)) all.push_back({measure::one(unit), cells[4]});
  }
  return all;
}

}  // namespace

TEST_CASE("the weight of one listed measure is one of it", "[plan][hand_measure][src:usda-sr28/WEIGHT]") {
  QFile file(QStringLiteral(LARDINER_OPEN_DATA "/usda-sr28/WEIGHT.txt"));
  if (!file.open(QIODevice::ReadOnly)) {
    WARN("skipped: no open data");
    return;
  }
  const QByteArray table = file.readAll();
  for (const char* ndb : {"01001", "20081", "19335", "02047", "02020", "01077", "19296", "16123"}) {
    INFO(ndb);
    const std::vector<Listed> measures = listed(table, ndb);
    REQUIRE(!measures.empty());
    book::Ingredient food;
    for (const Listed& measure : measures)
      food.measures.push_back({measure.volume,
                               amount((measure.grams + QStringLiteral(" g")).toUtf8()),
                               QStringLiteral("USDA SR28 ") + QLatin1String(ndb),
                               {}});
    for (const book::Measure& measure : food.measures) {
      const std::optional<HandMeasure> found = hand_measure(food, measure.mass);
      REQUIRE(found);
      CHECK(measure::quantity(found->count, found->unit) == measure.volume);
      CHECK(found->source == measure.source);
    }
  }
}

TEST_CASE("a weight is in quarters of the largest measure that comes near it",
          "[plan][hand_measure][src:usda-sr28/20081]") {
  CHECK(in_hand(flour(), "125 g") == QStringLiteral("1 cup"));
  CHECK(in_hand(flour(), "94 g") == QStringLiteral("3/4 cup"));
  CHECK(in_hand(flour(), "50 g") == QStringLiteral("13/2 tbsp"));
  CHECK(in_hand(flour(), "8 g") == QStringLiteral("1 tbsp"));
  CHECK(in_hand(flour(), "1.3 g") == QStringLiteral("1/2 tsp"));
}

TEST_CASE("there is no hand measure of more than a cup and a quarter, nor of what no quarter comes near",
          "[plan][hand_measure][src:usda-sr28/20081]") {
  CHECK(in_hand(flour(), "156.25 g") == QStringLiteral("5/4 cup"));
  CHECK(in_hand(flour(), "170 g") == QStringLiteral("none"));
  CHECK(in_hand(flour(), "0.9 g") == QStringLiteral("none"));
  CHECK(in_hand(flour(), "0.2 g") == QStringLiteral("none"));
}

TEST_CASE("within a twentieth is near, more is not", "[plan][hand_measure][src:practice]") {
  CHECK(in_hand(flour(), "131.5 g") == QStringLiteral("1 cup"));
  CHECK(in_hand(flour(), "132 g") == QStringLiteral("17 tbsp"));
}

TEST_CASE("a spoon weighs what a measure of just that spoon says", "[plan][hand_measure][src:usda-sr28/02020]") {
  CHECK(in_hand(garlic(), "9.7 g") == QStringLiteral("1 tbsp"));
  CHECK(in_hand(garlic(), "3.1 g") == QStringLiteral("1 tsp"));
  CHECK(in_hand(garlic(), "6.2 g") == QStringLiteral("2 tsp"));
  CHECK(in_hand(salt(), "18 g") == QStringLiteral("1 tbsp"));
  CHECK(in_hand(salt(), "72 g") == QStringLiteral("1/4 cup"));
}

TEST_CASE("a dried blend of 15 g to the tablespoon is 5 g to the teaspoon", "[plan][hand_measure][src:practice]") {
  const book::Ingredient blend = with({{measure::one(Unit::Tablespoon), "15 g"}});
  CHECK(in_hand(blend, "5 g") == QStringLiteral("1 tsp"));
  CHECK(in_hand(blend, "60 g") == QStringLiteral("1/4 cup"));
}

TEST_CASE("without a measure of volume there is none", "[plan][hand_measure]") {
  CHECK(in_hand(with({}), "50 g") == QStringLiteral("none"));
  CHECK(in_hand(with({{measure::one(Unit::Piece), "50 g"}}), "50 g") == QStringLiteral("none"));
}

TEST_CASE("a scaled line has its hand measure, but never one with a maximum by law", "[plan][scaling]") {
  Work work(plain("flour", "measure = [" + measured("1 cup", "125 g") + "]\n") +
            p(line("flour", "250 g") + line("cream", "1 kg")));
  const Scaled half = work.scaled(Makings{Ratio(1, 2)});
  REQUIRE(half.lines[0].measure);
  CHECK(half.lines[0].measure->unit == Unit::Cup);
  CHECK(half.lines[0].measure->source == QStringLiteral("test"));
  CHECK(!half.lines[1].measure);
  work.ingredient_to_change("flour").most_percent = Ratio(1, 2);
  CHECK(!work.scaled(Makings{Ratio(1, 2)}).lines[0].measure);
}
