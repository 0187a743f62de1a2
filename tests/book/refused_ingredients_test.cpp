// Books refused for an ingredient.
#include "refused.h"

TEST_CASE("a book is refused for an ingredient", "[book][refused][src:21-usc-343/w][src:food-code-2022/3-501.17(B)]") {
  book_test::check_refused({
      {"an allergen that is not known", "pantry.toml", "id = \"butter\"", "[\"milk\"]", "[\"mlik\"]",
       R"(pantry.toml:9:74: "mlik" is not a substance of the allergen lists
  supplier_item = { id = "butter-1kg", supplier = "Dale Dairy", contains = ["mlik"], checked = 2026-01-05, source = "label" }
                                                                           ^^^^^^^^
  the substances are milk, egg, fish, crustacean, mollusc, tree-nut, wheat, rye, barley, oats, triticale, peanut, soy, sesame, celery, mustard, lupin, sulphites
)"},
      {"none beside a substance", "pantry.toml", "id = \"butter\"", "[\"milk\"]", "[\"none\", \"milk\"]",
       R"(pantry.toml:9:74: supplier item "butter-1kg" of ingredient "butter": contains says none beside other substances
  supplier_item = { id = "butter-1kg", supplier = "Dale Dairy", contains = ["none", "milk"], checked = 2026-01-05, source = "label" }
                                                                           ^^^^^^^^^^^^^^^^
  write "none" alone, or leave it out
)"},
      {"an empty list of allergens", "pantry.toml", "id = \"butter\"", "[\"milk\"]", "[]",
       R"(pantry.toml:9:74: supplier item "butter-1kg" of ingredient "butter": contains is an empty list
  supplier_item = { id = "butter-1kg", supplier = "Dale Dairy", contains = [], checked = 2026-01-05, source = "label" }
                                                                           ^^
  write contains = "none" when none is declared, or leave it out while it is not known
)"},
      {"a declaration without its source", "pantry.toml", "id = \"butter\"",
       ", checked = 2026-01-05, source = \"label\"", "",
       R"(pantry.toml:9:74: supplier item "butter-1kg" of ingredient "butter": contains has no checked
  supplier_item = { id = "butter-1kg", supplier = "Dale Dairy", contains = ["milk"] }
                                                                           ^^^^^^^^
  state checked, the date on which it was read, and source, where
pantry.toml:9:74: supplier item "butter-1kg" of ingredient "butter": contains has no source
  supplier_item = { id = "butter-1kg", supplier = "Dale Dairy", contains = ["milk"] }
                                                                           ^^^^^^^^
  state checked, the date on which it was read, and source, where
)"},
      {"a date that is written the American way", "pantry.toml", "id = \"butter\"", "checked = 2026-01-05",
       "checked = \"01/05/2026\"",
       R"(pantry.toml:9:94: "01/05/2026" is not a date
  supplier_item = { id = "butter-1kg", supplier = "Dale Dairy", contains = ["milk"], checked = "01/05/2026", source = "label" }
                                                                                               ^^^^^^^^^^^^
  write it as 2026-02-28
)"},
      {"a fish without its species where the law names it", "pantry.toml", "", "\"fish:anchovy\"", "\"fish\"",
       R"(pantry.toml:29:12: supplier item "worc-5l" declares fish without the species, which the list "us" wants named
  contains = ["fish"]
             ^^^^^^^^
  write it with the species, as in "fish:anchovy"
)"},
      {"sulphites without their content", "pantry.toml", "id = \"butter\"", "[\"milk\"]", "[\"milk\", \"sulphites\"]",
       R"(pantry.toml:9:74: "sulphites" does not say how much
  supplier_item = { id = "butter-1kg", supplier = "Dale Dairy", contains = ["milk", "sulphites"], checked = 2026-01-05, source = "label" }
                                                                           ^^^^^^^^^^^^^^^^^^^^^
  write it as "sulphites 15 mg/kg", or "sulphites unknown", which counts as over every threshold
)"},
      {"a TCS statement without a basis", "pantry.toml", "id = \"butter\"", "tcs_basis = \"dairy fat with water\"\n",
       "",
       R"(pantry.toml:4:7: ingredient "butter" has no tcs_basis
  tcs = "yes"
        ^^^^^
  say on what basis: a pH, a product assessment, the kind of food
)"},
      {"a TCS statement that is neither yes nor no", "pantry.toml", "id = \"butter\"", "tcs = \"yes\"",
       "tcs = \"maybe\"",
       R"(pantry.toml:4:7: ingredient "butter": tcs cannot be "maybe"
  tcs = "maybe"
        ^^^^^^^
  write "yes" or "no"
)"},
      {"food that must be cooked without its class", "pantry.toml", "id = \"chicken\"", "food = \"poultry\"\n", "",
       R"(pantry.toml:40:18: ingredient "chicken" must be cooked but has no food
  must_be_cooked = true
                   ^^^^
  state food, the class that decides its cook minimum: "poultry", "fish", …
)"},
      {"a class of food that the rule set does not have", "pantry.toml", "id = \"chicken\"", "food = \"poultry\"",
       "food = \"poltry\"",
       R"(pantry.toml:41:8: FDA Food Code 2022 has no cook minimum for "poltry"
  food = "poltry"
         ^^^^^^^^
  did you mean "poultry"?
)"},
      {"a trim yield above the whole", "pantry.toml", "id = \"lime\"", "\"80 %\"", "\"180 %\"",
       R"(pantry.toml:17:10: ingredient "lime": edible is not above 0 % and at most 100 %
  edible = "180 %"
           ^^^^^^^
  write how much of what is purchased can be eaten, as in "92 %"
)"},
      {"a trim yield as a bare number", "pantry.toml", "id = \"lime\"", "\"80 %\"", "0.8",
       R"(pantry.toml:17:10: ingredient "lime": edible has no percent sign
  edible = 0.8
           ^^^
  write it as "82 %", so that 82 and 0.82 cannot be confused
)"},
      {"a measure that weighs a weight", "pantry.toml", "id = \"butter\"", "amount = \"1 cup\"", "amount = \"1 lb\"",
       R"(pantry.toml:7:22: a measure of ingredient "butter" measures a weight by a weight
  measure = { amount = "1 lb", weighs = "227 g", source = "USDA SR28 01145" }
                       ^^^^^^
  write a volume or a count: "1 cup", "1 piece"
)"},
      {"a maximum that nobody set", "pantry.toml", "id = \"cure\"", "most_source = \"9 CFR 424.21(c)\"\n", "",
       R"text(pantry.toml:90:8: ingredient "cure" has a most but no most_source
  most = "0.25 %"
         ^^^^^^^^
  say who sets the maximum, as in most_source = "9 CFR 424.21(c)"
)text"},
      {"a best before on an opened food that needs temperature control", "pantry.toml", "id = \"butter\"",
       "keeps = \"7 days\"", "keeps = \"7 days\", kind = \"best before\"",
       R"(pantry.toml:8:14: the opened life of ingredient "butter" is a best before, but the food needs time and temperature control
  shelf_life = { state = "opened", keeps = "7 days", kind = "best before", authority = "figure:opened-package" }
               ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  write kind = "use by", or leave kind out
)"},
      {"an opened package kept longer than the code allows", "pantry.toml", "id = \"butter\"",
       "keeps = \"7 days\", authority = \"figure:opened-package\"", "keeps = \"8 days\", authority = \"kitchen rule\"",
       R"(pantry.toml:8:14: the opened life of ingredient "butter", 8 days with day 1 first, is longer than the 7 days with day 1 first of FDA Food Code 2022 3-501.17(B)
  shelf_life = { state = "opened", keeps = "8 days", authority = "kitchen rule" }
               ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  shorten it, or name the document that allows it: document = "…"
)"},
      {"a figure that the rule set does not have", "pantry.toml", "id = \"butter\"", "figure:opened-package",
       "figure:open-package",
       R"(pantry.toml:8:64: FDA Food Code 2022 has no figure "open-package"
  shelf_life = { state = "opened", keeps = "7 days", authority = "figure:open-package" }
                                                                 ^^^^^^^^^^^^^^^^^^^^^
  did you mean "opened-package"?
)"},
  });
}
