// Count grades: a range, of which only the worst end is sure.
#include "plan/count_grade.h"

#include "plan_kitchen.h"

using namespace lardiner;
using namespace lardiner::plan;
using lardiner::book::CountGrade;
using lardiner::plan::kitchen::amount;

namespace {

CountGrade per_pound(std::optional<int> fewest, int most) { return {fewest, most, amount("1 lb")}; }

}  // namespace

TEST_CASE("5 lb of 21/25 are 105 to 125 pieces", "[plan][count_grade][src:practice]") {
  const PieceRange range = pieces_in(per_pound(21, 25), amount("5 lb"));
  CHECK(range.worst == 105);
  CHECK(range.likely == 115);
  CHECK(range.best == 125);
}

TEST_CASE("a weight just short of a whole piece does not hold it", "[plan][count_grade]") {
  const measure::Quantity weight = amount("5 lb") - amount("10 mg");
  CHECK(pieces_in(per_pound(21, 25), weight).worst == 104);
  CHECK(pieces_in(per_pound(21, 25), weight).best == 124);
  CHECK(pieces_in(per_pound(21, 25), {}).best == 0);
}

TEST_CASE("U/15 is fifteen or fewer, without a lower bound", "[plan][count_grade][src:practice]") {
  const CountGrade grade = per_pound(std::nullopt, 15);
  const PieceRange range = pieces_in(grade, amount("2 lb"));
  CHECK(!range.worst);
  CHECK(!range.likely);
  CHECK(range.best == 30);
  CHECK(!sure_weight(grade, 30));
  CHECK(!piece_weight(grade).most);
  CHECK(piece_weight(grade).least == measure::scaled(amount("1 lb"), measure::Ratio(1, 15)));
}

TEST_CASE("the sure weight is by the fewest pieces: 105 of 21/25 are 5 lb", "[plan][count_grade][src:practice]") {
  CHECK(sure_weight(per_pound(21, 25), 105) == amount("5 lb"));
  CHECK(sure_weight({6, 8, amount("1 kg")}, 12) == amount("2 kg"));
  CHECK(piece_weight({6, 8, amount("1 kg")}).least == amount("125 g"));
}

TEST_CASE("the sure weight always holds its pieces at worst", "[plan][count_grade]") {
  for (const auto& [fewest, most] : {std::pair{13, 15}, {16, 20}, {21, 25}, {6, 8}, {1, 1}, {31, 35}})
    for (const char* per : {"1 lb", "1 kg"})
      for (std::int64_t pieces = 1; pieces <= 400; pieces += 7) {
        const CountGrade grade{fewest, most, amount(per)};
        const PieceRange range = pieces_in(grade, *sure_weight(grade, pieces));
        REQUIRE(range.worst == pieces);
        REQUIRE(*range.worst <= *range.likely);
        REQUIRE(*range.likely <= range.best);
      }
}
