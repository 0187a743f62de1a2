// What a sound book leaves open: said with the table to complete and the key to add.
#include "refused.h"

TEST_CASE("what labels and sheets need and the book does not say is told, and everything else stays printable",
          "[book][gaps]") {
  book_test::check_gaps({
      {"an ingredient without a supplier item", "pantry.toml", "id = \"butter\"",
       "supplier_item = { id = \"butter-1kg\", supplier = \"Dale Dairy\", contains = [\"milk\"], checked = 2026-01-05, "
       "source = \"label\" }\n",
       "",
       R"(pantry.toml:1:1: ingredient "butter" has no supplier item, so its allergens are unknown
  [[ingredient]]
  ^^^^^^^^^^^^^^
  add [[ingredient.supplier_item]] with id, supplier, contains, checked and source
)"},
      {"a supplier item that declares nothing", "pantry.toml", "id = \"butter\"",
       ", contains = [\"milk\"], checked = 2026-01-05, source = \"label\"", "",
       R"(pantry.toml:9:17: supplier item "butter-1kg" of ingredient "butter" does not declare its allergens
  supplier_item = { id = "butter-1kg", supplier = "Dale Dairy" }
                  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  add contains = ["milk"] or contains = "none", with checked and source
)"},
      {"an ingredient without a TCS statement", "pantry.toml", "id = \"butter\"",
       "tcs = \"yes\"\ntcs_basis = \"dairy fat with water\"\n", "",
       R"(pantry.toml:1:1: ingredient "butter" does not say whether it needs time and temperature control
  [[ingredient]]
  ^^^^^^^^^^^^^^
  add tcs = "yes" or tcs = "no", and tcs_basis
)"},
      {"an ingredient that does not say whether it must be cooked", "pantry.toml", "id = \"butter\"",
       "must_be_cooked = false\n", "",
       R"(pantry.toml:1:1: ingredient "butter" does not say whether it must be cooked
  [[ingredient]]
  ^^^^^^^^^^^^^^
  add must_be_cooked = true with its food, or must_be_cooked = false
)"},
      {"a product without a TCS statement", "products.toml", "id = \"dough\"",
       "tcs = \"no\"\ntcs_basis = \"dough used the same day\"\n", "",
       R"(products.toml:147:1: product "dough" does not say whether it needs time and temperature control
  [[product]]
  ^^^^^^^^^^^
  add tcs = "yes" or tcs = "no", and tcs_basis
)"},
      {"a chilled tub without a chilled life", "products.toml", "id = \"marinade\"",
       "shelf_life = { state = \"chilled\", keeps = \"3 days\", authority = \"kitchen rule\" }\n", "",
       R"(products.toml:95:1: product "marinade" has no chilled shelf life, which its tub needs
  [[product]]
  ^^^^^^^^^^^
  add [[product.shelf_life]] with state = "chilled", keeps and authority
)"},
      {"a frozen tub without a chilled life", "products.toml", "id = \"lime-butter\"",
       "[[product.shelf_life]]\nstate = \"chilled\"\nkeeps = \"7 days\"\nauthority = "
       "\"figure:ready-to-eat-chilled\"\n\n",
       "",
       R"(products.toml:17:1: product "lime-butter" has no chilled shelf life, which its tub needs, for the days after thawing
  [[product]]
  ^^^^^^^^^^^
  add [[product.shelf_life]] with state = "chilled", keeps and authority
)"},
      {"a dry tub without a life", "products.toml", "id = \"rub\"",
       "shelf_life = { state = \"ambient\", keeps = \"3 months\", kind = \"best before\", authority = \"kitchen rule\" "
       "}\n",
       "",
       R"(products.toml:1:1: product "rub" has no ambient shelf life, which its tub needs
  [[product]]
  ^^^^^^^^^^^
  add [[product.shelf_life]] with state = "ambient", keeps and authority
)"},
      {"a raw tray for a finisher that does not say how to finish it", "products.toml", "id = \"parcel\"",
       "[[product.finishing]]\nequipment = \"convection-oven\"\nfrom = \"chilled\"\nsetting = \"375 °F (190 "
       "°C)\"\ntime = \"14 to 16 min\"\nto = \"165 °F (74 °C)\"\n",
       "",
       R"(products.toml:110:1: product "parcel" is finished elsewhere but does not say how
  [[product]]
  ^^^^^^^^^^^
  add [[product.finishing]] with equipment, from, setting, time and to
)"},
      {"a finishing without a core temperature", "products.toml", "id = \"parcel\"", "\nto = \"165 °F (74 °C)\"", "",
       R"text(products.toml:140:1: the convection-oven finishing of product "parcel" has no core temperature to reach
  [[product.finishing]]
  ^^^^^^^^^^^^^^^^^^^^^
  add to = "165 °F (74 °C)", the temperature and the time it is held
)text"},
      {"a name that the tray's label asks for in Spanish", "products.toml", "id = \"parcel\"",
       "name = { en = \"Chicken parcel\", es = \"Empanada de pollo\" }", "name = \"Chicken parcel\"",
       R"(products.toml:110:1: product "parcel" has no name in "es", which a label of "parcel" asks for
  [[product]]
  ^^^^^^^^^^^
  add the language: name = { es = "…" }
)"},
      {"a cue that the bag's label asks for in Spanish", "products.toml", "id = \"tinga\"",
       "cue = { en = \"steaming\", es = \"humeante\" }", "cue = \"steaming\"",
       R"(products.toml:79:1: the oven finishing of product "tinga" has no cue in "es", which a label of "tinga" asks for
  [[product.finishing]]
  ^^^^^^^^^^^^^^^^^^^^^
  add the language: cue = { es = "…" }
)"},
      {"a volume of which the weight is not known", "products.toml", "id = \"lime-butter\"",
       "item = \"lime\", percent = 3, of = \"butter\"", "item = \"lime\", amount = \"1 cup\"",
       R"(products.toml:17:1: it cannot be told how much of the restricted "cure" is in product "lime-butter"
  [[product]]
  ^^^^^^^^^^^
  give every line of it, and of what it is made of, a weight
products.toml:28:12: the line "lime" of product "lime-butter" has no weight, which sheets need: nothing says what a volume of "lime" weighs
    { item = "lime", amount = "1 cup" },
             ^^^^^^
  add [[ingredient.measure]] to "lime" with amount, weighs and source
)"},
      {"parts of which the weight is not known", "products.toml", "id = \"rub\"", "makes = \"400 g\"\n", "",
       R"(products.toml:1:1: the parts of product "rub" have no weight, which sheets need
  [[product]]
  ^^^^^^^^^^^
  state makes as a weight, or amount in the line of one of the parts
products.toml:16:1: it cannot be told how much of the restricted "cure" is in product "lime-butter"
  [[product]]
  ^^^^^^^^^^^
  give every line of it, and of what it is made of, a weight
products.toml:48:1: it cannot be told how much of the restricted "cure" is in product "tinga"
  [[product]]
  ^^^^^^^^^^^
  give every line of it, and of what it is made of, a weight
)"},
  });
}
