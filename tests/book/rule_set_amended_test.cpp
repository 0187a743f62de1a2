// A kitchen's amendments of the rule set that it adopted: tighter freely, looser only on somebody else's authority.
#include <random>

#include "book/limit_text.h"
#include "reader/read.h"
#include "rules.h"

using namespace lardiner;
using namespace lardiner::book;

namespace {

struct Amended {
  RuleSet rules = rules_test::food_code();
  problem::Errors errors;

  QString told() const {
    QString all;
    for (const problem::Error& error : errors) all += QStringLiteral("%1 / %2\n").arg(error.what, error.hint);
    return all;
  }
};

Amended amended(const QString& toml) {
  Amended result;
  const auto root = reader::read_toml(toml.toUtf8(), QStringLiteral("kitchen.toml"));
  REQUIRE(root);
  std::vector<const reader::Value*> tables;
  if (const reader::Value* all = root->find(u"amendment")) {
    for (const reader::Value& table : all->items) tables.push_back(&table);
  }
  amend(result.rules, tables, result.errors);
  return result;
}

QString table(const char* figure, const char* value, const char* authority = "kitchen rule") {
  return QStringLiteral("[[amendment]]\nfigure = \"%1\"\nvalue = \"%2\"\nauthority = \"%3\"\n")
      .arg(QString::fromUtf8(figure), QString::fromUtf8(value), QString::fromUtf8(authority));
}

}  // namespace

TEST_CASE("a kitchen may tighten the days on its own authority, wherever they are read", "[book][rules][amendment]") {
  const Amended result = amended(table("ready-to-eat-chilled", "5 days"));
  CHECK(result.told() == QString());
  CHECK(result.rules.ready_to_eat_chilled.length == Length{Length::Unit::Days, 5, 1});
  CHECK(result.rules.ready_to_eat_chilled.authority.text() == QStringLiteral("kitchen rule"));
  CHECK(result.rules.figure(QStringLiteral("ready-to-eat-chilled"))->length.count == 5);
  CHECK(result.rules.opened_package.length.count == 7);
}

TEST_CASE("a kitchen may not loosen the days on its own authority", "[book][rules][amendment][refused]") {
  const Amended result = amended(table("ready-to-eat-chilled", "10 days"));
  CHECK(result.told() ==
        QStringLiteral("\"ready-to-eat-chilled\" is loosened from 7 days to 10 days on the kitchen's own authority / "
                       "keep to 7 days, or name the document that allows more as its authority\n"));
  REQUIRE(result.errors.size() == 1);
  CHECK(result.errors[0].code == problem::Code::Unsafe);
  CHECK(result.errors[0].place.line == 3);
  CHECK(result.rules.ready_to_eat_chilled.length.count == 7);
  CHECK(result.rules.ready_to_eat_chilled.authority.section == QStringLiteral("3-501.17(A)"));
}

TEST_CASE("a named document may loosen a figure", "[book][rules][amendment]") {
  const Amended result = amended(table("ready-to-eat-chilled", "10 days", "Variance 12, 2026-02-03"));
  CHECK(result.told() == QString());
  CHECK(result.rules.ready_to_eat_chilled.length.count == 10);
  CHECK(result.rules.ready_to_eat_chilled.authority.text() == QStringLiteral("Variance 12, 2026-02-03"));
}

TEST_CASE("the kitchen's authority is its own however it is spelt", "[book][rules][amendment][refused]") {
  for (const char* authority : {"kitchen rule", " Kitchen  Rule ", "KITCHEN", "Our kitchen"})
    CHECK(amended(table("opened-package", "8 days", authority)).errors.size() == 1);
}

TEST_CASE("holding temperatures are tightened towards safety and derived on the safe side",
          "[book][rules][amendment]") {
  const Amended result = amended(table("cold-holding", "38 °F") + table("hot-holding", "140 °F"));
  CHECK(result.told() == QString());
  CHECK(text(result.rules.cold_holding) == QStringLiteral("38 °F (3 °C)"));
  CHECK(text(result.rules.hot_holding) == QStringLiteral("140 °F (60 °C)"));
  CHECK(result.rules.hot_holding_authority.text() == QStringLiteral("kitchen rule"));
}

