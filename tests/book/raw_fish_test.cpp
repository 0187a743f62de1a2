// Raw fish in a reduced-oxygen pack is kept frozen.
#include "tables.h"

using namespace lardiner;

namespace {

// What is said of a pack of product "p", made of these lines.
QString said(const QByteArray& formula, const QByteArray& product_keys, const QByteArray& container_keys,
             const QByteArray& cooking = "must_be_cooked = true\nfood = \"fish\"") {
  const QByteArray lives =
      "\nshelf_life = [{ state = \"chilled\", keeps = \"3 days\", authority = \"kitchen rule\" }, { state = "
      "\"frozen\", "
      "keeps = \"2 months\", authority = \"kitchen rule\" }]\n";
  const QByteArray pack =
      "container = { kind = \"bag\", holds = \"1 kg\", media = \"lid\", purpose = \"inside\", " + container_keys + " }";
  return problem::text(
      book_test::read_with(
          book_test::ingredient("cod", "[\"fish:cod\"]", cooking) +
          book_test::product("portions", 1,
                             "{ item = \"cod\", amount = \"1 kg\" }, { item = \"lime\", amount = \"9 g\" }") +
          book_test::product("p", 2, formula, product_keys + lives + pack))
          .findings.errors);
}

const QByteArray kCod = "{ item = \"cod\", amount = \"1 kg\" }";
const QByteArray kPortions = "{ item = \"portions\", amount = \"1 kg\" }, { item = \"chicken\", amount = \"1 kg\" }";
const QByteArray kPack = "package = \"reduced oxygen\"";

}  // namespace

TEST_CASE("raw fish in a reduced-oxygen pack that is kept chilled is refused with the section",
          "[book][refused][src:food-code-2022/3-502.12(C)]") {
  CHECK(
      said(kCod, "", kPack) ==
      QStringLiteral(
          "more.toml:30:13: a bag of product \"p\" holds raw fish in reduced oxygen but is not kept frozen, which FDA "
          "Food Code 2022 3-502.12(C) wants\n"
          "  container = { kind = \"bag\", holds = \"1 kg\", media = \"lid\", purpose = \"inside\", package = "
          "\"reduced oxygen\" }\n"
          "              "
          "^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^\n"
          "  write kept = \"frozen\", or package = \"air\"\n"));
}

TEST_CASE(
    "raw fish is raw at any depth, beside what is hotter to cook, part-cooked, and while nobody says that it is safe",
    "[book][refused][src:food-code-2022/3-502.12(C)]") {
  const QString refused = QStringLiteral("holds raw fish in reduced oxygen but is not kept frozen");
  CHECK(said(kPortions, "", kPack).contains(refused));
  CHECK(said(kCod, "process = \"part-cook\"", kPack).contains(refused));
  CHECK(said(kCod, "", kPack, "food = \"fish\"").contains(refused));
  CHECK(said(kCod, "", kPack, "must_be_cooked = true\nfood = \"comminuted-fish\"").contains(refused));
}

TEST_CASE("fish that is frozen, in air, cooked here or safe as it comes may be packed, and so may other raw food",
          "[book][accepted][src:food-code-2022/3-502.12(C)]") {
  CHECK(said(kCod, "", kPack + ", kept = \"frozen\"") == QString());
  CHECK(said(kCod, "", "package = \"air\"") == QString());
  CHECK(said(kPortions, "process = \"cook\"\ncooled_from = \"hot\"", kPack) == QString());
  CHECK(said(kCod, "", kPack, "must_be_cooked = false") == QString());
  CHECK(said("{ item = \"chicken\", amount = \"1 kg\" }", "", kPack) == QString());
}

TEST_CASE("a rule set without a section for raw fish has no such rule", "[book][accepted]") {
  CHECK(rules_test::food_code().raw_fish_frozen->text() == QStringLiteral("FDA Food Code 2022 3-502.12(C)"));
  CHECK_FALSE(rules_test::invented_county().raw_fish_frozen);
}
