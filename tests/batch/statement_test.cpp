// Ingredient statements: descending by weight, compounds in parentheses or merged.
#include "batch/statement.h"

#include "compute_kitchen.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

namespace {

QString words(const std::vector<StatedIngredient>& stated) {
  QStringList all;
  for (const StatedIngredient& one : stated)
    all += one.parts.empty() ? one.name : QStringLiteral("%1 (%2)").arg(one.name, words(one.parts));
  return all.join(QStringLiteral(", "));
}

std::vector<StatedIngredient> stated(const Batch& batch, bool merged = false, const book::Book& book = kitchen()) {
  const auto statement = ingredient_statement(book, batch, QStringLiteral("en"), merged);
  if (!statement) FAIL(problem::text(statement.error()).toStdString());
  return *statement;
}

const QByteArray kDough = made("dough", 1, "2026-06-01 09:00", input("cultured-butter", "2026-06-10"));

qint64 grams(const StatedIngredient& one) { return one.weight.amount / 1'000'000'000; }

}  // namespace

TEST_CASE("ingredients descend by weight, a compound's own in parentheses", "[batch][statement][src:21-cfr-101/101.4]") {
  CHECK(words(stated(good(kDough))) == QStringLiteral("flour, water, cultured-butter (cream, salt), salt"));
}

TEST_CASE("merged, equal ingredients are summed", "[batch][statement][src:21-cfr-101/101.4]") {
  Batch batch = good(kDough);
  batch.record.quantity = measure::quantity({1010, 1}, measure::Unit::Gram);
  const std::vector<StatedIngredient> merged = stated(batch, true);
  CHECK(words(merged) == QStringLiteral("flour, water, cream, salt"));
  CHECK(grams(merged.back()) == 15);
}

TEST_CASE("recorded weights decide the order, not the formula's", "[batch][statement]") {
  const QByteArray inputs = input("cultured-butter", "2026-06-10", "\"quantity\": \"700 g\"") + "," + input("flour", {}, "\"quantity\": \"500 g\"") + "," +
                            input("water", {}, "\"quantity\": \"300 g\"") + "," + input("salt", {}, "\"quantity\": \"10 g\"");
  CHECK(words(stated(good(made("dough", 1, "2026-06-01 09:00", inputs)))) == QStringLiteral("cultured-butter (cream, salt), flour, water, salt"));
}

TEST_CASE("an input in two lines is one ingredient", "[batch][statement]") {
  const QByteArray two = input("cultured-butter", "2026-06-10") + "," + input("flour", {}, "\"quantity\": \"200 g\"") + "," + input("flour", {}, "\"quantity\": \"150 g\"") +
                         "," + input("water", {}, "\"quantity\": \"300 g\"");
  Batch batch = good(made("dough", 1, "2026-06-01 09:00", two));
  batch.record.quantity = measure::quantity({1010, 1}, measure::Unit::Gram);
  CHECK(words(stated(batch)) == QStringLiteral("flour, water, cultured-butter (cream, salt), salt"));
  CHECK(grams(stated(batch).front()) == 350);
}

TEST_CASE("a supplier's own statement stands behind its ingredient, and sulphites are to be named", "[batch][statement][src:21-cfr-101/130.9]") {
  const Batch batch = good(made("sauce", 1, "2026-06-01 09:00", input("worcestershire", {}, "\"supplier_item\": \"worcestershire-a\"")));
  const std::vector<StatedIngredient> all = stated(batch);
  CHECK(words(all) == QStringLiteral("worcestershire (Vinegar, molasses, anchovies), flour, apricots-10"));
  CHECK(all[0].allergen);
  CHECK(all[1].allergen);
  CHECK(all[2].declares == QStringList{QStringLiteral("sulphites")});
}

TEST_CASE("9 mg/kg of sulphites are not named", "[batch][statement][src:21-cfr-101/130.9]") {
  const Batch batch = good(made("sauce", 1, "2026-06-01 09:00",
                                input("worcestershire", {}, "\"supplier_item\": \"worcestershire-a\"") + "," +
                                    input("apricots-9", {}, "\"instead_of\": \"apricots-10\", \"quantity\": \"90 g\"")));
  for (const StatedIngredient& one : stated(batch)) CHECK(one.declares.isEmpty());
}

TEST_CASE("which supplier's statement it is must be known, and what a substitute weighs", "[batch][statement]") {
  const auto errors = [](const QByteArray& inputs) {
    const auto statement = ingredient_statement(kitchen(), good(made("sauce", 1, "2026-06-01 09:00", inputs)), QStringLiteral("en"), false);
    REQUIRE_FALSE(statement);
    return problem::text(statement.error());
  };
  CHECK(errors(input("flour")) ==
        QStringLiteral("day.jsonl:1:13: \"worcestershire\" has supplier items with different ingredient statements, and which one went in is not written\n"
                       "  {\"product\": \"sauce\", \"number\": 1, \"quantity\": \"2 kg\", \"made_at\": \"2026-06-01 09:00\", \"containers\": \"4 tub 500 g\", \"inputs\": [{\"item\": \"flour\"}]}\n"
                       "              ^^^^^^^\n"
                       "  write supplier_item among the inputs\n"));
  CHECK(errors(input("worcestershire", {}, "\"supplier_item\": \"worcestershire-a\"") + "," + input("celery", {}, "\"instead_of\": \"flour\""))
            .contains(QStringLiteral("what \"celery\" weighs in this batch of \"sauce\" is not written\n")));
}

TEST_CASE("a lot of the run is stated as it was made, not as its formula says", "[batch][statement]") {
  const QByteArray butter = made("cultured-butter", 1, "2026-06-01 08:00",
                                 input("cream", "2026-06-10", "\"quantity\": \"1.5 kg\"") + "," +
                                     input("mustard", {}, "\"instead_of\": \"salt\", \"quantity\": \"500 g\""));
  const QByteArray dough = made("dough", 2, "2026-06-01 09:00", from_lot("cultured-butter", lot_of(butter)));
  CHECK(words(stated(good(butter + dough, 1))) == QStringLiteral("flour, water, cultured-butter (cream, mustard), salt"));
}

TEST_CASE("a missing translation is an error that names the ingredient", "[batch][statement]") {
  const auto statement = ingredient_statement(kitchen(), good(kDough), QStringLiteral("es"), false);
  REQUIRE_FALSE(statement);
  CHECK(statement.error().size() == 5);
  CHECK(statement.error().front().what == QStringLiteral("ingredient \"cream\" has no text in \"es\", which the ingredient statement needs"));
}
