// Household measures and edible yields agree with the USDA's own table.
#include <QFile>
#include <cmath>
#include <optional>

#include "make.h"

using namespace lardiner::measure;

namespace {

struct MeasureRow {
  const char* ndb;
  const char* measure;
  double grams;
};

// USDA SR28, WEIGHT.
const MeasureRow kMeasures[] = {
    {"01001", "cup", 227},   {"01001", "tbsp", 14.2}, {"01001", "stick", 113}, {"01145", "cup", 227},
    {"01145", "tbsp", 14.2}, {"01145", "stick", 113}, {"20081", "cup", 125},   {"19335", "cup", 200},
    {"19335", "tsp", 4.2},   {"02047", "tsp", 6},     {"02047", "tbsp", 18},   {"02020", "tsp", 3.1},
    {"02020", "tbsp", 9.7},  {"01077", "cup", 244},   {"19296", "cup", 339},   {"16123", "tbsp", 16},
    {"01123", "large", 50},  {"01123", "medium", 44},
};

struct YieldRow {
  const char* ndb;
  const char* food;
  int edible;
};

// USDA SR28, FOOD_DES: 100 less the refuse %.
const YieldRow kYields[] = {
    {"11282", "onion", 90},  {"11124", "carrot", 89}, {"11352", "potato", 75},   {"11333", "sweet pepper", 82},
    {"11529", "tomato", 91}, {"11143", "celery", 89}, {"11090", "broccoli", 61}, {"11260", "mushroom", 97},
    {"11215", "garlic", 87}, {"09150", "lemon", 53},
};

// The rows of one file of the data, split at ^ and without their ~; empty when the data is not there.
QList<QStringList> rows(const char* name) {
  QFile file(QStringLiteral(LARDINER_OPEN_DATA "/usda-sr28/") + QLatin1String(name));
  QList<QStringList> all;
  if (!file.open(QIODevice::ReadOnly)) return all;
  for (const QByteArray& line : file.readAll().split('\n')) {
    all.append(QString::fromLatin1(line).trimmed().remove(u'~').split(u'^'));
  }
  return all;
}

std::optional<double> listed_grams(const QList<QStringList>& weights, const MeasureRow& wanted) {
  for (const QStringList& row : weights) {
    if (row.size() > 4 && row[0] == QLatin1String(wanted.ndb) && row[3] == QLatin1String(wanted.measure)) {
      return row[4].toDouble() / row[2].toDouble();
    }
  }
  return std::nullopt;
}

std::optional<int> listed_edible(const QList<QStringList>& foods, const YieldRow& wanted) {
  for (const QStringList& row : foods) {
    if (row.size() > 8 && row[0] == QLatin1String(wanted.ndb)) return 100 - row[8].toInt();
  }
  return std::nullopt;
}

}  // namespace

TEST_CASE("household measures weigh what the USDA's table says", "[measure][sr28][src:usda-sr28/WEIGHT]") {
  const QList<QStringList> weights = rows("WEIGHT.txt");
  if (weights.isEmpty()) {
    WARN("skipped: no open data");
    return;
  }
  for (const MeasureRow& row : kMeasures) {
    INFO(row.ndb << ' ' << row.measure);
    const auto grams = listed_grams(weights, row);
    REQUIRE(grams.has_value());
    CHECK(std::abs(*grams - row.grams) < 1e-9);
  }
}

TEST_CASE("edible yields are a hundred less the refuse of the USDA's table",
          "[measure][sr28][src:usda-sr28/FOOD_DES]") {
  const QList<QStringList> foods = rows("FOOD_DES.txt");
  if (foods.isEmpty()) {
    WARN("skipped: no open data");
    return;
  }
  for (const YieldRow& row : kYields) {
    INFO(row.ndb << ' ' << row.food);
    const auto edible = listed_edible(foods, row);
    REQUIRE(edible.has_value());
    CHECK(*edible == row.edible);
  }
}

TEST_CASE("the table lists no kosher salt: its weight is asked for, never taken from table salt",
          "[measure][sr28][src:usda-sr28/FOOD_DES]") {
  const QList<QStringList> foods = rows("FOOD_DES.txt");
  if (foods.isEmpty()) {
    WARN("skipped: no open data");
    return;
  }
  int kosher_salts = 0;
  for (const QStringList& row : foods) {
    const QString name = row.value(2).toLower();
    if (name.startsWith(QLatin1String("salt")) && name.contains(QLatin1String("kosher"))) ++kosher_salts;
  }
  CHECK(kosher_salts == 0);
}

TEST_CASE("garlic powder's own measures disagree by about 4 in the hundred", "[measure][sr28][src:usda-sr28/WEIGHT]") {
  const double by_teaspoon = 3 * 3.1;
  CHECK(9.7 / by_teaspoon == Approx(1.04).margin(0.005));
}
