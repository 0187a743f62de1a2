// Books refused for how things are made: steps, vessels, trays, portions, sizes, buying.
#include "refused.h"

TEST_CASE("a book is refused for its scales, its vessels and its time out of the cold",
          "[book][refused][making][src:food-code-2022/3-501.19(B)]") {
  book_test::check_refused({
      {"a fine scale that is no finer", "kitchen.toml", "", "scale_step = \"1 g\"",
       "scale_step = \"1 g\"\nfine_scale_step = \"1 g\"",
       R"(kitchen.toml:14:19: the kitchen: fine_scale_step is not less than scale_step
  fine_scale_step = "1 g"
                    ^^^^^
  state what the scale for small amounts shows, as in "0.1 g", or leave it out
)"},
      {"a scale that shows nothing", "kitchen.toml", "", "scale_step = \"1 g\"", "scale_step = \"0 g\"",
       R"(kitchen.toml:13:14: "0 g" is zero
  scale_step = "0 g"
               ^^^^^
  write an amount above zero
)"},
      {"no time out of the cold", "kitchen.toml", "", "scale_step = \"1 g\"",
       "scale_step = \"1 g\"\nout_of_cold = \"0 min\"",
       R"(kitchen.toml:14:15: the kitchen: out_of_cold is no time at all
  out_of_cold = "0 min"
                ^^^^^^^
  state how long food may stand out of the cold while it is worked on: "30 min"
)"},
      {"more time out of the cold than the code allows", "kitchen.toml", "", "scale_step = \"1 g\"",
       "scale_step = \"1 g\"\nout_of_cold = \"4 h 1 min\"",
       R"text(kitchen.toml:14:15: out_of_cold is longer than the 4 h for which food may be without temperature control (FDA Food Code 2022 3-501.19(B))
  out_of_cold = "4 h 1 min"
                ^^^^^^^^^^^
  shorten it; common practice is 30 min
)text"},
      {"two vessels of one id", "places.toml", "", "[[site]]",
       "[[vessel]]\nid = \"kettle\"\nname = \"Kettle\"\n[[vessel]]\nid = \"kettle\"\nname = \"Pot\"\n[[site]]",
       R"(places.toml:19:1: the vessel "kettle" is there twice, first in places.toml:16
  [[vessel]]
  ^^^^^^^^^^
  give each its own
)"},
      {"a vessel whose tare is a volume", "places.toml", "", "[[site]]",
       "[[vessel]]\nid = \"kettle\"\nname = \"Kettle\"\ntare = \"2 L\"\n[[site]]",
       R"(places.toml:19:8: vessel "kettle": tare is not a weight
  tare = "2 L"
         ^^^^^
  write it in g, kg, oz or lb
)"},
  });
}

