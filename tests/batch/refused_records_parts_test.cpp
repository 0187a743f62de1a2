// Readings, events and further rows that cannot be read: each with its whole text and place.
#include "refused_records.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

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
