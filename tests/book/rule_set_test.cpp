// Every figure of the shipped rule sets, with its section; and that none of them is a constant of the program.
#include "book/rule_set.h"

#include "book/limit_text.h"
#include "rules.h"

using namespace lardiner::book;
using rules_test::food_code;
using rules_test::invented_county;

namespace {

QString shown(const LengthLimit& limit) {
  const QString day_one = limit.length.unit == Length::Unit::Days
                              ? QStringLiteral(", first day %1").arg(limit.length.first_day)
                              : QString();
  return text(limit.length) + day_one + QStringLiteral("; ") + limit.authority.text();
}

QString shown(const CookMinimum& minimum) {
  QStringList ways;
  for (const TimeAtTemperature& way : minimum.any_of) ways += text(way);
  return ways.join(QStringLiteral(" or ")) + QStringLiteral("; ") + minimum.authority.text();
}

QString shown(const ReheatMinimum& minimum) {
  QString all = text(minimum.at);
  if (minimum.stand_seconds > 0) all += QStringLiteral(", stand %1 s").arg(minimum.stand_seconds);
  if (minimum.within_seconds) all += QStringLiteral(", within %1 s").arg(*minimum.within_seconds);
  return all + QStringLiteral("; ") + minimum.authority.text();
}

QString shown(const CoolingStage& stage) {
  return QStringLiteral("from %1 to %2 within %3 s; %4")
      .arg(text(stage.from), text(stage.to))
      .arg(stage.within_seconds)
      .arg(stage.authority.text());
}

QString cook(const RuleSet& rules, const char* food) {
  const CookMinimum* minimum = rules.cook_for(QLatin1String(food));
  return minimum == nullptr ? QStringLiteral("none") : shown(*minimum);
}

QString reheat(const RuleSet& rules, const char* how) {
  const ReheatMinimum* minimum = rules.reheat_for(QLatin1String(how));
  return minimum == nullptr ? QStringLiteral("none") : shown(*minimum);
}

int demand(const RuleSet& rules, const char* food) { return rules.cook_for(QLatin1String(food))->demand; }

TimeAtTemperature way(const char* written) {
  const auto read = parse_limit(QString::fromUtf8(written), Bound::AtLeast);
  REQUIRE(read);
  return {read->temperature, read->seconds.value_or(0)};
}

}  // namespace

TEST_CASE("ready-to-eat food is held at most 7 days, the day of preparation being Day 1",
          "[book][rules][src:food-code-2022/3-501.17]") {
  CHECK(shown(food_code().ready_to_eat_chilled) ==
        QStringLiteral("7 days, first day 1; FDA Food Code 2022 3-501.17(A)"));
}

TEST_CASE("an opened commercial package has 7 days, the day of opening being Day 1",
          "[book][rules][src:food-code-2022/3-501.17]") {
  CHECK(shown(food_code().opened_package) == QStringLiteral("7 days, first day 1; FDA Food Code 2022 3-501.17(B)"));
}

TEST_CASE("cooked food is cooled to 70 °F within 2 h and to 41 °F within 6 h in all",
          "[book][rules][src:food-code-2022/3-501.14]") {
  const RuleSet rules = food_code();
  REQUIRE(rules.cooling.size() == 2);
  CHECK(shown(rules.cooling[0]) ==
        QStringLiteral("from 135 °F (57 °C) to 70 °F (21 °C) within 7200 s; FDA Food Code 2022 3-501.14(A)(1)"));
  CHECK(shown(rules.cooling[1]) ==
        QStringLiteral("from 135 °F (57 °C) to 41 °F (5 °C) within 21600 s; FDA Food Code 2022 3-501.14(A)(2)"));
  CHECK(rules.cooling_authority.text() == QStringLiteral("FDA Food Code 2022 3-501.14"));
}

TEST_CASE("food made from ingredients at room temperature is cooled to 41 °F within 4 h of its first reading",
          "[book][rules][src:food-code-2022/3-501.14]") {
  const RuleSet rules = food_code();
  REQUIRE(rules.cooling_from_ambient.size() == 1);
  CHECK(shown(rules.cooling_from_ambient[0]) ==
        QStringLiteral("from 41 °F (5 °C) to 41 °F (5 °C) within 14400 s; FDA Food Code 2022 3-501.14(B)"));
}

TEST_CASE("food is held cold at 41 °F or less and hot at 135 °F or more",
          "[book][rules][src:food-code-2022/3-501.16]") {
  const RuleSet rules = food_code();
  CHECK(text(rules.cold_holding) == QStringLiteral("41 °F (5 °C)"));
  CHECK(rules.cold_holding_authority.text() == QStringLiteral("FDA Food Code 2022 3-501.16(A)(2)"));
  CHECK(text(rules.hot_holding) == QStringLiteral("135 °F (57 °C)"));
  CHECK(rules.hot_holding_authority.text() == QStringLiteral("FDA Food Code 2022 3-501.16(A)(1)"));
}

