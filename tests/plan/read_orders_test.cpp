// Orders: what is read, and what is refused with its whole text and place.
#include "plan_kitchen.h"

using namespace lardiner;
using namespace lardiner::plan;
using namespace lardiner::plan::kitchen;

namespace {

Orders read_csv(const QByteArray& text) {
  const auto rows = reader::csv_rows(text, QStringLiteral("orders.csv"));
  if (!rows) FAIL(problem::text(rows.error()).toStdString());
  return read_orders(*rows, small(), {at(kNow), rows->semicolons});
}

// The text after the line break that opens it.
QString told(const char* text) { return QString::fromUtf8(text).sliced(1); }

// What is wrong with a file of which no order can be read.
QString refused(const char* text) {
  const Orders orders = read_csv(text);
  CHECK(orders.orders.empty());
  return problem::text(orders.errors);
}

}  // namespace

TEST_CASE("an order says site, number, product, quantity, due time and the life wanted", "[plan][read_orders]") {
  const Orders orders = read_csv(R"~(site,order,product,quantity,due,life
harbour-street,HS-7,fish-cake,24 pieces,2026-10-08 14:00,3 days
,,spiced-butter,2.5 kg,2026-10-09 09:30,
)~");
  CHECK(problem::text(orders.errors) == QString());
  REQUIRE(orders.orders.size() == 2);
  const Order& first = orders.orders[0];
  CHECK(first.site == QStringLiteral("harbour-street"));
  CHECK(first.number == QStringLiteral("HS-7"));
  CHECK(first.product == QStringLiteral("fish-cake"));
  CHECK(first.quantity == amount("24 pieces"));
  CHECK(first.due == at("2026-10-08 14:00"));
  CHECK(first.life == book::Length{book::Length::Unit::Days, 3, 1});
  CHECK(first.place.line == 2);
  CHECK(orders.orders[1].quantity == amount("2.5 kg"));
  CHECK_FALSE(orders.orders[1].life);
}

TEST_CASE("JSON Lines say the same as CSV", "[plan][read_orders]") {
  const auto rows = reader::json_rows(
      R"~({"site": "harbour-street", "order": "HS-7", "product": "fish-cake", "quantity": "24 pieces", "due": "2026-10-08T14:00", "life": "36 h"})~",
      QStringLiteral("orders.jsonl"));
  REQUIRE(rows);
  const Orders orders = read_orders(*rows, small(), {at(kNow), false});
  CHECK(problem::text(orders.errors) == QString());
  REQUIRE(orders.orders.size() == 1);
  CHECK(orders.orders[0].due == at("2026-10-08 14:00"));
  CHECK(orders.orders[0].life == book::Length{book::Length::Unit::Seconds, 36 * 3600, 1});
}

TEST_CASE("a file with semicolons may use the comma as the decimal mark", "[plan][read_orders]") {
  const Orders orders = read_csv("product;quantity;due\nspiced-butter;2,5 kg;2026-10-09 09:30\n");
  REQUIRE(orders.orders.size() == 1);
  CHECK(orders.orders[0].quantity == amount("2.5 kg"));
}

TEST_CASE("an order may be due at the very time of the run", "[plan][read_orders]") {
  CHECK(read_csv("product,quantity,due\nspiced-butter,1 kg,2026-10-07 06:00\n").orders.size() == 1);
}

TEST_CASE("a product with a unit weight is ordered by weight or in pieces", "[plan][read_orders]") {
  CHECK(read_csv("product,quantity,due\nfish-cake,3 kg,2026-10-08 14:00\n").orders.size() == 1);
}

