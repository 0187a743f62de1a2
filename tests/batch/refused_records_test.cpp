// Records that cannot be read: each with its whole text and place.
#include "refused_records.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

TEST_CASE("refused: a product that the book does not have, with the nearest", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
creemy,1,2 kg,2026-11-25 08:10,4 tub 500 g
)~") == told(R"~(
day.csv:2:1: "creemy" is not a product of the book
  creemy,1,2 kg,2026-11-25 08:10,4 tub 500 g
  ^^^^^^
  did you mean creamy?
)~"));
}

TEST_CASE("refused: a product that is far from any", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
hollandaise,1,2 kg,2026-11-25 08:10,4 tub 500 g
)~") == told(R"~(
day.csv:2:1: "hollandaise" is not a product of the book
  hollandaise,1,2 kg,2026-11-25 08:10,4 tub 500 g
  ^^^^^^^^^^^
  write the id of a product of the book
)~"));
}

TEST_CASE("refused: an ingredient where a product stands", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
butter,1,2 kg,2026-11-25 08:10,4 tub 500 g
)~") == told(R"~(
day.csv:2:1: "butter" is not a product of the book
  butter,1,2 kg,2026-11-25 08:10,4 tub 500 g
  ^^^^^^
  it is an ingredient: name it as one, with what was done
)~"));
}

TEST_CASE("refused: neither product nor ingredient", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
,1,2 kg,2026-11-25 08:10,4 tub 500 g
)~") == told(R"~(
day.csv:2: the record has no product
  ,1,2 kg,2026-11-25 08:10,4 tub 500 g
  write its id, or that of an ingredient with what was done; in a row that adds to a record, say in the column row what it is
)~"));
}

TEST_CASE("refused: a product and an ingredient", "[batch][refused_records]") {
  CHECK(csv(R"~(product,ingredient,number,quantity,made_at,containers
dip,cream,1,2 kg,2026-11-25 08:10,4 tub 500 g
)~") == told(R"~(
day.csv:2:5: the record has a product and an ingredient
  dip,cream,1,2 kg,2026-11-25 08:10,4 tub 500 g
      ^^^^^
  keep one of the two
)~"));
}

TEST_CASE("refused: two records with one product and number", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,4 tub 500 g
dip,1,2 kg,2026-11-25 08:10,4 tub 500 g
)~") == told(R"~(
day.csv:2:5: two records are number 1 of "dip"; the other is in line 3
  dip,1,2 kg,2026-11-25 08:10,4 tub 500 g
      ^
  give each its own number; a row that adds to a record says in its column row what it is
day.csv:3:5: two records are number 1 of "dip"; the other is in line 2
  dip,1,2 kg,2026-11-25 08:10,4 tub 500 g
      ^
  give each its own number; a row that adds to a record says in its column row what it is
)~"));
}

TEST_CASE("refused: a column that is not known, with the nearest", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers,mde_to
dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,2026-11-25 09:00
)~") == told(R"~(
day.csv:1:44: the record cannot have "mde_to"
  product,number,quantity,made_at,containers,mde_to
                                             ^^^^^^
  did you mean made_to?
)~"));
}

TEST_CASE("refused: a date that does not exist", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,31/02,4 tub 500 g
)~") == told(R"~(
day.csv:2:12: "31/02" is not a date and time
  dip,1,2 kg,31/02,4 tub 500 g
             ^^^^^
  write it as 2026-02-28 14:30; midnight is 00:00 of the next day
)~"));
}

TEST_CASE("refused: a date that can be read in three ways", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,03/04/26,4 tub 500 g
)~") == told(R"~(
day.csv:2:12: "03/04/26" is not a date and time
  dip,1,2 kg,03/04/26,4 tub 500 g
             ^^^^^^^^
  write it as 2026-02-28 14:30; midnight is 00:00 of the next day
)~"));
}

TEST_CASE("refused: 30 February", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-02-30 08:10,4 tub 500 g
)~") == told(R"~(
day.csv:2:12: "2026-02-30 08:10" is not a date
  dip,1,2 kg,2026-02-30 08:10,4 tub 500 g
             ^^^^^^^^^^^^^^^^
  write it as 2026-02-28
)~"));
}