TEST_CASE("time as a control is 4 h, or 6 h from a cold start and never above 70 °F",
          "[book][rules][src:food-code-2022/3-501.19]") {
  const RuleSet rules = food_code();
  CHECK(text(rules.time_control.length) == QStringLiteral("4 h"));
  CHECK(rules.time_control.authority.text() == QStringLiteral("FDA Food Code 2022 3-501.19(B)"));
  CHECK_FALSE(rules.time_control.never_above.has_value());
  CHECK(text(rules.time_control_cold_start.length) == QStringLiteral("6 h"));
  CHECK(rules.time_control_cold_start.authority.text() == QStringLiteral("FDA Food Code 2022 3-501.19(C)"));
  REQUIRE(rules.time_control_cold_start.never_above.has_value());
  CHECK(text(*rules.time_control_cold_start.never_above) == QStringLiteral("70 °F (21 °C)"));
}

TEST_CASE("fish, whole meat and eggs served at once are cooked to 145 °F for 15 s",
          "[book][rules][src:food-code-2022/3-401.11]") {
  const auto food = GENERATE("fish", "whole-meat", "eggs-immediate");
  CHECK(cook(food_code(), food) == QStringLiteral("145 °F (63 °C) 15 s; FDA Food Code 2022 3-401.11(A)(1)"));
}

TEST_CASE("ground, injected, tenderized and comminuted food and pooled eggs are cooked to 155 °F for 17 s or as much",
          "[book][rules][src:food-code-2022/3-401.11]") {
  const auto food = GENERATE("ground-meat", "injected-meat", "tenderized-meat", "comminuted-fish", "eggs-pooled");
  CHECK(cook(food_code(), food) ==
        QStringLiteral("155 °F (68 °C) 17 s or 145 °F (63 °C) 3 min or 150 °F (66 °C) 1 min or 158 °F (70 °C) instant; "
                       "FDA Food Code 2022 3-401.11(A)(2)"));
}

TEST_CASE("poultry and what is stuffed, or stuffing with animal food, is cooked to 165 °F",
          "[book][rules][src:food-code-2022/3-401.11]") {
  const auto food = GENERATE("poultry", "stuffed", "animal-stuffing");
  CHECK(cook(food_code(), food) == QStringLiteral("165 °F (74 °C) instant; FDA Food Code 2022 3-401.11(A)(3)"));
}

TEST_CASE("raw animal food in a microwave reaches 165 °F and stands 2 min",
          "[book][rules][src:food-code-2022/3-401.12][src:memory]") {
  const RuleSet rules = food_code();
  REQUIRE(rules.microwave_cook.has_value());
  CHECK(shown(*rules.microwave_cook) == QStringLiteral("165 °F (74 °C) instant; FDA Food Code 2022 3-401.12"));
  CHECK(rules.microwave_stand_seconds == 120);
}

TEST_CASE("plants for hot holding are cooked to 135 °F", "[book][rules][src:food-code-2022/3-401.13][src:memory]") {
  CHECK(cook(food_code(), "plant-hot-held") == QStringLiteral("135 °F (57 °C) instant; FDA Food Code 2022 3-401.13"));
}

TEST_CASE("food is reheated for hot holding within 2 h, each way to its temperature",
          "[book][rules][src:food-code-2022/3-403.11]") {
  const RuleSet rules = food_code();
  CHECK(reheat(rules, "hot-holding") ==
        QStringLiteral("165 °F (74 °C) 15 s, within 7200 s; FDA Food Code 2022 3-403.11(A)"));
  CHECK(reheat(rules, "microwave") ==
        QStringLiteral("165 °F (74 °C) instant, stand 120 s, within 7200 s; FDA Food Code 2022 3-403.11(B)"));
  CHECK(reheat(rules, "commercial-package") ==
        QStringLiteral("135 °F (57 °C) instant, within 7200 s; FDA Food Code 2022 3-403.11(C)"));
}

TEST_CASE("a reduced-oxygen pack keeps 30 days at most, and beyond 7 only with a document",
          "[book][rules][src:food-code-2022/3-502.12]") {
  const RuleSet rules = food_code();
  CHECK(shown(rules.reduced_oxygen) == QStringLiteral("30 days, first day 1; FDA Food Code 2022 3-502.12(B)(4)"));
  CHECK(shown(rules.reduced_oxygen_document) ==
        QStringLiteral("7 days, first day 1; FDA Food Code 2022 3-502.12(D)(2)(e)"));
}

TEST_CASE("every day and time limit can be cited by its id", "[book][rules]") {
  const RuleSet rules = food_code();
  REQUIRE(rules.figure(QStringLiteral("opened-package")) != nullptr);
  CHECK(shown(*rules.figure(QStringLiteral("opened-package"))) == shown(rules.opened_package));
  CHECK(rules.figure(QStringLiteral("opened-packet")) == nullptr);
  CHECK(rules.cook_for(QStringLiteral("parsnip")) == nullptr);
  CHECK(rules.reheat_for(QStringLiteral("bonfire")) == nullptr);
}

