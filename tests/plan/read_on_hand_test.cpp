// Lots on hand: what is read, and what is refused with its whole text and place.
#include "plan_kitchen.h"

using namespace lardiner;
using namespace lardiner::plan;
using namespace lardiner::plan::kitchen;

namespace {

OnHandLots read_csv(const QByteArray& text, const book::Book& book = small()) {
  const auto rows = reader::csv_rows(text, QStringLiteral("walk-in.csv"));
  if (!rows) FAIL(problem::text(rows.error()).toStdString());
  return read_on_hand(*rows, book, {at(kNow), rows->semicolons});
}

QString told(const char* text) { return QString::fromUtf8(text).sliced(1); }

QString refused(const char* text) {
  const OnHandLots lots = read_csv(text);
  CHECK(lots.lots.empty());
  return problem::text(lots.errors);
}

}  // namespace

TEST_CASE("a lot on hand says item, lot, container, quantity, state, dates and place", "[plan][read_on_hand]") {
  const OnHandLots lots = read_csv(R"~(product,lot,container,quantity,state,prepared,use_by,place
spiced-butter,A26279SBU01X,tub,1.5 kg,frozen,2026-10-06 09:00,2026-10-10,freezer 1
cod,C-77,,4 kg,chilled,,2026-10-08 12:00,walk-in 1
)~");
  CHECK(problem::text(lots.errors) == QString());
  REQUIRE(lots.lots.size() == 2);
  const OnHand& butter = lots.lots[0];
  CHECK(butter.item == QStringLiteral("spiced-butter"));
  CHECK(butter.lot == QStringLiteral("A26279SBU01X"));
  CHECK(butter.container == QStringLiteral("tub"));
  CHECK(butter.quantity == amount("1.5 kg"));
  CHECK(butter.state == book::State::Frozen);
  CHECK(butter.prepared == at("2026-10-06 09:00"));
  REQUIRE(butter.use_by);
  CHECK(butter.use_by->end == at("2026-10-11"));
  CHECK(butter.use_by->is_date);
  CHECK(butter.where == QStringLiteral("freezer 1"));
  CHECK(lots.lots[1].use_by->end == at("2026-10-08 12:00"));
  CHECK_FALSE(lots.lots[1].use_by->is_date);
}

TEST_CASE("without a state, what needs temperature control is chilled and the rest ambient", "[plan][read_on_hand]") {
  const OnHandLots lots = read_csv("ingredient,quantity,best_before\ncod,1 kg,\nsalt,1 kg,2027-01-01\n");
  REQUIRE(lots.lots.size() == 2);
  CHECK(lots.lots[0].state == book::State::Chilled);
  CHECK(lots.lots[1].state == book::State::Ambient);
  CHECK(lots.lots[1].use_by->kind == book::EndKind::BestBefore);
}