TEST_CASE("holding warmer cold or cooler hot is loosening", "[book][rules][amendment][refused]") {
  CHECK(
      amended(table("cold-holding", "45 °F (7 °C)")).told() ==
      QStringLiteral("\"cold-holding\" is loosened from 41 °F (5 °C) to 45 °F (7 °C) on the kitchen's own authority / "
                     "keep to 41 °F (5 °C), or name the document that allows more as its authority\n"));
  CHECK(amended(table("hot-holding", "130 °F")).errors.size() == 1);
  CHECK(amended(table("hot-holding", "57 °C")).errors.empty());
}

TEST_CASE("a hotter cook is tighter, keeps the time where none is written, and takes its place in the order",
          "[book][rules][amendment]") {
  const Amended result = amended(table("cook-poultry", "170 °F") + table("cook-fish", "175 °F (80 °C)"));
  CHECK(result.told() == QString());
  const CookMinimum& poultry = *result.rules.cook_for(QStringLiteral("poultry"));
  const CookMinimum& fish = *result.rules.cook_for(QStringLiteral("fish"));
  CHECK(text(poultry.any_of.front()) == QStringLiteral("170 °F (77 °C) instant"));
  CHECK(text(fish.any_of.front()) == QStringLiteral("175 °F (80 °C) 15 s"));
  CHECK(fish.demand > poultry.demand);
  CHECK(poultry.demand > result.rules.cook_for(QStringLiteral("stuffed"))->demand);
}

TEST_CASE("a cooler cook, or a shorter one, is loosening", "[book][rules][amendment][refused]") {
  CHECK(amended(table("cook-poultry", "160 °F instant")).errors.size() == 1);
  CHECK(amended(table("cook-ground-meat", "155 °F 10 s")).errors.size() == 1);
  CHECK(amended(table("cook-fish", "150 °F instant")).errors.size() == 1);
  CHECK(amended(table("cook-ground-meat", "160 °F instant")).errors.empty());
}

TEST_CASE("an amended class may not be left undercooked by a more demanding one", "[book][rules][amendment][refused]") {
  const QString told = amended(table("cook-whole-meat", "145 °F 10 min")).told();
  CHECK(told.contains(QStringLiteral(
      "\"ground-meat\" may be cooked to 155 °F (68 °C) 17 s, which leaves \"whole-meat\" in the same mixture "
      "undercooked / amend the more demanding class too, so that a mixture is cooked through\n")));
}

TEST_CASE("times are amended, and shared authorities name what they amend", "[book][rules][amendment]") {
  const Amended result = amended(table("time-control", "3 h") + table("reheat-hot-holding-within", "1 h") +
                                 table("reheat-hot-holding", "170 °F") + table("cooling-whole", "5 h") +
                                 table("microwave-cook-stand", "3 min"));
  CHECK(result.told() == QString());
  CHECK(result.rules.time_control.length.count == 3 * 3600);
  CHECK(result.rules.time_control.authority.text() == QStringLiteral("kitchen rule"));
  const ReheatMinimum& reheat = *result.rules.reheat_for(QStringLiteral("hot-holding"));
  CHECK(*reheat.within_seconds == 3600);
  CHECK(text(reheat.at) == QStringLiteral("170 °F (77 °C) 15 s"));
  CHECK(reheat.authority.text() == QStringLiteral("kitchen rule, amending FDA Food Code 2022 3-403.11(A)"));
  CHECK(result.rules.cooling[1].within_seconds == 5 * 3600);
  CHECK(result.rules.microwave_stand_seconds == 180);
}