TEST_CASE("a book is refused for how an ingredient is bought", "[book][refused][making]") {
  book_test::check_refused({
      {"a count grade without its weight", "pantry.toml", "id = \"chicken\"", "animal = true",
       "count_grade = \"21/25\"",
       R"(pantry.toml:42:15: "21/25" is not a count grade
  count_grade = "21/25"
                ^^^^^^^
  write pieces to a weight, as in 21/25 per lb, 6/8 per kg, or U/10 per lb for at most 10
)"},
      {"a count grade that falls", "pantry.toml", "id = \"chicken\"", "animal = true", "count_grade = \"25/21 per lb\"",
       R"(pantry.toml:42:15: "25/21 per lb" begins with more pieces than it ends with
  count_grade = "25/21 per lb"
                ^^^^^^^^^^^^^^
  write the fewer pieces first
)"},
      {"a count grade of no pieces", "pantry.toml", "id = \"chicken\"", "animal = true", "count_grade = \"U/0 per lb\"",
       R"(pantry.toml:42:15: "U/0 per lb" is not from 1 to 10000 pieces
  count_grade = "U/0 per lb"
                ^^^^^^^^^^^^
  write how many pieces the weight holds
)"},
      {"a count grade that begins at none", "pantry.toml", "id = \"chicken\"", "animal = true",
       "count_grade = \"0/8 per kg\"",
       R"(pantry.toml:42:15: "0/8 per kg" is not from 1 to 10000 pieces
  count_grade = "0/8 per kg"
                ^^^^^^^^^^^^
  write how many pieces the weight holds
)"},
      {"a count grade of crumbs", "pantry.toml", "id = \"chicken\"", "animal = true",
       "count_grade = \"1/10001 per kg\"",
       R"(pantry.toml:42:15: "1/10001 per kg" is not from 1 to 10000 pieces
  count_grade = "1/10001 per kg"
                ^^^^^^^^^^^^^^^^
  write how many pieces the weight holds
)"},
      {"a sack of nothing that is said", "pantry.toml", "id = \"chicken\"", "animal = true", "bought_as = \"sack\"",
       R"(pantry.toml:42:13: ingredient "chicken" has a bought_as but no bought_by
  bought_as = "sack"
              ^^^^^^
  state bought_by, how much of it that is: "25 lb" or "12 pieces"
)"},
      {"water that is bought by the bottle and always there", "pantry.toml", "id = \"chicken\"", "animal = true",
       "bought_by = \"12 pieces\"\nalways_there = true",
       R"(pantry.toml:43:16: ingredient "chicken" is always there, and has a bought_by
  always_there = true
                 ^^^^
  state one of the two: what is always there is never bought
)"},
      {"how warm it may come, without the law that says so", "pantry.toml", "id = \"chicken\"", "animal = true",
       "received_at_most = \"45 °F (7 °C)\"",
       R"end(pantry.toml:42:20: ingredient "chicken" has a received_at_most but no received_source
  received_at_most = "45 °F (7 °C)"
                     ^^^^^^^^^^^^^^
  say which law allows it, as in received_source = "3-202.11 of the Food Code 2022"
)end"},
      {"a sack that is empty", "pantry.toml", "id = \"chicken\"", "animal = true", "bought_by = \"0 lb\"",
       R"(pantry.toml:42:13: "0 lb" is zero
  bought_by = "0 lb"
              ^^^^^^
  write an amount above zero
)"},
  });
}