TEST_CASE("an ingredient is counted where the book says what a piece weighs", "[plan][read_on_hand]") {
  CHECK(read_csv("ingredient,quantity\nlime,12 pieces\n").lots.size() == 1);
  CHECK(refused("ingredient,quantity\nsalt,12 pieces\n") == told(R"~(
walk-in.csv:2:6: "12 pieces": nothing in the book says what that of "salt" weighs
  salt,12 pieces
       ^^^^^^^^^
  write a weight, as 12 kg
)~"));
}

TEST_CASE("refused: an item that is not in the book, in either column", "[plan][read_on_hand]") {
  CHECK(refused("product,quantity\nspiced-buter,1 kg\n") == told(R"~(
walk-in.csv:2:1: "spiced-buter" is not in the book
  spiced-buter,1 kg
  ^^^^^^^^^^^^
  did you mean spiced-butter?
)~"));
  CHECK(refused("ingredient,quantity\nspiced-butter,1 kg\n") == told(R"~(
walk-in.csv:2:1: "spiced-butter" is not an ingredient of the book
  spiced-butter,1 kg
  ^^^^^^^^^^^^^
  it is a product: name it as one
)~"));
  CHECK(refused("ingredient,quantity\ncodd,1 kg\n") == told(R"~(
walk-in.csv:2:1: "codd" is not an ingredient of the book
  codd,1 kg
  ^^^^
  did you mean cod?
)~"));
}

TEST_CASE("refused: a product and an ingredient in one row, or neither", "[plan][read_on_hand]") {
  CHECK(refused("product,ingredient,quantity\nseasoning,cod,1 kg\n") == told(R"~(
walk-in.csv:2:11: the lot has a product and an ingredient
  seasoning,cod,1 kg
            ^^^
  keep one of the two
)~"));
  CHECK(refused("product,quantity\n,1 kg\n") == told(R"~(
walk-in.csv:2: the lot has no product
  ,1 kg
  write the id of a product or an ingredient of the book
)~"));
}

TEST_CASE("refused: a lot of ours copied wrongly; a supplier's may be anything", "[plan][read_on_hand]") {
  CHECK(refused("product,lot,quantity\nspiced-butter,A26279SBU02X,1 kg\n") == told(R"~(
walk-in.csv:2:15: the check character of lot "A26279SBU02X" does not hold
  spiced-butter,A26279SBU02X,1 kg
                ^^^^^^^^^^^^
  copy it once more from the label of "spiced-butter"
)~"));
  CHECK(read_csv("product,lot,quantity\ncod,A26279SBU02X,1 kg\n").lots.size() == 1);
}

TEST_CASE("refused: a lot, container or place that is too long or commands a terminal", "[plan][read_on_hand]") {
  for (const char* key : {"lot", "container", "place"}) {
    const auto faults = [&](const QByteArray& text) {
      return read_csv(QByteArray(key) + ",product,quantity\n" + text + ",cod,1 kg\n").errors;
    };
    CHECK(faults("shelf 2").empty());
    for (const QByteArray& text : {QByteArray("a\x1b[31m"), QByteArray("a\u202e"), QByteArray(31, 'a')}) {
      const problem::Errors errors = faults(text);
      REQUIRE(errors.size() == 1);
      CHECK(errors.front().place.line == 2);
      CHECK(errors.front().place.column == 1);
    }
  }
}

TEST_CASE("refused: a state in which nothing is put away", "[plan][read_on_hand]") {
  CHECK(refused("product,quantity,state\nspiced-butter,1 kg,hot-held\n") == told(R"~(
walk-in.csv:2:20: the lot: state cannot be "hot-held"
  spiced-butter,1 kg,hot-held
                     ^^^^^^^^
  write one of chilled, frozen, thawed, ambient, opened
)~"));
}

TEST_CASE("refused: ambient, of what needs temperature control, unless the book lets it stand so",
          "[plan][read_on_hand]") {
  const char* const cream = "product,quantity,state\ncream,1 kg,ambient\n";
  CHECK(refused(cream) == told(R"~(
walk-in.csv:2:12: "cream" stands ambient, but it needs time and temperature control, or may
  cream,1 kg,ambient
             ^^^^^^^
  state how it is kept, or state an ambient shelf life in the book
)~"));
  CHECK(refused("product,quantity,state\nspiced-butter,1 kg,ambient\n").contains(QStringLiteral("stands ambient")));
  CHECK(read_csv("product,quantity,state\ncream,1 kg,chilled\nsalt,1 kg,ambient\n").lots.size() == 2);
  const QByteArray sealed =
      ingredient("sealed-cream", "yes", "", "[\"milk\"]", life("ambient", "6 months", "ingredient"));
  CHECK(read_csv("product,quantity,state\nsealed-cream,1 kg,ambient\n", read_kitchen(sealed)).lots.size() == 1);
}

TEST_CASE("refused: prepared in the future, or after its own end", "[plan][read_on_hand]") {
  CHECK(refused("product,quantity,prepared\nspiced-butter,1 kg,2026-10-07 06:01\n") == told(R"~(
walk-in.csv:2:20: "2026-10-07 06:01" is in the future: it is now Wed 7 Oct 2026 06:00
  spiced-butter,1 kg,2026-10-07 06:01
                     ^^^^^^^^^^^^^^^^
  write when it happened
)~"));
  CHECK(refused("product,quantity,prepared,use_by\nspiced-butter,1 kg,2026-10-06,2026-10-05\n") == told(R"~(
walk-in.csv:2:20: prepared after its end of keeping
  spiced-butter,1 kg,2026-10-06,2026-10-05
                     ^^^^^^^^^^
  correct the day of one of the two
)~"));
}

TEST_CASE("a lot past its date is read: the plan passes it over and says so", "[plan][read_on_hand]") {
  CHECK(read_csv("product,quantity,use_by\nspiced-butter,1 kg,2026-10-05\n").lots.size() == 1);
}
