// What must hold of every formula graph, tried on random ones.
#include <chrono>
#include <random>
#include <set>

#include "book/roll_up.h"
#include "tables.h"

using namespace lardiner;
using namespace lardiner::book;

namespace {

const int kDepth = 6;

int below(int most, std::mt19937& random) { return static_cast<int>(random() % static_cast<unsigned>(most)); }

FormulaLine line_of(const QString& item, std::mt19937& random) {
  FormulaLine line;
  line.item = item;
  line.amount = measure::quantity(measure::Ratio(1 + below(900, random), 1), measure::Unit::Gram);
  return line;
}

Ingredient random_ingredient(int number, const AllergenLaw& law, std::mt19937& random) {
  Ingredient one;
  one.id = QStringLiteral("i%1").arg(number);
  one.tcs.is = TcsStatement::Is::Yes;
  one.must_be_cooked = below(3, random) == 0;
  one.food = below(2, random) == 0 ? QStringLiteral("fish") : QStringLiteral("poultry");
  SupplierItem item;
  item.declared.stated = true;
  for (int i = below(3, random); i > 0; --i) {
    Declaration declaration;
    declaration.substance = law.substances[below(static_cast<int>(law.substances.size()), random)];
    item.declared.contains.push_back(declaration);
  }
  item.declared.contains = gathered(item.declared.contains);
  one.supplier_items.push_back(item);
  return one;
}

void index(Book& book) {
  for (size_t i = 0; i < book.ingredients.size(); ++i)
    book.ingredient_index.insert(book.ingredients[i].id, static_cast<int>(i));
  for (size_t i = 0; i < book.products.size(); ++i) book.product_index.insert(book.products[i].id, static_cast<int>(i));
}

// Six levels of products, each made of things of the level below and of ingredients.
Book random_book(std::mt19937& random, int a_level) {
  Book book;
  book.rules = rules_test::food_code();
  book.law = rules_test::allergen_law();
  for (int i = 0; i < 20; ++i) book.ingredients.push_back(random_ingredient(i, book.law, random));
  for (int level = 0; level < kDepth; ++level)
    for (int i = 0; i < a_level; ++i) {
      Product product;
      product.id = QStringLiteral("p%1-%2").arg(level).arg(i);
      product.process = static_cast<Process>(below(3, random));
      product.formula.push_back(line_of(QStringLiteral("i%1").arg(below(20, random)), random));
      for (int parts = level == 0 ? 0 : 1 + below(3, random); parts > 0; --parts)
        product.formula.push_back(line_of(QStringLiteral("p%1-%2").arg(level - 1).arg(below(a_level, random)), random));
      book.products.push_back(product);
    }
  index(book);
  return book;
}

// By plain recursion, as a check.
void collect(const Book& book, const QString& item, std::set<QString>& substances) {
  if (const Ingredient* ingredient = book.ingredient(item))
    for (const Declaration& one : ingredient->supplier_items.front().declared.contains)
      substances.insert(one.substance);
  if (const Product* product = book.product(item))
    for (const FormulaLine& line : product->formula) collect(book, line.item, substances);
}

std::set<QString> substances_of(const Book& book, const QString& item) {
  std::set<QString> all;
  for (const Declaration& one : declared(book, item).contains) all.insert(one.substance);
  return all;
}

int demand(const Book& book, const Product& product) {
  const CookMinimum* minimum = cook_minimum(book, product);
  return minimum == nullptr ? -1 : minimum->demand;
}

std::int64_t apart(measure::Quantity a, measure::Quantity b) { return std::abs(a.amount - b.amount); }

}  // namespace

TEST_CASE("no declaration is lost through a formula graph of any depth", "[book][property][allergens]") {
  for (unsigned seed = 1; seed <= 40; ++seed) {
    std::mt19937 random(seed);
    const Book book = random_book(random, 5);
    for (const Product& product : book.products) {
      std::set<QString> expected;
      collect(book, product.id, expected);
      INFO("seed " << seed << ", " << product.id.toStdString());
      REQUIRE(substances_of(book, product.id) == expected);
      REQUIRE(declared(book, product.id).stated);
    }
  }
}