TEST_CASE("refused: a local time that occurs twice", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-01 01:30,4 tub 500 g
)~") == told(R"~(
day.csv:2:12: 2026-11-01 01:30 occurs twice in America/New_York: the clocks go back
  dip,1,2 kg,2026-11-01 01:30,4 tub 500 g
             ^^^^^^^^^^^^^^^^
  write the offset: 2026-11-01 01:30-04:00 or 2026-11-01 01:30-05:00
)~"));
}

TEST_CASE("refused: a local time that never occurs", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-03-08 02:30,4 tub 500 g
)~") == told(R"~(
day.csv:2:12: 2026-03-08 02:30 does not exist in America/New_York: the clocks go from 2026-03-08 02:00 to 2026-03-08 03:00
  dip,1,2 kg,2026-03-08 02:30,4 tub 500 g
             ^^^^^^^^^^^^^^^^
  write a time before 2026-03-08 02:00 or from 2026-03-08 03:00 on
)~"));
}

TEST_CASE("refused: an offset that the zone does not have then", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10-04:00,4 tub 500 g
)~") == told(R"~(
day.csv:2:12: the offset -04:00 does not belong to 2026-11-25 08:10 in America/New_York
  dip,1,2 kg,2026-11-25 08:10-04:00,4 tub 500 g
             ^^^^^^^^^^^^^^^^^^^^^^
  write the offset: 2026-11-25 08:10-05:00
)~"));
}

TEST_CASE("refused: made in the future", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2027-01-01 08:10,4 tub 500 g
)~") == told(R"~(
day.csv:2:12: "2027-01-01 08:10" is in the future: it is now Thu 31 Dec 2026 12:00
  dip,1,2 kg,2027-01-01 08:10,4 tub 500 g
             ^^^^^^^^^^^^^^^^
  write when it happened
)~"));
}

TEST_CASE("refused: made to before it began", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers,made_to
dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,2026-11-25 07:00
)~") == told(R"~(
day.csv:2:41: made to Wed 25 Nov 2026 07:00, before it began at Wed 25 Nov 2026 08:10
  dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,2026-11-25 07:00
                                          ^^^^^^^^^^^^^^^^
  correct the time of one of the two
)~"));
}

TEST_CASE("refused: no time of making", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,,4 tub 500 g
)~") == told(R"~(
day.csv:2: the record has no made_at
  dip,1,2 kg,,4 tub 500 g
  write when it began, as 2026-02-28 14:30
)~"));
}

TEST_CASE("refused: a negative quantity", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,-2 kg,2026-11-25 08:10,4 tub 500 g
)~") == told(R"~(
day.csv:2:7: "-2 kg" is negative
  dip,1,-2 kg,2026-11-25 08:10,4 tub 500 g
        ^^^^^
  write an amount above zero
)~"));
}

TEST_CASE("refused: a quantity of nothing", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,0 kg,2026-11-25 08:10,4 tub 500 g
)~") == told(R"~(
day.csv:2:7: "0 kg" is zero
  dip,1,0 kg,2026-11-25 08:10,4 tub 500 g
        ^^^^
  write an amount above zero
)~"));
}

TEST_CASE("refused: an absurd quantity", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,21000 kg,2026-11-25 08:10,4 tub 500 g
)~") == told(R"~(
day.csv:2:7: "21000 kg" is more than a kitchen makes
  dip,1,21000 kg,2026-11-25 08:10,4 tub 500 g
        ^^^^^^^^
  at most 20 tonnes, 20000 litres or 200000 pieces
)~"));
}

TEST_CASE("refused: a quantity without a unit", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2,2026-11-25 08:10,4 tub 500 g
)~") == told(R"~(
day.csv:2:7: "2" has no unit
  dip,1,2,2026-11-25 08:10,4 tub 500 g
        ^
  write the unit after the number: mg, g, kg, oz, lb, mL, L, tsp, tbsp, fl oz, cup, pint, quart, gallon, piece
)~"));
}

