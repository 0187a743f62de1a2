// Books refused for a shelf life.
#include "refused.h"

TEST_CASE("a book is refused for a shelf life",
          "[book][refused][src:food-code-2022/3-501.17(A)][src:food-code-2022/3-502.12]") {
  book_test::check_refused({
      {"a life longer than the figure it cites", "products.toml", "id = \"lime-butter\"", "keeps = \"7 days\"",
       "keeps = \"8 days\"",
       R"(products.toml:32:1: the chilled life of product "lime-butter", 8 days with day 1 first, is longer than the 7 days with day 1 first of FDA Food Code 2022 3-501.17(A)
  [[product.shelf_life]]
  ^^^^^^^^^^^^^^^^^^^^^^
  shorten it, or name the document that allows it: document = "…"
)"},
      {"a life of as many days that begins on day 0", "products.toml", "id = \"lime-butter\"", "keeps = \"7 days\"",
       "keeps = \"7 days\"\nfirst_day = 0",
       R"(products.toml:32:1: the chilled life of product "lime-butter", 7 days with day 0 first, is longer than the 7 days with day 1 first of FDA Food Code 2022 3-501.17(A)
  [[product.shelf_life]]
  ^^^^^^^^^^^^^^^^^^^^^^
  shorten it, or name the document that allows it: document = "…"
)"},
      {"a ready-to-eat life longer than the code allows, on the kitchen's own word", "products.toml",
       "id = \"lime-butter\"", "keeps = \"7 days\"\nauthority = \"figure:ready-to-eat-chilled\"",
       "keeps = \"10 days\"\nauthority = \"kitchen rule\"",
       R"(products.toml:32:1: the chilled life of product "lime-butter", 10 days with day 1 first, is longer than the 7 days with day 1 first of FDA Food Code 2022 3-501.17(A)
  [[product.shelf_life]]
  ^^^^^^^^^^^^^^^^^^^^^^
  shorten it, or name the document that allows it: document = "…"
)"},
      {"a month that is longer than the days of the code", "products.toml", "id = \"lime-butter\"",
       "keeps = \"7 days\"", "keeps = \"1 month\"",
       R"(products.toml:32:1: the chilled life of product "lime-butter", 1 month, is longer than the 7 days with day 1 first of FDA Food Code 2022 3-501.17(A)
  [[product.shelf_life]]
  ^^^^^^^^^^^^^^^^^^^^^^
  shorten it, or name the document that allows it: document = "…"
)"},
      {"a length of keeping that cannot be read", "products.toml", "id = \"lime-butter\"", "keeps = \"7 days\"",
       "keeps = \"a week\"",
       R"(products.toml:34:9: "a week" is not a length of keeping
  keeps = "a week"
          ^^^^^^^^
  write it as 7 days, 2 weeks, 3 months, 4 h or 90 min
)"},
      {"a state that no food is in", "products.toml", "id = \"lime-butter\"", "state = \"chilled\"", "state = \"cold\"",
       R"(products.toml:33:9: a shelf life of product "lime-butter": state cannot be "cold"
  state = "cold"
          ^^^^^^
  write "chilled", "frozen", "thawed", "ambient", "opened", "hot-held", "time-control" or "finished"
)"},
      {"a life without an authority", "products.toml", "id = \"lime-butter\"",
       "keeps = \"7 days\"\nauthority = \"figure:ready-to-eat-chilled\"", "keeps = \"7 days\"",
       R"(products.toml:32:1: a shelf life of product "lime-butter" has no authority
  [[product.shelf_life]]
  ^^^^^^^^^^^^^^^^^^^^^^
  state authority
)"},
      {"one state stated twice", "products.toml", "id = \"lime-butter\"", "state = \"frozen\"", "state = \"chilled\"",
       R"(products.toml:37:1: the chilled life of product "lime-butter" is stated twice
  [[product.shelf_life]]
  ^^^^^^^^^^^^^^^^^^^^^^
  keep one of the two
products.toml:37:1: the chilled life of product "lime-butter", 3 months, is longer than the 7 days with day 1 first of FDA Food Code 2022 3-501.17(A)
  [[product.shelf_life]]
  ^^^^^^^^^^^^^^^^^^^^^^
  shorten it, or name the document that allows it: document = "…"
)"},
      {"a use by of frozen food", "products.toml", "id = \"lime-butter\"", "keeps = \"3 months\"",
       "keeps = \"3 months\"\nkind = \"use by\"",
       R"(products.toml:37:1: the frozen life of product "lime-butter" is a use by, but freezing only keeps quality
  [[product.shelf_life]]
  ^^^^^^^^^^^^^^^^^^^^^^
  write kind = "best before", or leave kind out
)"},
      {"a first day of a life in hours", "products.toml", "id = \"lime-butter\"", "keeps = \"7 days\"",
       "keeps = \"20 h\"\nfirst_day = 1",
       R"(products.toml:35:13: a shelf life of product "lime-butter" has a first_day but is not in days
  first_day = 1
              ^
  leave first_day out, or write keeps in days
)"},
      {"a reduced-oxygen pack over seven days without a document", "products.toml", "id = \"tinga\"",
       "keeps = \"7 days\"\nauthority = \"figure:ready-to-eat-chilled\"",
       "keeps = \"14 days\"\nauthority = \"process study 14\"",
       R"(products.toml:66:1: product "tinga" keeps 14 days with day 1 first in a reduced oxygen bag, longer than the 7 days with day 1 first of FDA Food Code 2022 3-502.12(D)(2)(e)
  [[product.shelf_life]]
  ^^^^^^^^^^^^^^^^^^^^^^
  shorten its chilled life, or name the document that allows it: document = "…"
products.toml:66:1: the chilled life of product "tinga", 14 days with day 1 first, is longer than the 7 days with day 1 first of FDA Food Code 2022 3-501.17(A)
  [[product.shelf_life]]
  ^^^^^^^^^^^^^^^^^^^^^^
  shorten it, or name the document that allows it: document = "…"
)"},
      {"a reduced-oxygen pack over thirty days, whatever the document", "products.toml", "id = \"tinga\"",
       "keeps = \"7 days\"\nauthority = \"figure:ready-to-eat-chilled\"",
       "keeps = \"31 days\"\nauthority = \"process study 14\"\ndocument = \"process study 14, 2026-02-03\"",
       R"(products.toml:66:1: product "tinga" keeps 31 days with day 1 first in a reduced oxygen bag, longer than the 30 days with day 1 first of FDA Food Code 2022 3-502.12(B)(4)
  [[product.shelf_life]]
  ^^^^^^^^^^^^^^^^^^^^^^
  shorten its chilled life
)"},
      {"food that needs temperature control kept ambient", "products.toml", "id = \"lime-butter\"",
       "state = \"chilled\"", "state = \"ambient\"",
       R"(products.toml:32:1: the ambient life of product "lime-butter" is not chilled, but the food needs time and temperature control
  [[product.shelf_life]]
  ^^^^^^^^^^^^^^^^^^^^^^
  write state = "chilled", or tcs = "no" and on what basis
)"},
  });
}
