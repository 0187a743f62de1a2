// Rule sets that are refused, each with what is wrong, where, and what to do.
#include "rules.h"

using namespace lardiner;
using namespace lardiner::book;

namespace {

// The Food Code's file with one piece replaced, and the errors it then gives.
QString refusal(const char* piece, const char* instead) {
  QByteArray toml = rules_test::shipped("us-fda-food-code-2022.toml");
  REQUIRE(toml.count(piece) >= 1);
  toml.replace(toml.indexOf(piece), qstrlen(piece), instead);
  const auto read = read_rule_set(toml, QStringLiteral("r.toml"));
  REQUIRE_FALSE(read);
  QString all;
  for (const problem::Error& error : read.error()) {
    CHECK(error.place.file == QStringLiteral("r.toml"));
    all += QStringLiteral("%1 / %2\n").arg(error.what, error.hint);
  }
  return all;
}

}  // namespace

TEST_CASE("a figure without a section is refused", "[book][rules][refused]") {
  CHECK(refusal("section = \"3-501.17(A)\"\n", "") ==
        QStringLiteral("days \"ready-to-eat-chilled\" has no section / state section\n"));
  CHECK(refusal("section = \"3-401.11(A)(3)\"\n", "") ==
        QStringLiteral("cook \"poultry\" has no section / state section\n"));
}

TEST_CASE("a figure that the program needs must be there", "[book][rules][refused]") {
  CHECK(refusal("id = \"opened-package\"", "id = \"opened-packet\"") ==
        QStringLiteral("rule set has no days \"opened-package\" / add a [[days]] table for it with its section\n"));
  CHECK(refusal("food = \"poultry\"", "food = \"fowl\"") ==
        QStringLiteral("rule set has no cook \"poultry\" / add a [[cook]] table for it with its section\n"));
  CHECK(refusal("how = \"microwave\"", "how = \"waves\"") ==
        QStringLiteral("rule set has no reheat \"microwave\" / add a [[reheat]] table for it with its section\n"));
}

TEST_CASE("an unknown temperature figure is told the nearest", "[book][rules][refused]") {
  CHECK(refusal("id = \"hot-holding\"", "id = \"hot-hording\"") ==
        QStringLiteral(
            "rule set has no temperature \"hot-holding\" / add a [[temperature]] table for it with its section\n"
            "there is no temperature figure \"hot-hording\" / did you mean \"hot-holding\"?\n"));
}

TEST_CASE("a figure given twice is refused", "[book][rules][refused]") {
  CHECK(refusal("id = \"opened-package\"", "id = \"ready-to-eat-chilled\"") ==
        QStringLiteral("rule set has no days \"opened-package\" / add a [[days]] table for it with its section\n"
                       "days \"ready-to-eat-chilled\" is given twice / keep one of the two\n"));
  CHECK(refusal("food = \"whole-meat\"", "food = \"fish\"") ==
        QStringLiteral("rule set has no cook \"whole-meat\" / add a [[cook]] table for it with its section\n"
                       "cook \"fish\" is given twice / keep one of the two\n"));
}

TEST_CASE("a limit stands in both scales as its source prints it", "[book][rules][refused]") {
  CHECK(refusal("at_most = \"41 °F (5 °C)\"", "at_most = \"41 °F\"") ==
        QStringLiteral("temperature \"cold-holding\": \"41 °F\" gives one scale only / "
                       "write both figures as the source prints them, as in 165 °F (74 °C)\n"));
  CHECK(refusal("at_most = \"41 °F (5 °C)\"", "at_most = \"41 °F (50 °C)\"") ==
        QStringLiteral("temperature \"cold-holding\": \"41 °F (50 °C)\" gives two different temperatures / "
                       "write the figures that the source prints; 41 °F is about 5 °C\n"));
  CHECK(refusal("at_most = \"41 °F (5 °C)\"", "at_most = \"41 °F (41 °F)\"") ==
        QStringLiteral("temperature \"cold-holding\": \"41 °F (41 °F)\" gives two figures in one scale / "
                       "write one in °F and one in °C, as in 165 °F (74 °C)\n"));
  CHECK(refusal("at_most = \"41 °F (5 °C)\"", "at_most = \"cold\"") ==
        QStringLiteral("temperature \"cold-holding\": \"cold\" is not a temperature limit / "
                       "write it as 165 °F (74 °C) 15 s\n"));
  CHECK(
      refusal("at_most = \"41 °F (5 °C)\"", "at_most = \"41 °F (5 °C) 15 s\"") ==
      QStringLiteral("temperature \"cold-holding\": \"41 °F (5 °C) 15 s\" has a time where only a temperature stands / "
                     "leave the time out\n"));
}