TEST_CASE("refused: an order for a product that the book does not have, with the nearest", "[plan][read_orders]") {
  CHECK(refused("product,quantity,due\nfish-cakes,24 pieces,2026-10-08 14:00\n") == told(R"~(
orders.csv:2:1: "fish-cakes" is not a product of the book
  fish-cakes,24 pieces,2026-10-08 14:00
  ^^^^^^^^^^
  did you mean fish-cake?
)~"));
}

TEST_CASE("refused: an order for an ingredient", "[plan][read_orders]") {
  CHECK(refused("product,quantity,due\ncod,24 kg,2026-10-08 14:00\n") == told(R"~(
orders.csv:2:1: "cod" is not a product of the book
  cod,24 kg,2026-10-08 14:00
  ^^^
  it is an ingredient, which is bought and not made
)~"));
}

TEST_CASE("refused: a site that the book does not have", "[plan][read_orders]") {
  CHECK(refused("site,product,quantity,due\nharbor-street,fish-cake,24 pieces,2026-10-08 14:00\n") == told(R"~(
orders.csv:2:1: "harbor-street" is not a site of the book
  harbor-street,fish-cake,24 pieces,2026-10-08 14:00
  ^^^^^^^^^^^^^
  did you mean harbour-street?
)~"));
}

TEST_CASE("refused: a due time in the past", "[plan][read_orders]") {
  CHECK(refused("product,quantity,due\nfish-cake,24 pieces,2026-10-07 05:59\n") == told(R"~(
orders.csv:2:21: "2026-10-07 05:59" is in the past: it is now Wed 7 Oct 2026 06:00
  fish-cake,24 pieces,2026-10-07 05:59
                      ^^^^^^^^^^^^^^^^
  correct the day or the time, or leave the order out
)~"));
}

TEST_CASE("refused: a due time without a time of day", "[plan][read_orders]") {
  CHECK(refused("product,quantity,due\nfish-cake,24 pieces,2026-10-08\n") == told(R"~(
orders.csv:2:21: "2026-10-08" has no time of day
  fish-cake,24 pieces,2026-10-08
                      ^^^^^^^^^^
  write it as 2026-02-28 14:30
)~"));
}

TEST_CASE("refused: a due time in another year by a slip", "[plan][read_orders]") {
  CHECK(refused("product,quantity,due\nfish-cake,24 pieces,2062-10-08 14:00\n") == told(R"~(
orders.csv:2:21: "2062-10-08 14:00" is more than a year ahead
  fish-cake,24 pieces,2062-10-08 14:00
                      ^^^^^^^^^^^^^^^^
  correct the year
)~"));
}

TEST_CASE("refused: a due time that the clock shows twice", "[plan][read_orders][src:iana-tzdb]") {
  CHECK(refused("product,quantity,due\nfish-cake,24 pieces,2026-11-01 01:30\n") == told(R"~(
orders.csv:2:21: 2026-11-01 01:30 occurs twice in America/New_York: the clocks go back
  fish-cake,24 pieces,2026-11-01 01:30
                      ^^^^^^^^^^^^^^^^
  write the offset: 2026-11-01 01:30-04:00 or 2026-11-01 01:30-05:00
)~"));
  CHECK(read_csv("product,quantity,due\nfish-cake,24 pieces,2026-11-01 01:30-04:00\n").orders.size() == 1);
}

TEST_CASE("the hint for a time that the clock shows twice is read when it is followed",
          "[plan][read_orders][src:iana-tzdb]") {
  const Orders twice = read_csv("product,quantity,due\nfish-cake,24 pieces,2026-11-01 01:30\n");
  REQUIRE(twice.errors.size() == 1);
  const QString hint = twice.errors.front().hint;
  REQUIRE(hint.startsWith(QStringLiteral("write the offset: ")));
  const QStringList times = hint.mid(18).split(QStringLiteral(" or "));
  REQUIRE(times.size() == 2);
  for (const QString& time : times)
    CHECK(read_csv("product,quantity,due\nfish-cake,24 pieces," + time.toLatin1() + '\n').orders.size() == 1);
}

TEST_CASE("an order is named in at most 60 characters, 30 between spaces and hyphens, of any script",
          "[plan][read_orders][src:practice]") {
  const auto read = [](const QByteArray& order) {
    return read_csv("order,product,quantity,due\n" + order + ",fish-cake,24 pieces,2026-10-08 14:00\n");
  };
  const QByteArray word(30, 'w'), chinese = QByteArray("\u9c7c").repeated(60);
  for (const QByteArray& order : {word + ' ' + word.chopped(1), word + '-' + word.chopped(1), chinese})
    CHECK(read(order).orders.size() == 1);
  CHECK(problem::text(read(word + ' ' + word).errors)
            .startsWith(QStringLiteral("orders.csv:2:1: \"wwwwwwwwwwwwwwwwwwwwwwwwwwwwww "
                                       "wwwwwwwwwwwwwwwwwwwwwwwwwwwww…\" is longer than 60 characters\n")));
  CHECK(problem::text(read(word + 'w').errors) == told(R"~(
orders.csv:2:1: "wwwwwwwwwwwwwwwwwwwwwwwwwwwwwww" has a word of more than 30 characters
  wwwwwwwwwwwwwwwwwwwwwwwwwwwwwww,fish-cake,24 pieces,2026-10-08 14:00
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  shorten it, or divide it by a space or a hyphen
)~"));
}

TEST_CASE("refused: codes that command a terminal or turn the direction of writing, at their cell",
          "[plan][read_orders]") {
  CHECK(refused("order,product,quantity,due\nA\x1b[2J,fish-cake,24 pieces,2026-10-08 14:00\n") == told(R"~(
orders.csv:2:1: "A�[2J" has U+001B as character 2, which is a control code and prints nothing
  A�[2J,fish-cake,24 pieces,2026-10-08 14:00
  ^^^^^
  delete it
)~"));
  for (const char* code : {"\u202e", "\u2066", "\u200f", "\u061c", "\u2028", "\t", "\xc2\x85"}) {
    const Orders orders =
        read_csv("order,product,quantity,due\nA" + QByteArray(code) + "B,fish-cake,24 pieces,2026-10-08 14:00\n");
    CHECK(orders.orders.empty());
    REQUIRE(orders.errors.size() == 1);
    CHECK(orders.errors.front().what.contains(QStringLiteral("as character 2, which is a control code")));
  }
}

TEST_CASE("refused: less than one piece", "[plan][read_orders]") {
  CHECK(refused("product,quantity,due\nfish-cake,0.5 pieces,2026-10-08 14:00\n") == told(R"~(
orders.csv:2:11: "0.5 pieces" is less than one piece
  fish-cake,0.5 pieces,2026-10-08 14:00
            ^^^^^^^^^^
  write whole pieces, at least one
)~"));
}

TEST_CASE("refused: a part of a piece", "[plan][read_orders]") {
  CHECK(refused("product,quantity,due\nfish-cake,2.5 pieces,2026-10-08 14:00\n") == told(R"~(
orders.csv:2:11: "2.5 pieces" is not a whole number of pieces
  fish-cake,2.5 pieces,2026-10-08 14:00
            ^^^^^^^^^^
  write whole pieces
)~"));
}

TEST_CASE("refused: a quantity that the product is not made in", "[plan][read_orders]") {
  CHECK(refused("product,quantity,due\nseasoning,12 pieces,2026-10-08 14:00\n") == told(R"~(
orders.csv:2:11: "12 pieces": "seasoning" is made by weight, and the book does not convert one to the other
  seasoning,12 pieces,2026-10-08 14:00
            ^^^^^^^^^
  write a weight, as 12 kg
)~"));
}

TEST_CASE("refused: nothing written, all faults of the row at once", "[plan][read_orders]") {
  CHECK(refused("site,product,quantity,due,life,colour\nharbour-street,,,,,red\n") == told(R"~(
orders.csv:1:32: the order cannot have "colour"
  site,product,quantity,due,life,colour
                                 ^^^^^^
  what it can have: product, site, order, quantity, due, life
orders.csv:2: the order has no due
  harbour-street,,,,,red
  write when it leaves the kitchen, as 2026-02-28 14:30
orders.csv:2: the order has no product
  harbour-street,,,,,red
  write the id of a product of the book
orders.csv:2: the order has no quantity
  harbour-street,,,,,red
  write an amount with its unit, as 12 kg
)~"));
}

TEST_CASE("refused: a life that is no length of time; the other orders are read", "[plan][read_orders]") {
  const Orders orders = read_csv(R"~(product,quantity,due,life
fish-cake,24 pieces,2026-10-08 14:00,long
fish-cake,12 pieces,2026-10-08 14:00,2 days
)~");
  CHECK(orders.orders.size() == 1);
  REQUIRE(orders.errors.size() == 1);
  CHECK(orders.errors[0].place.line == 2);
  CHECK(orders.errors[0].place.column == 38);
}
