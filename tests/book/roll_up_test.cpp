// What follows from formulas: declarations, readiness and cook minimums through any depth.
#include "book/roll_up.h"

#include "tables.h"

using namespace lardiner;
using namespace lardiner::book;
using book_test::book_with;
using book_test::ingredient;
using book_test::product;

namespace {

const char kRawPoultry[] = "must_be_cooked = true\nfood = \"poultry\"";
const char kRawFish[] = "must_be_cooked = true\nfood = \"fish\"";

QString minimum_of(const Book& book, const QString& id) {
  const CookMinimum* minimum = cook_minimum(book, *book.product(id));
  return minimum == nullptr ? QStringLiteral("none") : minimum->food;
}

}  // namespace

TEST_CASE("the anchovy of a Worcestershire sauce comes up through a marinade into a parcel",
          "[book][allergens][src:21-usc-343/w]") {
  const Book book = book_test::read(book_test::kitchen()).book;
  const Declared parcel = declared(book, QStringLiteral("parcel"));
  CHECK(parcel.stated);
  CHECK(book_test::written(parcel.contains) == QStringList{"fish:anchovy", "milk", "wheat"});
  CHECK(book_test::written(parcel.may_contain) == QStringList{"mustard"});
  CHECK(book_test::written(declared(book, QStringLiteral("dough")).contains) == QStringList{"milk", "wheat"});
}

TEST_CASE("of several supplier items the union stands, and one without a declaration leaves all unknown",
          "[book][allergens]") {
  const QByteArray second = "[[ingredient.supplier_item]]\nid = \"b\"\nsupplier = \"B\"\n";
  const QByteArray stated =
      "[[ingredient]]\nid = \"bun\"\nname = \"bun\"\nmust_be_cooked = false\ntcs = \"no\"\ntcs_basis = \"dry\"\n"
      "[[ingredient.supplier_item]]\nid = \"a\"\nsupplier = \"A\"\ncontains = [\"wheat\"]\nchecked = "
      "2026-01-05\nsource = \"l\"\n";
  const Book both =
      book_with(stated + second + "contains = [\"wheat\", \"sesame\"]\nchecked = 2026-01-05\nsource = \"l\"\n");
  CHECK(declared(both, QStringLiteral("bun")).stated);
  CHECK(book_test::written(declared(both, QStringLiteral("bun")).contains) == QStringList{"sesame", "wheat"});
  const Book one = book_with(stated + second);
  CHECK_FALSE(declared(one, QStringLiteral("bun")).stated);
  CHECK(book_test::written(declared(one, QStringLiteral("bun")).contains) == QStringList{"wheat"});
}

TEST_CASE("what is unknown of one part three levels down is unknown of the whole", "[book][allergens]") {
  const QByteArray unknown = "[[ingredient]]\nid = \"relish\"\nname = \"relish\"\n";
  const Book book =
      book_with(unknown + product("a", 1, "{ item = \"relish\", amount = \"1 kg\" }") +
                product("b", 2, "{ item = \"a\", amount = \"1 kg\" }") +
                product("c", 3, "{ item = \"b\", amount = \"1 kg\" }, { item = \"butter\", amount = \"1 kg\" }"));
  CHECK_FALSE(declared(book, QStringLiteral("c")).stated);
  CHECK(book_test::written(declared(book, QStringLiteral("c")).contains) == QStringList{"milk"});
  CHECK(readiness(book, QStringLiteral("c")) == Readiness::Unknown);
  CHECK(label_gaps(book, *book.product(QStringLiteral("c"))).size() == 3);
  CHECK(label_gaps(book, *book.product(QStringLiteral("lime-butter"))).empty());
}

TEST_CASE("an id that the book does not have is neither stated nor ready", "[book]") {
  const Book book = book_test::read(book_test::kitchen()).book;
  CHECK_FALSE(declared(book, QStringLiteral("nothing")).stated);
  CHECK(readiness(book, QStringLiteral("nothing")) == Readiness::Unknown);
}

TEST_CASE("readiness follows from the parts and the cook", "[book][readiness][src:food-code-2022/3-401.14]") {
  using R = Readiness;
  CHECK(readiness({}, Process::None) == R::Unknown);
  CHECK(readiness({R::ReadyToEatUncooked, R::MustBeCooked}, Process::None) == R::MustBeCooked);
  CHECK(readiness({R::CookedReadyToEat, R::NotFullyCooked}, Process::None) == R::NotFullyCooked);
  CHECK(readiness({R::CookedReadyToEat, R::ReadyToEatUncooked}, Process::None) == R::CookedReadyToEat);
  CHECK(readiness({R::ReadyToEatUncooked}, Process::None) == R::ReadyToEatUncooked);
  CHECK(readiness({R::MustBeCooked, R::ReadyToEatUncooked}, Process::Cook) == R::CookedReadyToEat);
  CHECK(readiness({R::MustBeCooked}, Process::PartCook) == R::NotFullyCooked);
  CHECK(readiness({R::ReadyToEatUncooked}, Process::PartCook) == R::CookedReadyToEat);
  CHECK(readiness({R::MustBeCooked, R::Unknown}, Process::Cook) == R::Unknown);
}