TEST_CASE("a book is refused for how a line is portioned and laid", "[book][refused][making][formula]") {
  const char* const rub_line = "item = \"pepper\", parts = 3";
  const char* const parcel_line = "item = \"marinade\", per_unit = \"40 g\"";
  book_test::check_refused({
      {"a disher in a component", "products.toml", "id = \"lime-butter\"", "amount = \"1 kg\"",
       "per_unit = \"1 kg\", disher = 16",
       R"(products.toml:27:12: the line "butter" of product "lime-butter" has a disher, but a component has no units
    { item = "butter", per_unit = "1 kg", disher = 16 },
             ^^^^^^^^
  leave disher out, or write kind = "assembled item" in the product
)"},
      {"a brushed line of a component", "products.toml", "id = \"rub\"", rub_line,
       "item = \"pepper\", parts = 3, laying = \"brushed\"",
       R"(products.toml:11:12: the line "pepper" of product "rub" has a laying, but a component has no units
    { item = "pepper", parts = 3, laying = "brushed" },
             ^^^^^^^^
  leave laying out, or write kind = "assembled item" in the product
)"},
      {"a portion tool in a component", "products.toml", "id = \"rub\"", rub_line,
       "item = \"pepper\", parts = 3, tool = \"ladle\"",
       R"(products.toml:11:12: the line "pepper" of product "rub" has a tool, but a component has no units
    { item = "pepper", parts = 3, tool = "ladle" },
             ^^^^^^^^
  leave tool out, or write kind = "assembled item" in the product
products.toml:11:40: the line "pepper" of product "rub" has a tool but no per_unit
    { item = "pepper", parts = 3, tool = "ladle" },
                                         ^^^^^^^
  state per_unit, what goes onto one unit, or leave tool out
)"},
      {"a disher of a share", "products.toml", "id = \"parcel\"", parcel_line,
       "item = \"marinade\", percent = 80, of = \"dough\", disher = 16",
       R"(products.toml:125:61: the line "marinade" of product "parcel" has a disher but no per_unit
    { item = "marinade", percent = 80, of = "dough", disher = 16 },
                                                              ^^
  state per_unit, what goes onto one unit, or leave disher out
)"},
      {"a disher and a ladle", "products.toml", "id = \"parcel\"", parcel_line,
       "item = \"marinade\", per_unit = \"40 g\", disher = 16, tool = \"ladle\"",
       R"(products.toml:125:63: the line "marinade" of product "parcel" has both disher and tool
    { item = "marinade", per_unit = "40 g", disher = 16, tool = "ladle" },
                                                                ^^^^^^^
  write one of them
)"},
      {"a disher of a number that is not made", "products.toml", "id = \"parcel\"", parcel_line,
       "item = \"marinade\", per_unit = \"40 g\", disher = 101",
       R"(products.toml:125:52: the line "marinade" of product "parcel": disher is 101
    { item = "marinade", per_unit = "40 g", disher = 101 },
                                                     ^^^
  write a whole number from 1 to 100
)"},
      {"a laying that has no word", "products.toml", "id = \"parcel\"", parcel_line,
       "item = \"marinade\", per_unit = \"40 g\", laying = \"sprayed\"",
       R"(products.toml:125:52: the line "marinade" of product "parcel": laying cannot be "sprayed"
    { item = "marinade", per_unit = "40 g", laying = "sprayed" },
                                                     ^^^^^^^^^
  write "brushed" or "drizzled"
)"},
      {"pieces that are brushed on", "products.toml", "id = \"parcel\"", parcel_line,
       "item = \"marinade\", per_unit = \"1 piece\", laying = \"brushed\"",
       R"(products.toml:125:55: the line "marinade" of product "parcel" is counted, but brushed
    { item = "marinade", per_unit = "1 piece", laying = "brushed" },
                                                        ^^^^^^^^^
  write its amount as a weight or volume, or leave laying out
)"},
      {"pieces in a disher", "products.toml", "id = \"parcel\"", parcel_line,
       "item = \"marinade\", per_unit = \"1 piece\", disher = 16",
       R"(products.toml:125:55: the line "marinade" of product "parcel" is counted, but has a disher
    { item = "marinade", per_unit = "1 piece", disher = 16 },
                                                        ^^
  write per_unit as a weight or volume, or leave disher out
)"},
      {"a drizzle out of a disher", "products.toml", "id = \"parcel\"", parcel_line,
       "item = \"marinade\", per_unit = \"40 g\", disher = 16, laying = \"drizzled\"",
       R"(products.toml:125:52: the line "marinade" of product "parcel" has a disher, but is brushed or drizzled
    { item = "marinade", per_unit = "40 g", disher = 16, laying = "drizzled" },
                                                     ^^
  leave disher or laying out
)"},
  });
}

TEST_CASE("a book is refused for how the pieces lie on a tray", "[book][refused][making]") {
  const char* const tray = "kind = \"tray\"";
  book_test::check_refused({
      {"rows without columns", "products.toml", "id = \"parcel\"", tray, "kind = \"tray\"\nrows = 4",
       R"(products.toml:135:8: a container of product "parcel" has rows but no columns
  rows = 4
         ^
  state both, or neither
)"},
      {"rows of a bag", "products.toml", "id = \"tinga\"", "kind = \"bag\"", "kind = \"bag\"\nrows = 4\ncolumns = 6",
       R"(products.toml:73:8: a container of product "tinga": a bag has no rows
  rows = 4
         ^
  leave rows and columns out, or write kind = "tray"
)"},
      {"rows and columns of other pieces than it holds", "products.toml", "id = \"parcel\"", tray,
       "kind = \"tray\"\nrows = 4\ncolumns = 5",
       R"(products.toml:137:9: a container of product "parcel": 4 rows and 5 columns have room for 20 pieces, but holds says otherwise
  holds = "24 pieces"
          ^^^^^^^^^^^
  write holds = "20 pieces", or correct rows and columns
)"},
      {"no rows at all", "products.toml", "id = \"parcel\"", tray, "kind = \"tray\"\nrows = 0\ncolumns = 24",
       R"(products.toml:135:8: a container of product "parcel": rows is 0
  rows = 0
         ^
  write a whole number from 1 to 100
)"},
      {"a tray that weighs nothing", "products.toml", "id = \"parcel\"", tray, "kind = \"tray\"\ntare = \"0 g\"",
       R"(products.toml:135:8: "0 g" is zero
  tare = "0 g"
         ^^^^^
  write an amount above zero
)"},
  });
}

