// Books refused for what the kitchen says of itself, for ids, and for what is not TOML.
#include "refused.h"

TEST_CASE("a book is refused for its kitchen, its ids and its tables", "[book][refused]") {
  book_test::check_refused({
      {"a line that is not TOML", "pantry.toml", "id = \"lime\"", "tcs = \"no\"", "tcs \"no\"",
       R"(pantry.toml:14:5: an = is missing here
  tcs "no"
      ^
  write a line as: key = value
)"},
      {"a key that no table of its kind has", "products.toml", "id = \"rub\"", "makes =", "make =",
       R"(products.toml:9:1: product "rub" cannot have "make"
  make = "400 g"
  ^^^^
  did you mean makes?
)"},
      {"a table that no book has", "places.toml", "[[site]]", "[[site]]", "[[sight]]",
       R"(places.toml:16:3: a file of the book cannot have "sight"
  [[sight]]
    ^^^^^
  what it can have: media, vessel, site, person, place, ingredient, product
)"},
      {"a key given twice", "products.toml", "id = \"rub\"", "kind = \"component\"",
       "kind = \"component\"\nkind = \"component\"",
       R"(products.toml:5:1: kind is already stated
  kind = "component"
  ^^^^
  keep one of the two
)"},
      {"a kitchen without a name", "kitchen.toml", "", "name = \"Test Lane Commissary\"\n", "",
       R"(kitchen.toml: the kitchen has no name
  state name
)"},
      {"a time zone that does not exist", "kitchen.toml", "", "America/New_York", "America/New_Yrok",
       R"(kitchen.toml:3:13: "America/New_Yrok" is not a time zone
  time_zone = "America/New_Yrok"
              ^^^^^^^^^^^^^^^^^^
  write its name as in America/New_York or Europe/London
)"},
      {"no rule set adopted", "kitchen.toml", "", "rule_set = \"us-fda-food-code-2022\"\n", "",
       R"(kitchen.toml: the kitchen has no rule_set
  state rule_set: "invented-county" or "us-fda-food-code-2022"
)"},
      {"a rule set that is not shipped", "kitchen.toml", "", "us-fda-food-code-2022", "us-fda-food-code-2020",
       R"(kitchen.toml:7:12: the kitchen: rule_set cannot be "us-fda-food-code-2020"
  rule_set = "us-fda-food-code-2020"
             ^^^^^^^^^^^^^^^^^^^^^^^
  write "invented-county" or "us-fda-food-code-2022"
)"},
      {"a list of allergens that is not known", "kitchen.toml", "", "allergen_list = \"us\"", "allergen_list = \"usa\"",
       R"(kitchen.toml:6:17: the kitchen: allergen_list cannot be "usa"
  allergen_list = "usa"
                  ^^^^^
  write "us", "eu" or "ca"
)"},
      {"a code address with a slash at its end", "kitchen.toml", "", "lot.testlane.example", "lot.testlane.example/",
       R"(kitchen.toml:9:16: "https://lot.testlane.example/" is not the address of codes
  code_address = "https://lot.testlane.example/"
                 ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  write one that the kitchen owns, as in https://lot.example.com, without a / at its end
)"},
      {"a lot pattern without its number", "kitchen.toml", "", ", \"number\"]", "]",
       R"(kitchen.toml:12:7: the kitchen: lot must have each of its five parts once
  lot = ["station", "year", "day-of-year", "product-code"]
        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  write the parts in the kitchen's order: "station", "year", "day-of-year", "product-code", "number"
)"},
      {"a station of two letters", "kitchen.toml", "", "station = \"A\"", "station = \"AB\"",
       R"(kitchen.toml:11:11: the kitchen: station cannot be "AB"
  station = "AB"
            ^^^^
  write one capital letter
)"},
      {"a prefix with letters", "kitchen.toml", "", "\"0401\"", "\"04O1\"",
       R"(kitchen.toml:10:15: the kitchen: gtin_prefix cannot be "04O1"
  gtin_prefix = "04O1"
                ^^^^^^
  write 2 to 11 digits
)"},
      {"a freezing day that is neither", "kitchen.toml", "", "freezing_day = \"counts\"", "freezing_day = \"ignored\"",
       R"(kitchen.toml:8:16: the kitchen: freezing_day cannot be "ignored"
  freezing_day = "ignored"
                 ^^^^^^^^^
  write "counts" or "free"
)"},
      {"a language that is no code", "kitchen.toml", "", "[\"en\", \"es\"]", "[\"en\", \"es\", \"Spanish!\"]",
       R"(kitchen.toml:4:13: "Spanish!" is not a language code
  languages = ["en", "es", "Spanish!"]
              ^^^^^^^^^^^^^^^^^^^^^^^^
  write the code of the language, as in en or es
)"},
      {"an amendment that loosens on the kitchen's own word", "kitchen.toml", "",
       "scale_step = \"1 g\"\ningredient_media = \"lid\"\n",
       "scale_step = \"1 g\"\ningredient_media = \"lid\"\n[[amendment]]\nfigure = \"ready-to-eat-chilled\"\nvalue = "
       "\"10 days\"\nauthority = \"kitchen rule\"\n",
       R"(kitchen.toml:17:9: "ready-to-eat-chilled" is loosened from 7 days to 10 days on the kitchen's own authority
  value = "10 days"
          ^^^^^^^^^
  keep to 7 days, or name the document that allows more as its authority
)"},
      {"ingredient labels on a medium that does not exist", "kitchen.toml", "", "ingredient_media = \"lid\"",
       "ingredient_media = \"lld\"",
       R"(kitchen.toml:14:20: no medium has the id "lld"
  ingredient_media = "lld"
                     ^^^^^
  did you mean "lid"?
)"},
      {"an id with a capital letter", "pantry.toml", "", "id = \"lime\"", "id = \"Lime\"",
       R"(pantry.toml:12:6: "Lime" is not an id
  id = "Lime"
       ^^^^^^
  write small letters a to z, digits and hyphens, beginning with a letter, at most 40
products.toml:28:12: no ingredient or product has the id "lime"
    { item = "lime", percent = 3, of = "butter" },
             ^^^^^^
  did you mean "Lime"?
)"},
      {"two items of one id", "products.toml", "", "id = \"dough\"", "id = \"butter\"",
       R"(products.toml:124:12: no ingredient or product has the id "dough"
    { item = "dough", per_unit = "50 g" },
             ^^^^^^^
  add an ingredient or a product with this id, or correct it
products.toml:147:1: the id "butter" is there twice, first in pantry.toml:1
  [[product]]
  ^^^^^^^^^^^
  give one of the two another id; ingredients and products share them
products.toml:159:12: the formulas go round in a circle: butter -> butter
    { item = "butter", percent = 2, of = "flour" },
             ^^^^^^^^
  take one of these out of the formula of another; rework belongs in the records
)"},
      {"two products of one code", "products.toml", "", "code = \"PAR\"", "code = \"MAR\"",
       R"(products.toml:110:1: the code "MAR" is there twice, first in products.toml:95
  [[product]]
  ^^^^^^^^^^^
  give each its own
)"},
      {"two products of one item number", "products.toml", "", "\"00000005\"", "\"00000004\"",
       R"(products.toml:110:1: the item_number "00000004" is there twice, first in products.toml:95
  [[product]]
  ^^^^^^^^^^^
  give each its own
)"},
      {"an item number of the wrong length", "products.toml", "", "\"00000005\"", "\"0000005\"",
       R"(products.toml:115:15: "0000005" is not an item number
  item_number = "0000005"
                ^^^^^^^^^
  write 8 digits, which with the kitchen's gtin_prefix 0401 are 12
)"},
      {"a code of lots in small letters", "products.toml", "", "code = \"PAR\"", "code = \"Par\"",
       R"(products.toml:114:8: "Par" is not the code of lots
  code = "Par"
         ^^^^^
  write 2 to 4 capital letters A to Z
)"},
      {"two people of one pair of initials", "places.toml", "", "[[person]]",
       "[[person]]\ninitials = \"MK\"\nname = \"M. Koh\"\n\n[[person]]",
       R"(places.toml:24:1: the person "MK" is there twice, first in places.toml:20
  [[person]]
  ^^^^^^^^^^
  give each its own
)"},
  });
}
