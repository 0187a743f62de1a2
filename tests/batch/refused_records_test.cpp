// Records that cannot be read: each with its whole text and place.
#include "compute_kitchen.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

namespace {

// The text after the line break that opens it.
QString told(const char* text) { return QString::fromUtf8(text).sliced(1); }

QString csv(const char* text) {
  const Records records = read_csv(text);
  CHECK(records.records.size() < 2);
  return problem::text(records.errors);
}

}  // namespace

TEST_CASE("refused: a product that the book does not have, with the nearest", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
creemy,1,2 kg,2026-11-25 08:10,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:1: "creemy" is not a product of the book
  creemy,1,2 kg,2026-11-25 08:10,4 tub 500 g
  ^^^^^^
  did you mean creamy?
)~"));
}

TEST_CASE("refused: a product that is far from any", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
hollandaise,1,2 kg,2026-11-25 08:10,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:1: "hollandaise" is not a product of the book
  hollandaise,1,2 kg,2026-11-25 08:10,4 tub 500 g
  ^^^^^^^^^^^
  write the id of a product of the book
)~"));
}

TEST_CASE("refused: an ingredient where a product stands", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
butter,1,2 kg,2026-11-25 08:10,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:1: "butter" is not a product of the book
  butter,1,2 kg,2026-11-25 08:10,4 tub 500 g
  ^^^^^^
  it is an ingredient: name it as one, with what was done
)~"));
}

TEST_CASE("refused: neither product nor ingredient", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
,1,2 kg,2026-11-25 08:10,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2: the record has no product
  ,1,2 kg,2026-11-25 08:10,4 tub 500 g
  write its id, or that of an ingredient with what was done; in a row that adds to a record, say in the column row what it is
)~"));
}

TEST_CASE("refused: a product and an ingredient", "[batch][refused_records]") {
  CHECK(csv(R"~(product,ingredient,number,quantity,made_at,containers
dip,cream,1,2 kg,2026-11-25 08:10,4 tub 500 g
)~") ==
        told(R"~(
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
)~") ==
        told(R"~(
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
)~") ==
        told(R"~(
day.csv:1:44: the record cannot have "mde_to"
  product,number,quantity,made_at,containers,mde_to
                                             ^^^^^^
  did you mean made_to?
)~"));
}

TEST_CASE("refused: a date that does not exist", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,31/02,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:12: "31/02" is not a date and time
  dip,1,2 kg,31/02,4 tub 500 g
             ^^^^^
  write it as 2026-02-28 14:30; midnight is 00:00 of the next day
)~"));
}

TEST_CASE("refused: a date that can be read in three ways", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,03/04/26,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:12: "03/04/26" is not a date and time
  dip,1,2 kg,03/04/26,4 tub 500 g
             ^^^^^^^^
  write it as 2026-02-28 14:30; midnight is 00:00 of the next day
)~"));
}

TEST_CASE("refused: 30 February", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-02-30 08:10,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:12: "2026-02-30 08:10" is not a date
  dip,1,2 kg,2026-02-30 08:10,4 tub 500 g
             ^^^^^^^^^^^^^^^^
  write it as 2026-02-28
)~"));
}

TEST_CASE("refused: a local time that occurs twice", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-01 01:30,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:12: 2026-11-01 01:30 occurs twice in America/New_York: the clocks go back
  dip,1,2 kg,2026-11-01 01:30,4 tub 500 g
             ^^^^^^^^^^^^^^^^
  write the offset: 2026-11-01 01:30 -04:00 or -05:00
)~"));
}

TEST_CASE("refused: a local time that never occurs", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-03-08 02:30,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:12: 2026-03-08 02:30 does not exist in America/New_York: the clocks go from 2026-03-08 02:00 to 2026-03-08 03:00
  dip,1,2 kg,2026-03-08 02:30,4 tub 500 g
             ^^^^^^^^^^^^^^^^
  write a time before 2026-03-08 02:00 or from 2026-03-08 03:00 on
)~"));
}

TEST_CASE("refused: an offset that the zone does not have then", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10-04:00,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:12: the offset -04:00 does not belong to 2026-11-25 08:10 in America/New_York
  dip,1,2 kg,2026-11-25 08:10-04:00,4 tub 500 g
             ^^^^^^^^^^^^^^^^^^^^^^
  write the offset: 2026-11-25 08:10 -05:00
)~"));
}