TEST_CASE("a book is refused for how a product is made", "[book][refused][making]") {
  const char* const weight = "unit_weight = \"90 g\"";
  const char* const makes = "makes = \"1.04 kg\"";
  book_test::check_refused({
      {"a least weight of a unit without a most", "products.toml", "id = \"parcel\"", weight,
       "unit_weight = \"90 g\"\nunit_least = \"88 g\"",
       R"(products.toml:122:14: product "parcel" has a unit_least but no unit_most
  unit_least = "88 g"
               ^^^^^^
  state both, or neither
)"},
      {"a unit that may not weigh what it shall weigh", "products.toml", "id = \"parcel\"", weight,
       "unit_weight = \"90 g\"\nunit_least = \"91 g\"\nunit_most = \"95 g\"",
       R"(products.toml:121:15: product "parcel": unit_weight is not between unit_least and unit_most
  unit_weight = "90 g"
                ^^^^^^
  write unit_least = "106 g", unit_weight = "110 g", unit_most = "115 g"
)"},
      {"a range about no weight", "products.toml", "id = \"parcel\"", weight,
       "unit_least = \"86 g\"\nunit_most = \"95 g\"",
       R"(products.toml:121:14: product "parcel" has a unit_least but no unit_weight
  unit_least = "86 g"
               ^^^^^^
  state unit_weight, what one piece shall weigh
)"},
      {"lots of pieces of what is weighed", "products.toml", "id = \"lime-butter\"", makes,
       "makes = \"1.04 kg\"\nmade_in = \"12 pieces\"",
       R"(products.toml:26:11: product "lime-butter": made_in is not a weight, in which it is made
  made_in = "12 pieces"
            ^^^^^^^^^^^
  write it as makes is written
)"},
      {"a level of nothing", "products.toml", "id = \"lime-butter\"", makes,
       "makes = \"1.04 kg\"\nkeep_on_hand = \"0 kg\"",
       R"(products.toml:26:16: "0 kg" is zero
  keep_on_hand = "0 kg"
                 ^^^^^^
  write an amount above zero
)"},
      {"a level in another dimension, where nothing says what is made", "products.toml", "id = \"tinga\"", "cook_yield",
       "keep_on_hand = \"10 pieces\"\ncook_yield",
       R"(products.toml:57:16: product "tinga": keep_on_hand is not a weight, in which it is made
  keep_on_hand = "10 pieces"
                 ^^^^^^^^^^^
  write it so, or state makes
)"},
      {"a vessel without what it takes", "products.toml", "id = \"lime-butter\"", makes,
       "makes = \"1.04 kg\"\nvessel = \"kettle\"",
       R"(products.toml:26:10: no vessel has the id "kettle"
  vessel = "kettle"
           ^^^^^^^^
  add a [[vessel]] table with this id
products.toml:26:10: product "lime-butter" has a vessel but no vessel_takes
  vessel = "kettle"
           ^^^^^^^^
  state both, or neither
)"},
      {"a vessel that takes less than a gram", "products.toml", "id = \"lime-butter\"", makes,
       "makes = \"1.04 kg\"\nvessel_takes = \"0.9 g\"",
       R"(products.toml:26:16: product "lime-butter" has a vessel_takes but no vessel
  vessel_takes = "0.9 g"
                 ^^^^^^^
  state both, or neither
products.toml:26:16: product "lime-butter": vessel_takes is less than 1 g
  vessel_takes = "0.9 g"
                 ^^^^^^^
  write how much of what goes in the vessel holds, as in "18 kg"
)"},
      {"units an hour of a component", "products.toml", "id = \"lime-butter\"", makes,
       "makes = \"1.04 kg\"\nunits_per_hour = 180",
       R"(products.toml:26:18: product "lime-butter" has units_per_hour, but a component has no units
  units_per_hour = 180
                   ^^^
  leave units_per_hour out, or write kind = "assembled item"
)"},
      {"no units an hour", "products.toml", "id = \"parcel\"", weight, "unit_weight = \"90 g\"\nunits_per_hour = 0",
       R"(products.toml:122:18: product "parcel": units_per_hour is not a number above zero
  units_per_hour = 0
                   ^
  write a plain number such as 3 or 2.5
)"},
  });
}