TEST_CASE("a way of cooking says for how long", "[book][rules][refused]") {
  CHECK(refusal("any_of = [\"165 °F (74 °C) instant\"]", "any_of = [\"165 °F (74 °C)\"]") ==
        QStringLiteral("cook \"poultry\": \"165 °F (74 °C)\" does not say for how long / "
                       "add the time, as in 165 °F (74 °C) 15 s, or the word instant\n"));
  CHECK(refusal("any_of = [\"165 °F (74 °C) instant\"]", "any_of = []") ==
        QStringLiteral("cook \"poultry\" names no temperature / write any_of = [\"165 °F (74 °C) instant\"]\n"));
}

TEST_CASE("a class that would leave a milder one undercooked in a mixture is refused", "[book][rules][refused]") {
  CHECK(refusal("any_of = [\"145 °F (63 °C) 15 s\"]", "any_of = [\"145 °F (63 °C) 4 min\"]")
            .contains(QStringLiteral(
                "\"ground-meat\" may be cooked to 155 °F (68 °C) 17 s, which leaves \"fish\" in the same mixture "
                "undercooked / correct the [[cook]] figures\n")));
}

TEST_CASE("a rule set says whether it is invented, and how its days are counted", "[book][rules][refused]") {
  CHECK(refusal("invented = false\n", "") ==
        QStringLiteral("rule set does not say whether it is invented / write invented = false for a published code\n"));
  CHECK(refusal("first_day = 1\n", "") ==
        QStringLiteral("days \"ready-to-eat-chilled\" has no first_day / state first_day\n"));
}

TEST_CASE("days and times of no length are refused", "[book][rules][refused]") {
  CHECK(refusal("days = 7", "days = 0") ==
        QStringLiteral("days \"ready-to-eat-chilled\": days is 0 / write a whole number from 1 to 3650\n"));
  CHECK(refusal("lasts = \"4 h\"", "lasts = \"0 h\"") ==
        QStringLiteral("time \"time-control\": lasts is no time at all / write it as 4 h\n"));
  CHECK(refusal("lasts = \"4 h\"\n", "") == QStringLiteral("time \"time-control\" has no lasts / state lasts\n"));
}

TEST_CASE("the kind of a cooling is one of two", "[book][rules][refused]") {
  CHECK(refusal("of = \"ambient\"", "of = \"tepid\"")
            .contains(QStringLiteral("cooling \"cooling-from-ambient\": \"tepid\" is not a kind of cooling / "
                                     "write of = \"cooked\" or of = \"ambient\"\n")));
  CHECK(refusal("from = \"135 °F (57 °C)\"\n", "") ==
        QStringLiteral("cooling \"cooling-first-stage\" has no from / state from\n"));
}

TEST_CASE("all faults of a rule set are told at once, in the order of the file", "[book][rules][refused]") {
  const auto read = read_rule_set("id = \"x\"\nname = \"X\"\ninvented = false\n", QStringLiteral("r.toml"));
  REQUIRE_FALSE(read);
  // 1 cooling section, 4 days, 2 times, 2 temperatures, 10 foods, 3 reheats, microwave cook, 2 coolings
  CHECK(read.error().size() == 25);
}

TEST_CASE("a rule set that is not TOML gives one error", "[book][rules][refused]") {
  const auto read = read_rule_set("id = ", QStringLiteral("r.toml"));
  REQUIRE_FALSE(read);
  REQUIRE(read.error().size() == 1);
  CHECK(read.error()[0].code == problem::Code::Syntax);
}