TEST_CASE("refused: made in the future", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2027-01-01 08:10,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:12: "2027-01-01 08:10" is in the future: it is now Thu 31 Dec 2026 12:00
  dip,1,2 kg,2027-01-01 08:10,4 tub 500 g
             ^^^^^^^^^^^^^^^^
  write when it happened
)~"));
}

TEST_CASE("refused: made to before it began", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers,made_to
dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,2026-11-25 07:00
)~") ==
        told(R"~(
day.csv:2:41: made to Wed 25 Nov 2026 07:00, before it began at Wed 25 Nov 2026 08:10
  dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,2026-11-25 07:00
                                          ^^^^^^^^^^^^^^^^
  correct the time of one of the two
)~"));
}

TEST_CASE("refused: no time of making", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2: the record has no made_at
  dip,1,2 kg,,4 tub 500 g
  write when it began, as 2026-02-28 14:30
)~"));
}

TEST_CASE("refused: a negative quantity", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,-2 kg,2026-11-25 08:10,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:7: "-2 kg" is negative
  dip,1,-2 kg,2026-11-25 08:10,4 tub 500 g
        ^^^^^
  write an amount above zero
)~"));
}

TEST_CASE("refused: a quantity of nothing", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,0 kg,2026-11-25 08:10,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:7: "0 kg" is zero
  dip,1,0 kg,2026-11-25 08:10,4 tub 500 g
        ^^^^
  write an amount above zero
)~"));
}

TEST_CASE("refused: an absurd quantity", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,21000 kg,2026-11-25 08:10,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:7: "21000 kg" is more than a kitchen makes
  dip,1,21000 kg,2026-11-25 08:10,4 tub 500 g
        ^^^^^^^^
  at most 20 tonnes, 20000 litres or 200000 pieces
)~"));
}

TEST_CASE("refused: a quantity without a unit", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2,2026-11-25 08:10,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:7: "2" has no unit
  dip,1,2,2026-11-25 08:10,4 tub 500 g
        ^
  write the unit after the number: mg, g, kg, oz, lb, mL, L, tsp, tbsp, fl oz, cup, pint, quart, gallon, piece
)~"));
}

TEST_CASE("refused: a decimal comma in a file of commas", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,"2,5 kg",2026-11-25 08:10,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:7: "2,5 kg" has a comma in its number
  dip,1,"2,5 kg",2026-11-25 08:10,4 tub 500 g
        ^^^^^^^^
  write the decimal mark as a point: 2.5
)~"));
}

TEST_CASE("refused: digits of another script", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,٤ tub 500 g
)~") ==
        told(R"~(
day.csv:2:29: "٤ tub 500 g" is not a number of containers, their kind and what each holds
  dip,1,2 kg,2026-11-25 08:10,٤ tub 500 g
                              ^^^^^^^^^^^
  write it as 24 tub 500 g, or 24 tub 500 g + 1 tub 300 g
)~"));
}

TEST_CASE("refused: a number in digits of another script", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,١,2 kg,2026-11-25 08:10,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:5: the record: number is not a whole number
  dip,١,2 kg,2026-11-25 08:10,4 tub 500 g
      ^
  write a whole number from 1 to 9999
)~"));
}

TEST_CASE("refused: number 0", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,0,2 kg,2026-11-25 08:10,4 tub 500 g
)~") ==
        told(R"~(
day.csv:2:5: the record: number is 0
  dip,0,2 kg,2026-11-25 08:10,4 tub 500 g
      ^
  write a whole number from 1 to 9999
)~"));
}

TEST_CASE("refused: no containers", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,
)~") ==
        told(R"~(
day.csv:2: the record has no containers
  dip,1,2 kg,2026-11-25 08:10,
  write what it was put up in, as 24 tub 500 g
)~"));
}

TEST_CASE("refused: no containers in a group", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,0 tub 500 g
)~") ==
        told(R"~(
day.csv:2:29: "0" is not a number of containers
  dip,1,2 kg,2026-11-25 08:10,0 tub 500 g
                              ^^^^^^^^^^^
  write a whole number from 1 to 9999
)~"));
}

TEST_CASE("refused: too many containers", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,10000 tub 500 g
)~") ==
        told(R"~(
day.csv:2:29: "10000" is not a number of containers
  dip,1,2 kg,2026-11-25 08:10,10000 tub 500 g
                              ^^^^^^^^^^^^^^^
  write a whole number from 1 to 9999
)~"));
}

TEST_CASE("refused: containers that hold more than was made", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,5 tub 500 g
)~") ==
        told(R"~(
day.csv:2:29: the containers hold 2.5 kg, more than the 2 kg that was made
  dip,1,2 kg,2026-11-25 08:10,5 tub 500 g
                              ^^^^^^^^^^^
  correct the quantity or the containers
)~"));
}