TEST_CASE("a longer time without temperature control or a shorter stand is loosening",
          "[book][rules][amendment][refused]") {
  CHECK(amended(table("time-control", "5 h")).errors.size() == 1);
  CHECK(amended(table("cooling-first-stage", "3 h")).errors.size() == 1);
  CHECK(amended(table("reheat-microwave-stand", "1 min")).errors.size() == 1);
  CHECK(amended(table("time-control-cold-start-never-above", "75 °F")).errors.size() == 1);
}

TEST_CASE("an amendment of an unknown figure is told the nearest", "[book][rules][amendment][refused]") {
  CHECK(
      amended(table("ready-to-eat-chiled", "5 days")).told() ==
      QStringLiteral(
          "\"ready-to-eat-chiled\" is not a figure of FDA Food Code 2022 / did you mean \"ready-to-eat-chilled\"?\n"));
  CHECK(amended(table("cook-poultri", "170 °F")).told().endsWith(QStringLiteral("did you mean \"cook-poultry\"?\n")));
}

TEST_CASE("an amendment needs its value and its authority, in the kind of the figure",
          "[book][rules][amendment][refused]") {
  CHECK(amended(QStringLiteral("[[amendment]]\nfigure = \"opened-package\"\nvalue = \"5 days\"\n")).told() ==
        QStringLiteral("amendment has no authority / state authority\n"));
  CHECK(amended(QStringLiteral("[[amendment]]\nfigure = \"opened-package\"\nauthority = \"kitchen rule\"\n")).told() ==
        QStringLiteral("amendment has no value / state value\n"));
  CHECK(amended(table("opened-package", "36 h")).told() ==
        QStringLiteral("\"36 h\" is not a number of days / write it as 5 days\n"));
  CHECK(amended(table("opened-package", "0 days")).errors.size() == 1);
  CHECK(amended(table("time-control", "0 h")).told() ==
        QStringLiteral("\"0 h\" is no time at all / write it as 3 h\n"));
  CHECK(amended(table("hot-holding", "140 °F 15 s")).told() ==
        QStringLiteral("\"140 °F 15 s\" has a time, and the figure has none / leave the time out\n"));
}

TEST_CASE("a figure amended twice is refused", "[book][rules][amendment][refused]") {
  const Amended result = amended(table("opened-package", "5 days") + table("opened-package", "6 days"));
  CHECK(result.told() ==
        QStringLiteral("figure \"opened-package\" is amended twice / keep one of the two amendments\n"));
  CHECK(result.rules.opened_package.length.count == 5);
}

TEST_CASE("every figure can be amended by name, once", "[book][rules][amendment]") {
  const RuleSet rules = rules_test::food_code();
  QStringList ids = figure_ids(rules);
  CHECK(ids.contains(QStringLiteral("cook-poultry")));
  CHECK(ids.contains(QStringLiteral("cooling-whole-to")));
  // 6 days and times, 1 never-above, 2 holding, 12 foods, microwave 2, reheats 2 + 3 + 2, cooling 3 times and 3 ends
  CHECK(ids.size() == 36);
  CHECK(ids.removeDuplicates() == 0);
}

TEST_CASE("no amendment by the kitchen alone ever gives more days or time", "[book][rules][amendment]") {
  std::mt19937 random(20261125);
  for (int round = 0; round < 200; ++round) {
    const int days = std::uniform_int_distribution<int>(1, 40)(random);
    const int hours = std::uniform_int_distribution<int>(1, 12)(random);
    const Amended result =
        amended(table("reduced-oxygen", QStringLiteral("%1 days").arg(days).toUtf8().constData()) +
                table("time-control-cold-start", QStringLiteral("%1 h").arg(hours).toUtf8().constData()));
    CHECK(result.rules.reduced_oxygen.length.count == std::min(days, 30));
    CHECK(result.rules.time_control_cold_start.length.count == std::min(hours, 6) * 3600);
    CHECK(result.errors.size() == (days > 30 ? 1U : 0U) + (hours > 6 ? 1U : 0U));
  }
}
