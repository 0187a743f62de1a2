// Books refused for a container or a label material.
#include "refused.h"

TEST_CASE("a book is refused for a container or a medium", "[book][refused]") {
  book_test::check_refused({
      {"a medium that does not exist", "products.toml", "id = \"lime-butter\"", "media = \"lid\"", "media = \"lidd\"",
       R"(products.toml:45:9: no medium has the id "lidd"
  media = "lidd"
          ^^^^^^
  did you mean "lid"?
)"},
      {"a frozen tub on a medium that does not bear the freezer", "products.toml", "id = \"lime-butter\"",
       "media = \"lid\"", "media = \"side\"",
       R"(products.toml:45:9: a container of product "lime-butter": the medium "side" does not bear freezer
  media = "side"
          ^^^^^^
  choose a medium whose bears has "freezer"
)"},
      {"a container that holds nothing that is said", "products.toml", "id = \"lime-butter\"", "holds = \"500 g\"\n",
       "",
       R"(products.toml:42:1: a container of product "lime-butter" does not say how much it holds
  [[product.container]]
  ^^^^^^^^^^^^^^^^^^^^^
  state holds: "500 g" or "24 pieces"
)"},
      {"a kind of container that has no word", "products.toml", "id = \"lime-butter\"", "kind = \"tub\"",
       "kind = \"bucket\"",
       R"(products.toml:43:8: a container of product "lime-butter": kind cannot be "bucket"
  kind = "bucket"
         ^^^^^^^^
  write "tub", "tray", "bag", "case", "jar", "pan" or "bottle"
)"},
      {"a label in a language that the kitchen does not have", "products.toml", "id = \"parcel\"",
       "languages = [\"en\", \"es\"]", "languages = [\"en\", \"fr\"]",
       R"(products.toml:138:13: a container of product "parcel" asks for the language "fr"
  languages = ["en", "fr"]
              ^^^^^^^^^^^^
  the kitchen's languages are en, es
)"},
      {"a tub of a component that holds pieces", "products.toml", "id = \"lime-butter\"", "holds = \"500 g\"",
       "holds = \"12 pieces\"",
       R"(products.toml:42:1: a tub of product "lime-butter" holds pieces, but a component has none
  [[product.container]]
  ^^^^^^^^^^^^^^^^^^^^^
  write holds as a weight or volume, or kind = "assembled item"
)"},
      {"a container of food that needs temperature control, kept ambient", "products.toml", "id = \"marinade\"",
       "media = \"lid\"", "media = \"lid\", kept = \"ambient\"",
       R"(products.toml:108:13: a tub of product "marinade" is kept ambient, but the food needs time and temperature control
  container = { kind = "tub", holds = "5 kg", media = "lid", kept = "ambient", purpose = "inside" }
              ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  write kept = "chilled", "frozen" or "hot-held"
)"},
      {"a translation into a language that the kitchen does not have", "products.toml", "id = \"dough\"",
       "es = \"Masa\"", "fr = \"Pâte\"",
       R"(products.toml:149:8: product "dough": name has the language "fr"
  name = { en = "Dough", fr = "Pâte" }
         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  the kitchen's languages are en, es
)"},
      {"a medium that is all margin", "places.toml", "", "\"1.5 mm\"", "\"25 mm\"",
       R"(places.toml:7:10: medium "lid" is all margin
  margin = "25 mm"
           ^^^^^^^
  write margins that together are less than its width and its height
)"},
      {"a medium without a height", "places.toml", "id = \"side\"", "height = \"2 in\"\n", "",
       R"(places.toml:9:1: medium "side" has no height
  [[media]]
  ^^^^^^^^^
  state height: "50 mm" or "2 in"
)"},
      {"a medium that does not say what it bears", "places.toml", "id = \"side\"", "bears = [\"chilled\"]\n", "",
       R"(places.toml:9:1: medium "side" does not say what it bears
  [[media]]
  ^^^^^^^^^
  state bears, any of "chilled", "freezer", "hot"
products.toml:74:9: a container of product "tinga": the medium "side" does not bear chilled
  media = "side"
          ^^^^^^
  choose a medium whose bears has "chilled"
products.toml:136:9: a container of product "parcel": the medium "side" does not bear chilled
  media = "side"
          ^^^^^^
  choose a medium whose bears has "chilled"
)"},
  });
}