TEST_CASE("refused: a kind of container that is none", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,4 tubs 500 g
)~") ==
        told(R"~(
day.csv:2:29: "tubs" is not a kind of container
  dip,1,2 kg,2026-11-25 08:10,4 tubs 500 g
                              ^^^^^^^^^^^^
  did you mean tub?
)~"));
}

TEST_CASE("refused: a container that the book does not put the product in", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,4 jar 500 g
)~") ==
        told(R"~(
day.csv:2:29: "dip" is not put up in a jar by the book
  dip,1,2 kg,2026-11-25 08:10,4 jar 500 g
                              ^^^^^^^^^^^
  it has: tub; or add the container to the book
)~"));
}

TEST_CASE("refused: containers that cannot be read", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers
dip,1,2 kg,2026-11-25 08:10,some tubs
)~") ==
        told(R"~(
day.csv:2:29: "some tubs" is not a number of containers, their kind and what each holds
  dip,1,2 kg,2026-11-25 08:10,some tubs
                              ^^^^^^^^^
  write it as 24 tub 500 g, or 24 tub 500 g + 1 tub 300 g
)~"));
}

TEST_CASE("refused: a site that the book does not have", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers,site
dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,harbor-street
)~") ==
        told(R"~(
day.csv:2:41: "harbor-street" is not a site of the book
  dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,harbor-street
                                          ^^^^^^^^^^^^^
  did you mean harbour-street?
)~"));
}

TEST_CASE("refused: somebody who is nobody here", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers,by
dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,MX
)~") ==
        told(R"~(
day.csv:2:41: "MX" is nobody of this kitchen
  dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,MX
                                          ^^
  did you mean MK?
)~"));
}

TEST_CASE("refused: an input that the book does not have", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
input,,1,,,,mayonaise,,,2026-12-20,,,,,,,,,,,
)~") ==
        told(R"~(
day.csv:3:13: "mayonaise" is not in the book
  input,,1,,,,mayonaise,,,2026-12-20,,,,,,,,,,,
              ^^^^^^^^^
  did you mean mayonnaise?
)~"));
}

TEST_CASE("refused: an input without an item", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
input,,1,,,,,,,2026-12-20,,,,,,,,,,,
)~") ==
        told(R"~(
day.csv:3: the input has no item
  input,,1,,,,,,,2026-12-20,,,,,,,,,,,
  write the id of an ingredient or a product
)~"));
}

TEST_CASE("refused: a supplier item of something else", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
input,,1,,,,mayonnaise,butter-a,,2026-12-20,,,,,,,,,,,
)~") ==
        told(R"~(
day.csv:3:24: "butter-a" is not a supplier item of "mayonnaise"
  input,,1,,,,mayonnaise,butter-a,,2026-12-20,,,,,,,,,,,
                         ^^^^^^^^
  write one of mayonnaise-a
)~"));
}

TEST_CASE("refused: a substitution for what is not in the formula", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
input,,1,,,,margarine,,,2026-12-20,,,,,butter,,,,,,
)~") ==
        told(R"~(
day.csv:3:40: "butter" is not in the formula of "dip"
  input,,1,,,,margarine,,,2026-12-20,,,,,butter,,,,,,
                                         ^^^^^^
  name the line that it replaces, or leave instead_of out
)~"));
}

TEST_CASE("refused: something instead of itself", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
input,,1,,,,onion,,,,,,,,onion,,,,,,
)~") ==
        told(R"~(
day.csv:3:26: "onion" replaces itself
  input,,1,,,,onion,,,,,,,,onion,,,,,,
                           ^^^^^
  leave instead_of out
)~"));
}

TEST_CASE("refused: a lot in small letters", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,chili,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
input,,1,,,,burger,,a26324bur012,2026-12-20,,,,,,,,,,,
)~") ==
        told(R"~(
day.csv:3:21: lot "a26324bur012" has small letters
  input,,1,,,,burger,,a26324bur012,2026-12-20,,,,,,,,,,,
                      ^^^^^^^^^^^^
  write A26324BUR012
)~"));
}

TEST_CASE("refused: a lot whose check character does not hold", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,chili,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
input,,1,,,,burger,,A26152BUR02U,2026-12-20,,,,,,,,,,,
)~") ==
        told(R"~(
day.csv:3:21: the check character of lot "A26152BUR02U" does not hold
  input,,1,,,,burger,,A26152BUR02U,2026-12-20,,,,,,,,,,,
                      ^^^^^^^^^^^^
  copy it once more from the label of "burger"
)~"));
}