TEST_CASE("the more a class of food demands, the higher its place", "[book][rules][src:food-code-2022/3-401.11]") {
  for (const RuleSet& rules : {food_code(), invented_county()}) {
    CHECK(demand(rules, "plant-hot-held") < demand(rules, "fish"));
    CHECK(demand(rules, "fish") == demand(rules, "whole-meat"));
    CHECK(demand(rules, "fish") < demand(rules, "ground-meat"));
    CHECK(demand(rules, "ground-meat") == demand(rules, "eggs-pooled"));
    CHECK(demand(rules, "ground-meat") < demand(rules, "poultry"));
    CHECK(demand(rules, "poultry") == demand(rules, "stuffed"));
  }
}

TEST_CASE("150 °F for a minute cooks ground meat, 154 °F for 17 s does not",
          "[book][rules][src:food-code-2022/3-401.11]") {
  const RuleSet rules = food_code();
  const std::vector<TimeAtTemperature>& ground = rules.cook_for(QStringLiteral("ground-meat"))->any_of;
  CHECK(meets(way("150 °F 60 s"), ground));
  CHECK(meets(way("155 °F 17 s"), ground));
  CHECK(meets(way("158 °F instant"), ground));
  CHECK(meets(way("165 °F instant"), ground));
  CHECK_FALSE(meets(way("154 °F 17 s"), ground));
  CHECK_FALSE(meets(way("150 °F 30 s"), ground));
  CHECK_FALSE(meets(way("157 °F instant"), ground));
  CHECK_FALSE(meets(way("144 °F 60 min"), ground));
}

TEST_CASE("the invented county says that it is invented, and the Food Code does not", "[book][rules]") {
  CHECK(invented_county().invented);
  CHECK(invented_county().name.contains(QStringLiteral("invented")));
  CHECK_FALSE(food_code().invented);
  CHECK(food_code().allergen_list == QStringLiteral("us"));
}

TEST_CASE("the invented county differs from the Food Code in every figure", "[book][rules]") {
  const RuleSet ours = food_code();
  const RuleSet theirs = invented_county();
  REQUIRE(ours.figures.size() == theirs.figures.size());
  for (const LengthLimit& limit : ours.figures) {
    const LengthLimit* other = theirs.figure(limit.id);
    INFO(limit.id.toStdString());
    REQUIRE(other != nullptr);
    CHECK(other->length.unit == limit.length.unit);
    CHECK(other->length.count < limit.length.count);
  }
  CHECK(theirs.ready_to_eat_chilled.length.count == 5);
  CHECK(text(theirs.cold_holding) == QStringLiteral("40 °F (4 °C)"));
  CHECK(text(theirs.hot_holding) == QStringLiteral("140 °F (60 °C)"));
  CHECK(text(*theirs.time_control_cold_start.never_above) == QStringLiteral("65 °F (18 °C)"));
  for (const CookMinimum& minimum : ours.cook) {
    INFO(minimum.food.toStdString());
    const CookMinimum* other = theirs.cook_for(minimum.food);
    REQUIRE(other != nullptr);
    CHECK(meets(other->any_of.front(), minimum.any_of));
    CHECK_FALSE(meets(minimum.any_of.front(), other->any_of));
  }
}

TEST_CASE("the invented county reheats and cools faster and hotter than the Food Code", "[book][rules]") {
  const RuleSet ours = food_code();
  const RuleSet theirs = invented_county();
  for (const ReheatMinimum& minimum : ours.reheat) {
    const ReheatMinimum* other = theirs.reheat_for(minimum.how);
    REQUIRE(other != nullptr);
    CHECK_FALSE(meets(minimum.at, {other->at}));
    CHECK(*other->within_seconds == 3600);
    CHECK(other->stand_seconds == (minimum.stand_seconds > 0 ? 180 : 0));
  }
  REQUIRE(ours.cooling.size() == theirs.cooling.size());
  for (size_t i = 0; i < ours.cooling.size(); ++i) {
    CHECK(theirs.cooling[i].within_seconds < ours.cooling[i].within_seconds);
    CHECK(theirs.cooling[i].to.fahrenheit.tenths < ours.cooling[i].to.fahrenheit.tenths);
    CHECK(theirs.cooling[i].from != ours.cooling[i].from);
  }
  CHECK(theirs.cooling_from_ambient[0].within_seconds < ours.cooling_from_ambient[0].within_seconds);
  CHECK(theirs.microwave_stand_seconds > ours.microwave_stand_seconds);
  CHECK_FALSE(meets(ours.microwave_cook->any_of[0], theirs.microwave_cook->any_of));
}
