// Books refused for a formula.
#include "refused.h"

TEST_CASE("a book is refused for a formula", "[book][refused][formula]") {
  book_test::check_refused({
      {"a line of an item that does not exist", "products.toml", "id = \"lime-butter\"", "item = \"lime\"",
       "item = \"lmie\"",
       R"(products.toml:28:12: no ingredient or product has the id "lmie"
    { item = "lmie", percent = 3, of = "butter" },
             ^^^^^^
  add an ingredient or a product with this id, or correct it
)"},
      {"an amount without a unit", "products.toml", "id = \"lime-butter\"", "\"1 kg\"", "\"1\"",
       R"(products.toml:27:31: "1" has no unit
    { item = "butter", amount = "1" },
                                ^^^
  write the unit after the number: mg, g, kg, oz, lb, mL, L, tsp, tbsp, fl oz, cup, pint, quart, gallon, piece
)"},
      {"an amount with an unknown unit", "products.toml", "id = \"lime-butter\"", "\"1 kg\"", "\"1 stick\"",
       R"(products.toml:27:31: "1 stick" has an unknown unit, "stick"
    { item = "butter", amount = "1 stick" },
                                ^^^^^^^^^
  the units are mg, g, kg, oz, lb, mL, L, tsp, tbsp, fl oz, cup, pint, quart, gallon, piece
)"},
      {"a negative amount", "products.toml", "id = \"lime-butter\"", "\"1 kg\"", "\"-1 kg\"",
       R"(products.toml:27:31: "-1 kg" is negative
    { item = "butter", amount = "-1 kg" },
                                ^^^^^^^
  write an amount above zero
)"},
      {"more than a kitchen can hold", "products.toml", "id = \"lime-butter\"", "\"1 kg\"", "\"100000000 kg\"",
       R"(products.toml:27:31: "100000000 kg" is more than a kitchen can hold
    { item = "butter", amount = "100000000 kg" },
                                ^^^^^^^^^^^^^^
  write at most 4000 tonnes, 40000 litres or 1000000 pieces
)"},
      {"a line with two bases", "products.toml", "id = \"lime-butter\"", "percent = 3",
       "amount = \"30 g\", percent = 3",
       R"(products.toml:28:12: the line "lime" of product "lime-butter" has both amount and percent
    { item = "lime", amount = "30 g", percent = 3, of = "butter" },
             ^^^^^^
  write one of amount, parts, percent with of, per_unit, or per_main with each
)"},
      {"a line with no amount", "products.toml", "id = \"lime-butter\"", ", amount = \"1 kg\"", "",
       R"(products.toml:27:12: the line "butter" of product "lime-butter" has no amount
    { item = "butter" },
             ^^^^^^^^
  write one of amount, parts, percent with of, per_unit, or per_main with each
)"},
      {"a percentage of nothing", "products.toml", "id = \"lime-butter\"", "percent = 3, of = \"butter\"",
       "percent = 3",
       R"(products.toml:28:30: the line "lime" of product "lime-butter" does not say what it is a percentage of
    { item = "lime", percent = 3 },
                               ^
  state of, the item of the base line; the base itself is percent = 100
)"},
      {"a percentage of a line that is not there", "products.toml", "id = \"lime-butter\"",
       "percent = 3, of = \"butter\"", "percent = 3, of = \"buter\"",
       R"(products.toml:28:12: product "lime-butter" has no line of "buter" to take a percentage of
    { item = "lime", percent = 3, of = "buter" },
             ^^^^^^
  did you mean "butter"?
)"},
      {"percentages of each other", "products.toml", "id = \"dough\"", "{ item = \"flour\", percent = 100 }",
       "{ item = \"flour\", percent = 100, of = \"water\" }",
       R"(products.toml:157:12: the percentages of product "dough" go round in a circle at "flour"
    { item = "flour", percent = 100, of = "water" },
             ^^^^^^^
  give the base line an amount, parts, or percent = 100 without of
products.toml:158:12: the percentages of product "dough" go round in a circle at "water"
    { item = "water", percent = 60, of = "flour" },
             ^^^^^^^
  give the base line an amount, parts, or percent = 100 without of
)"},
      {"an amount per main item without a main item", "products.toml", "id = \"tinga\"", ", main = true", "",
       R"(products.toml:63:12: product "tinga" has an amount per main item but no main item
    { item = "rub", per_main = "5 g", each = "1 kg" },
             ^^^^^
  write main = true in the line of the main item
)"},
      {"an amount per main item that does not say to how much", "products.toml", "id = \"tinga\"", ", each = \"1 kg\"",
       "",
       R"(products.toml:63:30: the line "rub" of product "tinga" does not say to how much of the main item it is
    { item = "rub", per_main = "5 g" },
                               ^^^^^
  state each: "1 kg" or "1 lb"
)"},
      {"parts that disagree about the weight of one", "products.toml", "id = \"rub\"", "parts = 3 }",
       "parts = 3, amount = \"300 g\" },\n  { item = \"pepper\", parts = 1, amount = \"90 g\" }",
       R"(products.toml:12:12: two lines of product "rub" disagree about the weight of a part
    { item = "pepper", parts = 1, amount = "90 g" },
             ^^^^^^^^
  write the amount of one part in one line only
)"},
      {"a number of parts that is no number", "products.toml", "id = \"rub\"", "parts = 3", "parts = \"three\"",
       R"(products.toml:11:30: the line "pepper" of product "rub": parts is not a number above zero
    { item = "pepper", parts = "three" },
                               ^^^^^^^
  write a plain number such as 3 or 2.5
)"},
      {"a formula that contains itself", "products.toml", "id = \"rub\"", "item = \"cure\", parts = 1",
       "item = \"rub\", parts = 1",
       R"(products.toml:12:12: the formulas go round in a circle: rub -> rub
    { item = "rub", parts = 1 },
             ^^^^^
  take one of these out of the formula of another; rework belongs in the records
)"},
      {"a loop of two formulas", "products.toml", "id = \"rub\"", "item = \"cure\", parts = 1",
       "item = \"lime-butter\", parts = 1",
       R"(products.toml:12:12: the formulas go round in a circle: rub -> lime-butter -> rub
    { item = "lime-butter", parts = 1 },
             ^^^^^^^^^^^^^
  take one of these out of the formula of another; rework belongs in the records
)"},
      {"a loop through what is made of it", "products.toml", "id = \"marinade\"",
       "item = \"worcestershire\", amount = \"200 g\"", "item = \"parcel\", amount = \"200 g\"",
       R"(products.toml:105:12: the formulas go round in a circle: marinade -> parcel -> marinade
    { item = "parcel", amount = "200 g" },
             ^^^^^^^^
  take one of these out of the formula of another; rework belongs in the records
)"},
      {"more made than goes in", "products.toml", "id = \"lime-butter\"", "\"1.04 kg\"", "\"10.4 kg\"",
       R"(products.toml:17:1: product "lime-butter" makes 10.4 kg, but its lines give 1.04 kg
  [[product]]
  ^^^^^^^^^^^
  correct makes, unit_weight, cook_yield or the amount that is wrong
)"},
      {"too much of a restricted ingredient after the cook", "products.toml", "id = \"tinga\"", "per_main = \"5 g\"",
       "per_main = \"20 g\"",
       R"(products.toml:49:1: product "tinga" has 0.6127 % of "cure", more than 0.25 % (9 CFR 424.21(c))
  [[product]]
  ^^^^^^^^^^^
  reduce "cure" in it, or in what it is made of
)"},
  });
}
