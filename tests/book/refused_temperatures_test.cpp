// Books refused for a cook or a finishing.
#include "refused.h"

TEST_CASE("a book is refused for a temperature below the adopted minimum, or one that cannot be read",
          "[book][refused][src:food-code-2022/3-401.11][src:food-code-2022/3-403.11]") {
  book_test::check_refused({
      {"a cook below the minimum for poultry", "products.toml", "id = \"tinga\"", "cook_to = \"165 °F (74 °C)\"",
       "cook_to = \"155 °F (68 °C) 17 s\"",
       R"(products.toml:49:1: product "tinga" is cooked to 155 °F (68 °C) 17 s, below the minimum of 165 °F (74 °C) instant (FDA Food Code 2022 3-401.11(A)(3)) for poultry
  [[product]]
  ^^^^^^^^^^^
  write cook_to = "165 °F (74 °C) instant" or more
)"},
      {"a cook temperature of a product that is not cooked here", "products.toml", "id = \"tinga\"",
       "process = \"cook\"\n", "",
       R"text(products.toml:58:11: product "tinga" has a cook_to but is not cooked here
  cook_to = "165 °F (74 °C)"
            ^^^^^^^^^^^^^^^^
  state process = "cook"; what is cooked elsewhere has a finishing table
)text"},
      {"a raw part two levels down that the finishing does not cook", "products.toml", "id = \"parcel\"",
       "to = \"165 °F (74 °C)\"", "to = \"145 °F (63 °C) 15 s\"",
       R"(products.toml:140:1: the convection-oven finishing of product "parcel" reaches 145 °F (63 °C) 15 s, below the minimum of 165 °F (74 °C) instant (FDA Food Code 2022 3-401.11(A)(3)) for poultry
  [[product.finishing]]
  ^^^^^^^^^^^^^^^^^^^^^
  write to = "165 °F (74 °C) instant" or more
)"},
      {"a reheat that is not held for hot holding", "products.toml", "id = \"tinga\"", "to = \"165 °F (74 °C) 15 s\"",
       "to = \"165 °F (74 °C)\"",
       R"(products.toml:79:1: the oven finishing of product "tinga" reaches 165 °F (74 °C) instant, below the minimum of 165 °F (74 °C) 15 s (FDA Food Code 2022 3-403.11(A)) for reheating (hot-holding)
  [[product.finishing]]
  ^^^^^^^^^^^^^^^^^^^^^
  write to = "165 °F (74 °C) 15 s" or more
)"},
      {"a microwave without its standing time", "products.toml", "id = \"tinga\"", "stand = \"2 min\"",
       "stand = \"1 min\"",
       R"(products.toml:87:1: the microwave finishing of product "tinga" stands less than 2 min (FDA Food Code 2022 3-403.11(B))
  [[product.finishing]]
  ^^^^^^^^^^^^^^^^^^^^^
  write stand = "2 min" or more
)"},
      {"a microwave below its own minimum for raw food", "products.toml", "id = \"parcel\"",
       "equipment = \"convection-oven\"\nfrom = \"chilled\"\nsetting = \"375 °F (190 °C)\"\ntime = \"14 to 16 "
       "min\"\nto = \"165 °F (74 °C)\"",
       "equipment = \"microwave\"\nfrom = \"chilled\"\ntime = \"5 min\"\nto = \"158 °F (70 °C)\"\nstand = \"2 min\"",
       R"(products.toml:140:1: the microwave finishing of product "parcel" reaches 158 °F (70 °C) instant, below the minimum of 165 °F (74 °C) instant (FDA Food Code 2022 3-401.12) for poultry
  [[product.finishing]]
  ^^^^^^^^^^^^^^^^^^^^^
  write to = "165 °F (74 °C) instant" or more
)"},
      {"two scales that do not agree", "products.toml", "id = \"tinga\"", "cook_to = \"165 °F (74 °C)\"",
       "cook_to = \"165 °F (70 °C)\"",
       R"text(products.toml:59:11: "165 °F (70 °C)" gives two different temperatures
  cook_to = "165 °F (70 °C)"
            ^^^^^^^^^^^^^^^^
  write the figures that the source prints; 165 °F is about 74 °C
)text"},
      {"a temperature without a scale", "products.toml", "id = \"tinga\"", "cook_to = \"165 °F (74 °C)\"",
       "cook_to = \"165\"",
       R"(products.toml:59:11: "165" is not a temperature limit
  cook_to = "165"
            ^^^^^
  write it as 165 °F (74 °C) 15 s
)"},
      {"two settings that are far apart", "products.toml", "id = \"tinga\"", "\"350 °F (180 °C)\"",
       "\"350 °F (160 °C)\"",
       R"text(products.toml:82:11: "350 °F (160 °C)" gives two settings
  setting = "350 °F (160 °C)"
            ^^^^^^^^^^^^^^^^^
  write one setting in °F and in °C, as in 375 °F (190 °C)
)text"},
      {"equipment that is not known", "products.toml", "id = \"tinga\"", "equipment = \"oven\"", "equipment = \"owen\"",
       R"(products.toml:80:13: a finishing of product "tinga": equipment cannot be "owen"
  equipment = "owen"
              ^^^^^^
  write "oven", "convection-oven", "combi-oven", "microwave", "fryer", "griddle", "pan", "steamer", "water-bath" or "grill"
)"},
      {"a time range that ends before it begins", "products.toml", "id = \"tinga\"", "\"20 to 25 min\"",
       "\"25 to 20 min\"",
       R"(products.toml:83:8: "25 to 20 min" ends before it begins
  time = "25 to 20 min"
         ^^^^^^^^^^^^^^
  write the shorter time first
)"},
  });
}
