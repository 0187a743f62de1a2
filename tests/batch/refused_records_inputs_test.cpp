// Inputs that cannot be read: each with its whole text and place.
#include "refused_records.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

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
