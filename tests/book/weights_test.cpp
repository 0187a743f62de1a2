// The weights of formulas in every basis.
#include "book/roll_up.h"
#include "measure/text.h"
#include "tables.h"

using namespace lardiner;
using namespace lardiner::book;
using book_test::book_with;
using book_test::product;

namespace {

// The weights of the lines of product "p", as a metric kitchen reads them.
QStringList weights(const Book& book, const QString& id = QStringLiteral("p")) {
  const auto lines = line_weights(book, *book.product(id));
  if (!lines) return {problem::text(lines.error())};
  QStringList shown;
  for (const measure::Quantity& line : *lines) shown += measure::display(line, measure::System::Metric);
  return shown;
}

QStringList weights_of(const QByteArray& formula, const QByteArray& more = "") {
  return weights(book_test::read_with(product("p", 1, formula, more)).book);
}

QString output(const Book& book, const QString& id) {
  const auto weight = output_weight(book, *book.product(id));
  return weight ? measure::display(*weight, measure::System::Metric) : problem::text(weight.error());
}

}  // namespace

TEST_CASE("equal parts by weight of 54 g and 54 g make 108 g", "[book][weights][src:practice]") {
  CHECK(weights_of("{ item = \"butter\", parts = 1 }, { item = \"lime\", parts = 1 }", "makes = \"108 g\"") ==
        QStringList{"54 g", "54 g"});
  CHECK(weights_of("{ item = \"butter\", parts = 1, amount = \"54 g\" }, { item = \"lime\", parts = 1 }") ==
        QStringList{"54 g", "54 g"});
  CHECK(weights_of("{ item = \"pepper\", parts = 3 }, { item = \"lime\", parts = 1 }", "makes = \"400 g\"") ==
        QStringList{"300 g", "100 g"});
}

TEST_CASE("parts share what goes in: what is made, divided by the cook yield, less the lines with an amount",
          "[book][weights]") {
  CHECK(
      weights_of(
          "{ item = \"butter\", parts = 1 }, { item = \"lime\", parts = 1 }, { item = \"water\", amount = \"200 g\" }",
          "makes = \"960 g\"\ncook_yield = \"80 %\"") == QStringList{"500 g", "500 g", "200 g"});
}

TEST_CASE("parts with no weight among them are told by the product", "[book][weights]") {
  CHECK(weights_of("{ item = \"butter\", parts = 1 }, { item = \"lime\", parts = 1 }") ==
        QStringList{"more.toml:1:1: the parts of product \"p\" have no weight, which sheets need\n"
                    "  [[product]]\n"
                    "  ^^^^^^^^^^^\n"
                    "  state makes as a weight, or amount in the line of one of the parts\n"});
}

TEST_CASE("a baker's percentage is of the flour", "[book][weights][src:practice]") {
  const Book book = book_test::read(book_test::kitchen()).book;
  CHECK(weights(book, QStringLiteral("dough")) == QStringList{"1 kg", "600 g", "20 g"});
  CHECK(weights_of("{ item = \"flour\", amount = \"500 g\" }, { item = \"water\", percent = 60, of = \"flour\" }") ==
        QStringList{"500 g", "300 g"});
}

TEST_CASE("a percentage is of all lines of its base, and of a percentage too", "[book][weights]") {
  CHECK(weights_of(
            "{ item = \"flour\", amount = \"300 g\" }, { item = \"flour\", amount = \"700 g\" }, "
            "{ item = \"water\", percent = 50, of = \"flour\" }, { item = \"lime\", percent = 10, of = \"water\" }") ==
        QStringList{"300 g", "700 g", "500 g", "50 g"});
}

TEST_CASE("per unit is times the units made", "[book][weights]") {
  const Book book = book_test::read(book_test::kitchen()).book;
  CHECK(weights(book, QStringLiteral("parcel")) == QStringList{"1.2 kg", "960 g"});
  CHECK(output(book, QStringLiteral("parcel")) == QStringLiteral("2.16 kg"));
  CHECK(weights_of("{ item = \"butter\", per_unit = \"35 g\" }", "makes = \"1 kg\"\nunit_weight = \"40 g\"") ==
        QStringList{"875 g"});
  CHECK(weights_of("{ item = \"butter\", per_unit = \"35 g\" }")
            .front()
            .contains(QStringLiteral("it is not known how many units are made")));
}

TEST_CASE("per main is to each kilogram or pound of the main item", "[book][weights]") {
  const Book book = book_test::read(book_test::kitchen()).book;
  CHECK(weights(book, QStringLiteral("tinga")) == QStringList{"10 kg", "50 g"});
  CHECK(output(book, QStringLiteral("tinga")) == QStringLiteral("8.04 kg"));
  CHECK(weights_of("{ item = \"chicken\", amount = \"2 lb\", main = true }, { item = \"lime\", per_main = \"12 g\", "
                   "each = \"1 lb\" }") == QStringList{"907 g", "24 g"});
}

TEST_CASE("a volume is weighed by a measure of the ingredient, the largest that is not more than it",
          "[book][weights][src:usda-sr28/01145][src:usda-sr28/20081]") {
  CHECK(weights_of("{ item = \"butter\", amount = \"1 cup\" }, { item = \"flour\", amount = \"2 cups\" }") ==
        QStringList{"227 g", "250 g"});
  CHECK(weights_of("{ item = \"butter\", amount = \"8 tbsp\" }") == QStringList{"114 g"});
  CHECK(weights_of("{ item = \"pepper\", amount = \"2 tsp\" }, { item = \"pepper\", amount = \"2 tbsp\" }, "
                   "{ item = \"pepper\", amount = \"0.5 tsp\" }") == QStringList{"4 g", "14 g", "1 g"});
}

TEST_CASE("a count of a product is weighed by its unit weight, a volume by what it makes", "[book][weights]") {
  const Book book = book_with(
      product("soup", 1, "{ item = \"water\", amount = \"2 kg\" }", "makes = \"2 L\"") +
      product("p", 2, "{ item = \"soup\", amount = \"500 mL\" }, { item = \"parcel\", amount = \"2 pieces\" }"));
  CHECK(weights(book) == QStringList{"500 g", "180 g"});
}

TEST_CASE("a volume without a measure names the line and is no gap of the label", "[book][weights]") {
  const book_test::Reading reading = book_test::read_with(product("p", 1, "{ item = \"lime\", amount = \"1 cup\" }"));
  CHECK(problem::text(reading.findings.errors) == QString());
  CHECK(problem::text(reading.findings.gaps) ==
        QStringLiteral("more.toml:9:21: the line \"lime\" of product \"p\" has no weight, which sheets need: "
                       "nothing says what a volume of \"lime\" weighs\n"
                       "  formula = [{ item = \"lime\", amount = \"1 cup\" }]\n"
                       "                      ^^^^^^\n"
                       "  add [[ingredient.measure]] to \"lime\" with amount, weighs and source\n"));
  CHECK(label_gaps(reading.book, *reading.book.product(QStringLiteral("p"))).empty());
}
