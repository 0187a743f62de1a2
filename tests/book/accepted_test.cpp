// The accepted twins of refused books: as near to the limit as the rules allow.
#include "book/roll_up.h"
#include "refused.h"
#include "tables.h"

using namespace lardiner;
using namespace lardiner::book;

TEST_CASE(
    "a book at its limits is accepted",
    "[book][accepted][src:food-code-2022/3-501.17(A)][src:food-code-2022/3-401.11][src:food-code-2022/3-502.12]") {
  const std::vector<book_test::Refused> books{
      {"a cited figure without a length takes the figure's", "products.toml", "id = \"lime-butter\"",
       "keeps = \"7 days\"\n", "", ""},
      {"six days from day 0 are seven from day 1", "products.toml", "id = \"lime-butter\"", "keeps = \"7 days\"",
       "keeps = \"6 days\"\nfirst_day = 0", ""},
      {"a longer life with a named document", "products.toml", "id = \"lime-butter\"", "keeps = \"7 days\"",
       "keeps = \"10 days\"\ndocument = \"challenge study 3, 2026-01-20\"", ""},
      {"a reduced-oxygen pack of thirty days with a named document", "products.toml", "id = \"tinga\"",
       "keeps = \"7 days\"", "keeps = \"30 days\"\ndocument = \"process study 14, 2026-02-03\"", ""},
      {"a week is seven days", "products.toml", "id = \"lime-butter\"", "keeps = \"7 days\"", "keeps = \"1 week\"", ""},
      {"raw food may keep as long as the kitchen says", "products.toml", "id = \"marinade\"", "keeps = \"3 days\"",
       "keeps = \"9 days\"", ""},
      {"a cook in one scale, at the code's own figure of it", "products.toml", "id = \"tinga\"", "165 °F (74 °C)",
       "74 °C", ""},
      {"a cook hotter than the minimum", "products.toml", "id = \"tinga\"", "cook_to = \"165 °F (74 °C)\"",
       "cook_to = \"170 °F (77 °C) 1 min\"", ""},
      {"an oven marked in round figures", "products.toml", "id = \"parcel\"", "375 °F (190 °C)", "400 °F (200 °C)", ""},
      {"a medium in inches", "places.toml", "id = \"lid\"", "width = \"50 mm\"", "width = \"1.97 in\"", ""},
      {"a fish without a species on a list that does not name it", "kitchen.toml", "", "allergen_list = \"us\"",
       "allergen_list = \"eu\"", ""},
      {"as much of a restricted ingredient as its maximum", "pantry.toml", "id = \"cure\"", "\"0.25 %\"",
       "\"0.2403847 %\"", ""},
      {"an amendment that tightens", "kitchen.toml", "", "ingredient_media = \"lid\"\n",
       "ingredient_media = \"lid\"\n[[amendment]]\nfigure = \"time-control\"\nvalue = \"3 h\"\nauthority = \"kitchen "
       "rule\"\n",
       ""},
      {"a sealed package of perishable food in the store room", "pantry.toml", "id = \"butter\"", "shelf_life = {",
       "shelf_life = [{ state = \"ambient\", keeps = \"12 months\", kind = \"best before\", authority = \"maker\" "
       "}]\nmost = \"100 %\"\nmost_source = \"nobody\"\n#",
       ""},
  };
  book_test::check_refused(books);
}

TEST_CASE("plain words become what the program works with", "[book][accepted]") {
  const Book book = book_test::read(book_test::kitchen()).book;
  const Product& tinga = *book.product(QStringLiteral("tinga"));
  CHECK(book.kitchen.zone.id() == "America/New_York");
  CHECK(book.kitchen.lot == std::vector<LotPart>{LotPart::Station, LotPart::Year, LotPart::DayOfYear,
                                                 LotPart::ProductCode, LotPart::Number});
  CHECK(book.kitchen.freezer.celsius.tenths == -180);
  CHECK(book.medium(QStringLiteral("side"))->width == 10160);
  CHECK(book.medium(QStringLiteral("lid"))->margin == Margins{150, 150, 150, 150});
  CHECK(book.medium(QStringLiteral("lid"))->freezer);
  CHECK_FALSE(book.medium(QStringLiteral("side"))->freezer);
  CHECK(book.site(QStringLiteral("harbour"))->name.in(QStringLiteral("en")) == QStringLiteral("Harbour Street"));
  CHECK(tinga.process == Process::Cook);
  CHECK(tinga.cooled);
  CHECK_FALSE(tinga.cooled_from_ambient);
  CHECK(tinga.finishing_needed);
  CHECK(tinga.cook_yield == measure::Ratio(4, 5));
  CHECK(tinga.containers.front().package == Package::ReducedOxygen);
  CHECK(tinga.containers.front().purpose == Purpose::Finisher);
  CHECK(tinga.containers.front().kept == State::Chilled);
  CHECK(book.product(QStringLiteral("lime-butter"))->containers.front().kept == State::Frozen);
  CHECK(book.product(QStringLiteral("rub"))->containers.front().kept == State::Ambient);
  const Finishing& oven = tinga.finishing.front();
  CHECK(oven.least_seconds == 1200);
  CHECK(oven.most_seconds == 1500);
  CHECK(oven.to->seconds == 15);
  CHECK(oven.setting->celsius.tenths == 1800);
  CHECK(oven.reheat_how == QStringLiteral("hot-holding"));
  CHECK(tinga.finishing.back().reheat_how == QStringLiteral("microwave"));
  const ShelfLife& life = *book.product(QStringLiteral("lime-butter"))->shelf_life(State::Chilled);
  CHECK(life.length == Length{Length::Unit::Days, 7, 1});
  CHECK(life.authority.text() == QStringLiteral("FDA Food Code 2022 3-501.17(A)"));
  CHECK(book.product(QStringLiteral("lime-butter"))->shelf_life(State::Frozen)->kind == EndKind::BestBefore);
  CHECK(book.ingredient(QStringLiteral("lime"))->edible == measure::Ratio(4, 5));
  CHECK(book.ingredient(QStringLiteral("butter"))->supplier_item(QStringLiteral("butter-1kg"))->checked ==
        QDate(2026, 1, 5));
}