TEST_CASE("refused: a decimal comma in a file of commas", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,"2,5 kg",2026-11-25 08:10,4 tub 500 g
)~") == told(R"~(
day.csv:2:7: "2,5 kg" has a comma in its number
  dip,1,"2,5 kg",2026-11-25 08:10,4 tub 500 g
        ^^^^^^^^
  write the decimal mark as a point: 2.5
)~"));
}

TEST_CASE("refused: digits of another script", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,٤ tub 500 g
)~") == told(R"~(
day.csv:2:29: "٤ tub 500 g" is not a number of containers, their kind and what each holds
  dip,1,2 kg,2026-11-25 08:10,٤ tub 500 g
                              ^^^^^^^^^^^
  write it as 24 tub 500 g, or 24 tub 500 g + 1 tub 300 g
)~"));
}

TEST_CASE("refused: a number in digits of another script", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,١,2 kg,2026-11-25 08:10,4 tub 500 g
)~") == told(R"~(
day.csv:2:5: the record: number is not a whole number
  dip,١,2 kg,2026-11-25 08:10,4 tub 500 g
      ^
  write a whole number from 1 to 9999
)~"));
}

TEST_CASE("refused: number 0", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,0,2 kg,2026-11-25 08:10,4 tub 500 g
)~") == told(R"~(
day.csv:2:5: the record: number is 0
  dip,0,2 kg,2026-11-25 08:10,4 tub 500 g
      ^
  write a whole number from 1 to 9999
)~"));
}

TEST_CASE("refused: no containers", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,
)~") == told(R"~(
day.csv:2: the record has no containers
  dip,1,2 kg,2026-11-25 08:10,
  write what it was put up in, as 24 tub 500 g
)~"));
}

TEST_CASE("refused: no containers in a group", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,0 tub 500 g
)~") == told(R"~(
day.csv:2:29: "0" is not a number of containers
  dip,1,2 kg,2026-11-25 08:10,0 tub 500 g
                              ^^^^^^^^^^^
  write a whole number from 1 to 9999
)~"));
}

TEST_CASE("refused: too many containers", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,10000 tub 500 g
)~") == told(R"~(
day.csv:2:29: "10000" is not a number of containers
  dip,1,2 kg,2026-11-25 08:10,10000 tub 500 g
                              ^^^^^^^^^^^^^^^
  write a whole number from 1 to 9999
)~"));
}

TEST_CASE("refused: containers that hold more than was made", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,5 tub 500 g
)~") == told(R"~(
day.csv:2:29: the containers hold 2.5 kg, more than the 2 kg that was made
  dip,1,2 kg,2026-11-25 08:10,5 tub 500 g
                              ^^^^^^^^^^^
  correct the quantity or the containers
)~"));
}

TEST_CASE("refused: a kind of container that is none", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,4 tubs 500 g
)~") == told(R"~(
day.csv:2:29: "tubs" is not a kind of container
  dip,1,2 kg,2026-11-25 08:10,4 tubs 500 g
                              ^^^^^^^^^^^^
  did you mean tub?
)~"));
}

TEST_CASE("refused: a container that the book does not put the product in", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,4 jar 500 g
)~") == told(R"~(
day.csv:2:29: "dip" is not put up in a jar by the book
  dip,1,2 kg,2026-11-25 08:10,4 jar 500 g
                              ^^^^^^^^^^^
  it has: tub; or add the container to the book
)~"));
}

TEST_CASE("refused: containers that cannot be read", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,some tubs
)~") == told(R"~(
day.csv:2:29: "some tubs" is not a number of containers, their kind and what each holds
  dip,1,2 kg,2026-11-25 08:10,some tubs
                              ^^^^^^^^^
  write it as 24 tub 500 g, or 24 tub 500 g + 1 tub 300 g
)~"));
}

TEST_CASE("refused: a site that the book does not have", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers,site
dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,harbor-street
)~") == told(R"~(
day.csv:2:41: "harbor-street" is not a site of the book
  dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,harbor-street
                                          ^^^^^^^^^^^^^
  did you mean harbour-street?
)~"));
}

TEST_CASE("refused: somebody who is nobody here", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers,by
dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,MX
)~") == told(R"~(
day.csv:2:41: "MX" is nobody of this kitchen
  dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,MX
                                          ^^
  did you mean MK?
)~"));
}