TEST_CASE("refused: a use by and a best before", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
input,,1,,,,mayonnaise,,,2026-12-20,2026-12-20,,,,,,,,,,
)~") ==
        told(R"~(
day.csv:3:37: the input has a use_by and a best_before
  input,,1,,,,mayonnaise,,,2026-12-20,2026-12-20,,,,,,,,,,
                                      ^^^^^^^^^^
  keep the use_by, which is about safety
)~"));
}

TEST_CASE("refused: opened after it was used", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
input,,1,,,,mayonnaise,,,2026-12-20,,2026-11-26,,,,,,,,,
)~") ==
        told(R"~(
day.csv:3:38: opened on Thu 26 Nov 2026 00:00, after it was used
  input,,1,,,,mayonnaise,,,2026-12-20,,2026-11-26,,,,,,,,,
                                       ^^^^^^^^^^
  correct the time of one of the two
)~"));
}

TEST_CASE("refused: thawed before it was frozen", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
input,,1,,,,mayonnaise,,,2026-12-20,,,2026-11-20,2026-11-19,,,,,,,
)~") ==
        told(R"~(
day.csv:3:50: thawed on Thu 19 Nov 2026 00:00, before it was frozen on Fri 20 Nov 2026 00:00
  input,,1,,,,mayonnaise,,,2026-12-20,,,2026-11-20,2026-11-19,,,,,,,
                                                   ^^^^^^^^^^
  correct the time of one of the two
)~"));
}

TEST_CASE("refused: a cook reading before the making began", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,burger,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
cooked,,1,,,,,,,,,,,,,,2026-11-25 08:00,165 °F,,,
)~") ==
        told(R"~(
day.csv:3:24: the cook reading at Wed 25 Nov 2026 08:00, before the making began at Wed 25 Nov 2026 08:10
  cooked,,1,,,,,,,,,,,,,,2026-11-25 08:00,165 °F,,,
                         ^^^^^^^^^^^^^^^^
  correct the time of one of the two
)~"));
}

TEST_CASE("refused: a cook reading without a temperature", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,burger,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
cooked,,1,,,,,,,,,,,,,,2026-11-25 09:00,,,,
)~") ==
        told(R"~(
day.csv:3: the cook reading has no core
  cooked,,1,,,,,,,,,,,,,,2026-11-25 09:00,,,,
  write the core temperature, as 165 °F
)~"));
}

TEST_CASE("refused: a cook reading without a scale", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,burger,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
cooked,,1,,,,,,,,,,,,,,2026-11-25 09:00,165,,,
)~") ==
        told(R"~(
day.csv:3:41: "165" does not say Celsius or Fahrenheit
  cooked,,1,,,,,,,,,,,,,,2026-11-25 09:00,165,,,
                                          ^^^
  write C or F after the figure
)~"));
}

TEST_CASE("refused: a cooling reading without a time of day", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,burger,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
cooled,,1,,,,,,,,,,,,,,2026-11-25,41 °F,,,
)~") ==
        told(R"~(
day.csv:3:24: "2026-11-25" has no time of day
  cooled,,1,,,,,,,,,,,,,,2026-11-25,41 °F,,,
                         ^^^^^^^^^^
  write it as 2026-02-28 14:30
)~"));
}

TEST_CASE("refused: held for minus a minute", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,burger,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
cooked,,1,,,,,,,,,,,,,,2026-11-25 09:00,165 °F,-1 min,,
)~") ==
        told(R"~(
day.csv:3:48: "-1 min" is negative
  cooked,,1,,,,,,,,,,,,,,2026-11-25 09:00,165 °F,-1 min,,
                                                 ^^^^^^
  write a length of time above zero
)~"));
}

TEST_CASE("refused: an event that is none", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
event,,1,,,,,,,,,,,,,,2026-11-25 09:00,,,frosen,
)~") ==
        told(R"~(
day.csv:3:42: the event: what cannot be "frosen"
  event,,1,,,,,,,,,,,,,,2026-11-25 09:00,,,frosen,
                                           ^^^^^^
  did you mean frozen?
)~"));
}

TEST_CASE("refused: time control without a temperature", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
event,,1,,,,,,,,,,,,,,2026-11-25 09:00,,,time-control,
)~") ==
        told(R"~(
day.csv:3: the event has no temperature
  event,,1,,,,,,,,,,,,,,2026-11-25 09:00,,,time-control,
  write the core temperature, as 41 °F
)~"));
}