TEST_CASE("the hash is of names and bytes, not of the order of files or of where they lie", "[book][hash]") {
  std::vector<book_test::SourceFile> files = book_test::kitchen();
  const QByteArray hash = book_test::read(files).book.hash;
  CHECK(hash.size() == 32);
  std::swap(files.front(), files.back());
  CHECK(book_test::read(files).book.hash == hash);
  for (book_test::SourceFile& file : files) file.name.prepend(QStringLiteral("/srv/kitchen/"));
  CHECK(book_test::read(files).book.hash == hash);
  files.front().bytes += "\n";
  CHECK(book_test::read(files).book.hash != hash);
}

TEST_CASE("a syntax fault in one file does not hide the faults of meaning in another, nor invent unknown ids",
          "[book][refused]") {
  std::vector<book_test::SourceFile> files = book_test::kitchen();
  book_test::edit(book_test::file_of(files, QStringLiteral("pantry.toml")), "", "tcs = \"yes\"", "tcs \"yes\"");
  book_test::edit(book_test::file_of(files, QStringLiteral("places.toml")), "", "width = \"50 mm\"",
                  "width = \"wide\"");
  CHECK(problem::text(book_test::read(files).findings.errors) ==
        QStringLiteral("pantry.toml:4:5: an = is missing here\n  tcs \"yes\"\n      ^\n  write a line as: key = value\n"
                       "places.toml:4:9: \"wide\" is not a length\n  width = \"wide\"\n          ^^^^^^\n  write it as "
                       "50 mm, 5 cm or 4 in\n"));
}

TEST_CASE("a formula of more lines than a pot has is refused", "[book][refused]") {
  QByteArray formula;
  for (int i = 0; i < 201; ++i) formula += "{ item = \"water\", amount = \"1 g\" },\n";
  const book_test::Reading reading = book_test::read_with(book_test::product("soup", 1, formula));
  REQUIRE(reading.findings.errors.size() == 1);
  CHECK(reading.findings.errors.front().what ==
        QStringLiteral("the formula of product \"soup\" has more than 200 lines"));
}

TEST_CASE("a book without a kitchen.toml is told so", "[book][refused]") {
  const book_test::Reading reading = book_test::read({});
  CHECK(problem::text(reading.findings.errors) ==
        QStringLiteral("the book has no kitchen.toml\n  write kitchen.toml with name, time_zone, languages and what "
                       "the kitchen chose\n"));
}

TEST_CASE("a label for sale needs an address and every name in its language", "[book][gaps]") {
  std::vector<book_test::SourceFile> files = book_test::kitchen();
  book_test::edit(book_test::file_of(files, QStringLiteral("kitchen.toml")), "",
                  "address = [\"1 Test Lane\", \"Testford\"]\n", "");
  book_test::SourceFile& products = book_test::file_of(files, QStringLiteral("products.toml"));
  book_test::edit(products, "id = \"marinade\"", "purpose = \"inside\"", "purpose = \"sale\", languages = [\"es\"]");
  book_test::SourceFile& pantry = book_test::file_of(files, QStringLiteral("pantry.toml"));
  book_test::edit(pantry, "id = \"chicken\"", "{ en = \"Chicken thigh\", es = \"Muslo de pollo\" }",
                  "\"Chicken thigh\"");
  book_test::edit(pantry, "id = \"worc-5l\"", ", es = \"Vinagre, melaza, anchoas, especias\"", "");
  QStringList said;
  for (const problem::Error& gap : book_test::read(files).findings.gaps) said += gap.what;
  CHECK(said == QStringList{"supplier item \"worc-5l\" of ingredient \"worcestershire\" has no statement in \"es\", "
                            "which a label of \"marinade\" asks for",
                            "ingredient \"chicken\" has no name in \"es\", which a label of \"marinade\" asks for",
                            "product \"marinade\" is finished elsewhere but does not say how",
                            "the kitchen has no address, which the label of product \"marinade\" for sale needs"});
}