TEST_CASE("raw laid with ready-to-eat is raw through any depth, and a cook in between ends it", "[book][readiness]") {
  const Book book = book_test::read(book_test::kitchen()).book;
  CHECK(readiness(book, QStringLiteral("parcel")) == Readiness::MustBeCooked);
  CHECK(readiness(book, QStringLiteral("tinga")) == Readiness::CookedReadyToEat);
  CHECK(readiness(book, QStringLiteral("lime-butter")) == Readiness::ReadyToEatUncooked);
  CHECK(readiness(book, QStringLiteral("chicken")) == Readiness::MustBeCooked);
}

TEST_CASE("the most demanding part decides the cook minimum, through any depth",
          "[book][cook_minimum][src:food-code-2022/3-401.11]") {
  const QByteArray tables =
      ingredient("cod", "[\"fish:cod\"]", kRawFish) + ingredient("wing", "\"none\"", kRawPoultry) +
      product("fish-mix", 1, "{ item = \"cod\", amount = \"1 kg\" }") +
      product("both", 2, "{ item = \"fish-mix\", amount = \"1 kg\" }, { item = \"wing\", amount = \"1 kg\" }") +
      product("stuffed-cod", 3, "{ item = \"fish-mix\", amount = \"1 kg\" }", "food = \"stuffed\"") +
      product("cooked-wing", 4, "{ item = \"wing\", amount = \"1 kg\" }", "process = \"cook\"") +
      product("part-wing", 5, "{ item = \"wing\", amount = \"1 kg\" }", "process = \"part-cook\"") +
      product("with-cooked", 6,
              "{ item = \"cooked-wing\", amount = \"1 kg\" }, { item = \"cod\", amount = \"1 kg\" }") +
      product("with-part", 7, "{ item = \"part-wing\", amount = \"1 kg\" }, { item = \"cod\", amount = \"1 kg\" }") +
      product("stuffed-butter", 8, "{ item = \"butter\", amount = \"1 kg\" }", "food = \"stuffed\"");
  const Book book = book_with(tables);
  CHECK(minimum_of(book, QStringLiteral("fish-mix")) == QStringLiteral("fish"));
  CHECK(cook_minimum(book, *book.product(QStringLiteral("both")))->any_of.front().temperature.fahrenheit.tenths ==
        1650);
  CHECK(
      cook_minimum(book, *book.product(QStringLiteral("stuffed-cod")))->any_of.front().temperature.fahrenheit.tenths ==
      1650);
  CHECK(minimum_of(book, QStringLiteral("cooked-wing")) == QStringLiteral("poultry"));
  CHECK(minimum_of(book, QStringLiteral("with-cooked")) == QStringLiteral("fish"));
  CHECK(minimum_of(book, QStringLiteral("with-part")) == QStringLiteral("poultry"));
  CHECK(minimum_of(book, QStringLiteral("stuffed-butter")) == QStringLiteral("none"));
}

TEST_CASE("the minimum is the adopted rule set's, not the program's", "[book][cook_minimum]") {
  std::vector<book_test::SourceFile> files = book_test::kitchen();
  book_test::edit(book_test::file_of(files, QStringLiteral("kitchen.toml")), "", "us-fda-food-code-2022",
                  "invented-county");
  const book_test::Reading reading = book_test::read(files);
  const Book& book = reading.book;
  CHECK(cook_minimum(book, *book.product(QStringLiteral("parcel")))->any_of.front().temperature.fahrenheit.tenths ==
        1700);
  const QString said = problem::text(reading.findings.errors);
  CHECK(said.contains(
      QStringLiteral("product \"tinga\" is cooked to 165 °F (74 °C) instant, below the minimum of 170 °F (77 °C) 15 s "
                     "(Brackwater County Food Rules (invented) B-4.4) for poultry")));
  CHECK(said.contains(QStringLiteral(
      "the chilled life of product \"lime-butter\", 7 days with day 1 first, is longer than the 5 days with day 1 "
      "first of Brackwater County Food Rules (invented) B-7.1")));
}

TEST_CASE("a loop of three formulas is named once, and what is in or above it is unknown", "[book][loops]") {
  const book_test::Reading reading = book_test::read_with(
      product("a", 1, "{ item = \"b\", amount = \"1 kg\" }") + product("b", 2, "{ item = \"c\", amount = \"1 kg\" }") +
      product("c", 3, "{ item = \"a\", amount = \"1 kg\" }, { item = \"butter\", amount = \"1 kg\" }") +
      product("above", 4, "{ item = \"c\", amount = \"1 kg\" }"));
  REQUIRE(reading.findings.errors.size() == 1);
  CHECK(reading.findings.errors.front().what == QStringLiteral("the formulas go round in a circle: a -> b -> c -> a"));
  const Book& book = reading.book;
  CHECK(formula_loop(book, QStringLiteral("b")) == QStringList{"b", "c", "a", "b"});
  CHECK(formula_loop(book, QStringLiteral("above")).isEmpty());
  for (const QString& id : {QStringLiteral("a"), QStringLiteral("above")}) {
    CHECK_FALSE(declared(book, id).stated);
    CHECK(readiness(book, id) == Readiness::Unknown);
  }
}

TEST_CASE("a loop measured by volume is not followed for ever", "[book][loops]") {
  const QByteArray twice = "{ item = \"a\", amount = \"1 L\" }, { item = \"a\", amount = \"2 L\" }";
  const book_test::Reading reading = book_test::read_with(product("a", 1, twice, "makes = \"3 L\""));
  CHECK(reading.findings.errors.size() == 1);
  CHECK_FALSE(output_weight(reading.book, *reading.book.product(QStringLiteral("a"))));
}