TEST_CASE("food is never safer, and its minimum never lower, for a raw part laid into it",
          "[book][property][readiness]") {
  for (unsigned seed = 1; seed <= 20; ++seed) {
    std::mt19937 random(seed);
    Book book = random_book(random, 5);
    book.ingredients.front().must_be_cooked = true;
    for (const Product& product : book.products) {
      Book with_raw = book;
      Product& changed = with_raw.products[static_cast<size_t>(book.product_index.value(product.id))];
      changed.formula.push_back(line_of(QStringLiteral("i0"), random));
      const Product& top = book.products.back();
      INFO("seed " << seed << ", " << product.id.toStdString());
      REQUIRE(readiness(with_raw, product.id) <= readiness(book, product.id));
      REQUIRE(readiness(with_raw, top.id) <= readiness(book, top.id));
      REQUIRE(demand(with_raw, changed) >= demand(book, product));
    }
  }
}

TEST_CASE("a line split in two, and another order of lines, change nothing", "[book][property]") {
  for (unsigned seed = 1; seed <= 20; ++seed) {
    std::mt19937 random(seed);
    const Book book = random_book(random, 4);
    for (const Product& product : book.products) {
      Book split = book;
      std::vector<FormulaLine>& lines =
          split.products[static_cast<size_t>(book.product_index.value(product.id))].formula;
      FormulaLine half = lines.back();
      half.amount.amount /= 2;
      lines.back().amount = lines.back().amount - half.amount;
      lines.insert(lines.begin(), half);
      const Product& changed = *split.product(product.id);
      INFO("seed " << seed << ", " << product.id.toStdString());
      REQUIRE(declared(split, product.id) == declared(book, product.id));
      REQUIRE(readiness(split, product.id) == readiness(book, product.id));
      REQUIRE(demand(split, changed) == demand(book, product));
      REQUIRE(apart(*output_weight(split, changed), *output_weight(book, product)) <= 1);
    }
  }
}

TEST_CASE("three thousand products six levels deep, each part shared by many, are rolled up at once",
          "[book][property][speed]") {
  std::mt19937 random(7);
  const Book book = random_book(random, 500);
  const auto start = std::chrono::steady_clock::now();
  const Product& top = book.products.back();
  CHECK(declared(book, top.id).stated);
  CHECK(readiness(book, top.id) != Readiness::Unknown);
  CHECK(label_gaps(book, top).size() < 10'000);
  CHECK(std::chrono::steady_clock::now() - start < std::chrono::seconds(2));
}

TEST_CASE("sixty levels of which each holds the last one twice take no longer than sixty lines",
          "[book][property][speed]") {
  Book book;
  book.rules = rules_test::food_code();
  Ingredient leaf;
  leaf.id = QStringLiteral("leaf");
  leaf.must_be_cooked = true;
  leaf.food = QStringLiteral("fish");
  leaf.supplier_items.resize(1);
  leaf.supplier_items.front().declared.stated = true;
  book.ingredients.push_back(leaf);
  for (int level = 0; level < 60; ++level) {
    Product product;
    product.id = QStringLiteral("p%1").arg(level);
    product.makes = measure::quantity(measure::Ratio(2, 1), measure::Unit::Litre);
    FormulaLine line;
    line.item = level == 0 ? QStringLiteral("leaf") : QStringLiteral("p%1").arg(level - 1);
    line.amount = measure::one(level == 0 ? measure::Unit::Kilogram : measure::Unit::Litre);
    product.formula = {line, line};
    book.products.push_back(product);
  }
  index(book);
  const Product& top = book.products.back();
  CHECK(declared(book, top.id).stated);
  CHECK(readiness(book, top.id) == Readiness::MustBeCooked);
  CHECK(cook_minimum(book, top)->food == QStringLiteral("fish"));
  CHECK(output_weight(book, top)->amount == measure::quantity(measure::Ratio(2, 1), measure::Unit::Kilogram).amount);
}

TEST_CASE("a book of five hundred products six levels deep is read and checked at once", "[book][property][speed]") {
  constexpr int kLevel = 84;
  QByteArray tables;
  for (int i = 0; i < 500; ++i) {
    QByteArray formula = "{ item = \"butter\", amount = \"1 kg\" }, { item = \"cure\", amount = \"1 g\" }";
    for (int part : {i - kLevel, i - kLevel + 1, i - kLevel + 2})
      if (part >= 0 && part / kLevel < i / kLevel)
        formula += ", { item = \"p" + QByteArray::number(part) + "\", amount = \"1 kg\" }";
    tables += book_test::product("p" + QByteArray::number(i), i, formula);
  }
  const auto start = std::chrono::steady_clock::now();
  const book_test::Reading reading = book_test::read_with(tables);
  CHECK(std::chrono::steady_clock::now() - start < std::chrono::seconds(5));
  CHECK(problem::text(reading.findings.errors) == QString());
}