TEST_CASE("refused: an event of a container that is not there", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
event,,1,,,3-5,,,,,,,,,,,2026-11-25 09:00,,,frozen,
)~") ==
        told(R"~(
day.csv:3:12: there is no container 5: the record has 4
  event,,1,,,3-5,,,,,,,,,,,2026-11-25 09:00,,,frozen,
             ^^^
  correct the numbers of the containers
)~"));
}

TEST_CASE("refused: container numbers that are none", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
event,,1,,,4-3,,,,,,,,,,,2026-11-25 09:00,,,frozen,
)~") ==
        told(R"~(
day.csv:3:12: "4-3" are not numbers of containers
  event,,1,,,4-3,,,,,,,,,,,2026-11-25 09:00,,,frozen,
             ^^^
  write them as 3, or 1-4, or 1-4, 9
)~"));
}

TEST_CASE("refused: an input with a key of a reading", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
input,,1,,,,onion,,,,,,,,,,,41 °F,,,
)~") ==
        told(R"~(
day.csv:1:135: the input cannot have "core"
  row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
                                                                                                                                        ^^^^
  what it can have: row, number, product, ingredient, item, supplier_item, lot, quantity, use_by, best_before, opened, frozen, thawed, instead_of, agreed_by
)~"));
}

TEST_CASE("refused: a further row that is nothing known", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
inputs,,1,,,,onion,,,,,,,,,,,,,,
)~") ==
        told(R"~(
day.csv:3:1: a row cannot be "inputs"
  inputs,,1,,,,onion,,,,,,,,,,,,,,
  ^^^^^^
  did you mean input?
)~"));
}

TEST_CASE("refused: a further row of a record that is not there", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
input,,2,,,,onion,,,,,,,,,,,,,,
)~") ==
        told(R"~(
day.csv:3:8: the input row belongs to record 2, which is not in this file
  input,,2,,,,onion,,,,,,,,,,,,,,
         ^
  correct the number, or add the record
)~"));
}

TEST_CASE("refused: a further row without a number", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
input,,,,,,onion,,,,,,,,,,,,,,
)~") ==
        told(R"~(
day.csv:3: the input row has no number of a record
  input,,,,,,onion,,,,,,,,,,,,,,
  write the number of the record that it belongs to
)~"));
}

TEST_CASE("refused: a further row that could belong to two records", "[batch][refused_records]") {
  CHECK(csv(R"~(row,product,number,quantity,made_at,containers,item,supplier_item,lot,use_by,best_before,opened,frozen,thawed,instead_of,agreed_by,at,core,held,what,temperature
,dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
,creamy,1,2 kg,2026-11-25 08:10,4 tub 500 g,,,,,,,,,,,,,,,
input,,1,,,,onion,,,,,,,,,,,,,,
)~") ==
        told(R"~(
day.csv:4:8: the input row belongs to record 1, of which there are several
  input,,1,,,,onion,,,,,,,,,,,,,,
         ^
  name the product in this row too
)~"));
}

TEST_CASE("refused: a corrective action of nobody", "[batch][refused_records]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers,corrective_action
dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,reheated
)~") ==
        told(R"~(
day.csv:2:41: the corrective action does not say who took it
  dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,reheated
                                          ^^^^^^^^
  write corrective_by
)~"));
}

TEST_CASE("refused: an ingredient of which nothing was done", "[batch][refused_records]") {
  CHECK(csv(R"~(ingredient,number,made_at
cream,1,2026-11-25 08:10
)~") ==
        told(R"~(
day.csv:2: the record has no what
  cream,1,2026-11-25 08:10
  write opened, thawed, cut or decanted
)~"));
}

TEST_CASE("refused: an ingredient that was made", "[batch][refused_records]") {
  CHECK(csv(R"~(what,ingredient,number,made_at
made,cream,1,2026-11-25 08:10
)~") ==
        told(R"~(
day.csv:2:1: the record: what cannot be "made"
  made,cream,1,2026-11-25 08:10
  ^^^^
  write one of opened, thawed, cut, decanted
)~"));
}

TEST_CASE("refused: a package with an input", "[batch][refused_records]") {
  CHECK(csv(R"~(row,what,ingredient,number,made_at,item
,opened,cream,1,2026-11-25 08:10,
input,,,1,,salt
)~") ==
        told(R"~(
day.csv:3:1: a package of an ingredient has no input row
  input,,,1,,salt
  ^^^^^
  leave the row out, or correct its number
)~"));
}