TEST_CASE("a book is refused for a step", "[book][refused][making]") {
  const char* const after = "authority = \"figure:ready-to-eat-chilled\"\n";
  book_test::check_refused({
      {"a step that does not say what is done", "products.toml", "id = \"tinga\"", after,
       "authority = \"figure:ready-to-eat-chilled\"\n[[product.step]]\nkind = \"cook\"\n",
       R"(products.toml:70:1: a step of product "tinga" does not say what is done
  [[product.step]]
  ^^^^^^^^^^^^^^^^
  state text, as the cook shall read it
)"},
      {"a step of no kind", "products.toml", "id = \"tinga\"", after,
       "authority = \"figure:ready-to-eat-chilled\"\n[[product.step]]\ntext = \"Simmer\"\n",
       R"(products.toml:70:1: a step of product "tinga" has no kind
  [[product.step]]
  ^^^^^^^^^^^^^^^^
  state kind: "work", "marinate", "rest", "cook", "cool", "chill", "freeze" or "thaw"
)"},
      {"a kind of step that has no word", "products.toml", "id = \"tinga\"", after,
       "authority = \"figure:ready-to-eat-chilled\"\n[[product.step]]\nkind = \"simmer\"\ntext = \"Simmer\"\n",
       R"(products.toml:71:8: a step of product "tinga": kind cannot be "simmer"
  kind = "simmer"
         ^^^^^^^^
  write "work", "marinate", "rest", "cook", "cool", "chill", "freeze" or "thaw"
)"},
      {"a step that takes no time", "products.toml", "id = \"tinga\"", after,
       "authority = \"figure:ready-to-eat-chilled\"\n[[product.step]]\nkind = \"cook\"\ntext = \"Simmer\"\ntakes = \"0 "
       "min\"\n",
       R"(products.toml:73:9: a step of product "tinga": takes is no time at all
  takes = "0 min"
          ^^^^^^^
  write it as 20 min or 12 to 15 min, or leave takes out when it is not known
)"},
      {"a step whose time ends before it begins", "products.toml", "id = \"tinga\"", after,
       "authority = \"figure:ready-to-eat-chilled\"\n[[product.step]]\nkind = \"cook\"\ntext = \"Simmer\"\ntakes = "
       "\"15 "
       "to 12 min\"\n",
       R"(products.toml:73:9: "15 to 12 min" ends before it begins
  takes = "15 to 12 min"
          ^^^^^^^^^^^^^^
  write the shorter time first
)"},
      {"a step that cools what has no cooling limits", "products.toml", "id = \"tinga\"",
       "cooled_from = \"hot\"\nformula = [",
       "step = { kind = \"cool\", text = \"Ice bath\", takes = \"2 h\" }\nformula = [",
       R"(products.toml:60:8: product "tinga" has a step that cools it but no cooled_from, so its cooling has no limits
  step = { kind = "cool", text = "Ice bath", takes = "2 h" }
         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  state cooled_from = "hot" or "room temperature"; what only goes into the cold has kind = "chill"
)"},
  });
}

TEST_CASE("a vessel that is not known is refused with the nearest", "[book][refused][making]") {
  std::vector<book_test::SourceFile> files = book_test::kitchen();
  book_test::edit(book_test::file_of(files, QStringLiteral("places.toml")), "", "[[site]]",
                  "[[vessel]]\nid = \"kettle\"\nname = \"Kettle\"\n[[site]]");
  book_test::edit(book_test::file_of(files, QStringLiteral("products.toml")), "id = \"lime-butter\"",
                  "makes = \"1.04 kg\"", "makes = \"1.04 kg\"\nvessel = \"ketle\"\nvessel_takes = \"18 kg\"");
  CHECK(lardiner::problem::text(book_test::read(files).findings.errors) ==
        QStringLiteral("products.toml:26:10: no vessel has the id \"ketle\"\n  vessel = \"ketle\"\n           "
                       "^^^^^^^\n  did you mean \"kettle\"?\n"));
}
