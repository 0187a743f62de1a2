// Declarations and lists that are refused, each with what is wrong and what to do.
#include "rules.h"

using namespace lardiner;
using namespace lardiner::book;

namespace {

QString refusal(const char* text) {
  const auto read = parse_declaration(QString::fromUtf8(text), rules_test::allergen_law());
  if (read) return QStringLiteral("read");
  CHECK(read.error().place == problem::Place{});
  return QStringLiteral("%1 / %2").arg(read.error().what, read.error().hint);
}

Declaration read(const char* text) {
  const auto declaration = parse_declaration(QString::fromUtf8(text), rules_test::allergen_law());
  REQUIRE(declaration);
  return *declaration;
}

QString law_refusal(const char* piece, const char* instead) {
  QByteArray toml = rules_test::shipped("allergens.toml");
  REQUIRE(toml.contains(piece));
  toml.replace(toml.indexOf(piece), qstrlen(piece), instead);
  const auto law = read_allergen_law(toml, QStringLiteral("a.toml"));
  REQUIRE_FALSE(law);
  QString all;
  for (const problem::Error& error : law.error()) {
    CHECK(error.place.line > 0);
    all += QStringLiteral("%1 / %2\n").arg(error.what, error.hint);
  }
  return all;
}

}  // namespace

TEST_CASE("a declaration names its substance, species, content and exemption", "[book][allergen]") {
  CHECK(read("milk") == Declaration{QStringLiteral("milk"), {}, {}, {}, {}});
  CHECK(read(" tree-nut : cashew ") == Declaration{QStringLiteral("tree-nut"), QStringLiteral("cashew"), {}, {}, {}});
  CHECK(read("sulphites 15 mg/kg") == Declaration{QStringLiteral("sulphites"), {}, measure::Ratio(15, 1), {}, {}});
  CHECK(read("sulphites 9.5 ppm") == Declaration{QStringLiteral("sulphites"), {}, measure::Ratio(19, 2), {}, {}});
  CHECK(read("sulphites unknown") == Declaration{QStringLiteral("sulphites"), {}, {}, {}, {}});
  CHECK(read("soy exempt highly-refined-oil") ==
        Declaration{QStringLiteral("soy"), {}, {}, QStringLiteral("highly-refined-oil"), {}});
  CHECK(read("fish:cod exempt fish-gelatine-fining").exemption == QStringLiteral("fish-gelatine-fining"));
}

TEST_CASE("an unknown substance is told the nearest", "[book][allergen][refused]") {
  CHECK(refusal("peanuts") ==
        QStringLiteral("\"peanuts\" is not a substance of the allergen lists / did you mean \"peanut\"?"));
  CHECK(refusal("Milk").startsWith(
      QStringLiteral("\"Milk\" is not a substance of the allergen lists / did you mean \"milk\"?")));
  CHECK(refusal("dust mites") != QStringLiteral("read"));
  CHECK(refusal("gelatine").startsWith(QStringLiteral("\"gelatine\" is not a substance of the allergen lists / ")));
}

TEST_CASE("an unknown species is refused, with the nearest or all that are known", "[book][allergen][refused]") {
  CHECK(refusal("tree-nut:cashaw") ==
        QStringLiteral("\"cashaw\" is not a known species of tree-nut / did you mean \"cashew\"?"));
  CHECK(refusal("crustacean:zzzzzz") ==
        QStringLiteral("\"zzzzzz\" is not a known species of crustacean / "
                       "the known ones are crab, crayfish, krill, langoustine, lobster, prawn"));
  CHECK(refusal("fish:zzz").startsWith(QStringLiteral("\"zzz\" is not a known species of fish / ")));
  CHECK(refusal("milk:goat") == QStringLiteral("\"milk\" has no species / write \"milk\""));
}

TEST_CASE("sulphites state their content, or that it is unknown", "[book][allergen][refused]") {
  CHECK(refusal("sulphites") ==
        QStringLiteral(
            "\"sulphites\" does not say how much / "
            "write it as \"sulphites 15 mg/kg\", or \"sulphites unknown\", which counts as over every threshold"));
  CHECK(refusal("sulphites 15").startsWith(QStringLiteral("\"15\" is not a content / ")));
  CHECK(refusal("sulphites -15 mg/kg").startsWith(QStringLiteral("\"-15 mg/kg\" is not a content / ")));
  CHECK(refusal("sulphites 15 g/kg").startsWith(QStringLiteral("\"15 g/kg\" is not a content / ")));
  CHECK(refusal("sulphites traces").startsWith(QStringLiteral("\"traces\" is not a content / ")));
  CHECK(refusal("milk 15 mg/kg") ==
        QStringLiteral("\"milk\" has no threshold, so its content is not stated / leave \"15 mg/kg\" out"));
}

TEST_CASE("an exemption must be one that some list has for the substance", "[book][allergen][refused]") {
  CHECK(refusal("soy exempt highly-refined-oils") ==
        QStringLiteral("\"highly-refined-oils\" is not an exemption of soy / did you mean \"highly-refined-oil\"?"));
  CHECK(refusal("milk exempt highly-refined-oil") ==
        QStringLiteral("\"highly-refined-oil\" is not an exemption of milk / the exemptions are distillate, lactitol"));
  CHECK(refusal("celery exempt highly-refined-oil") ==
        QStringLiteral("no list exempts anything made of celery / leave the exemption out"));
  CHECK(refusal("soy exempt") == QStringLiteral("\"soy exempt\" is not a declared substance / "
                                                "write it as \"milk\", \"tree-nut:cashew\" or \"sulphites 15 mg/kg\""));
}

TEST_CASE("what is no declaration at all is told how to write one", "[book][allergen][refused]") {
  for (const char* text : {"", "  ", ":", "fish:", "fish:cod:salmon", ":cod"})
    CHECK(
        refusal(text).endsWith(QStringLiteral("write it as \"milk\", \"tree-nut:cashew\" or \"sulphites 15 mg/kg\"")));
}

TEST_CASE("an entry of a list without a source, or of what the file does not name, is refused",
          "[book][allergen][refused]") {
  CHECK(law_refusal("source = \"21 USC 321(qq)(1)\"\n", "") ==
        QStringLiteral("entry \"milk\" has no source / state source\n"));
  CHECK(law_refusal("of = [\"milk\"]", "of = [\"milc\"]") ==
        QStringLiteral("entry \"milk\": the file names no \"milc\" / did you mean \"milk\"?\n"));
  CHECK(law_refusal("of = [\"milk\"]\n", "") ==
        QStringLiteral("entry \"milk\" names no substance / write of = [\"milk\"]\n"));
  CHECK(law_refusal("of = [\"crustacean\"]\n", "of = [\"crustacean\"]\nspecies = [\"cod\"]\n")
            .startsWith(QStringLiteral("entry \"crustacean\": the file names no \"cod\" / ")));
}

TEST_CASE("ids of substances, lists, entries and exemptions are given once", "[book][allergen][refused]") {
  CHECK(law_refusal("id = \"egg\"", "id = \"milk\"")
            .contains(QStringLiteral("substance \"milk\" is given twice / keep one of the two\n")));
  CHECK(law_refusal("id = \"ca\"", "id = \"eu\"") ==
        QStringLiteral("list \"eu\" is given twice / keep one of the two\n"));
  CHECK(law_refusal("id = \"egg\"\nof", "id = \"milk\"\nof") ==
        QStringLiteral("entry \"milk\" is given twice / keep one of the two\n"));
  CHECK(law_refusal("id = \"wheat-maltodextrin\"", "id = \"wheat-glucose-syrup\"") ==
        QStringLiteral("exemption \"wheat-glucose-syrup\" is given twice / keep one of the two\n"));
  CHECK(law_refusal("\"anchovy\", ", "\"anchovy\", \"anchovy\", ") ==
        QStringLiteral("substance \"fish\" names a species twice / keep one of the two\n"));
}

TEST_CASE("a threshold is one readable figure", "[book][allergen][refused]") {
  CHECK(law_refusal("over = \"10 mg/kg\"", "over = \"a little\"") ==
        QStringLiteral(
            "entry \"sulphites\" has no readable threshold / write from = \"10 mg/kg\", or over = \"10 mg/kg\"\n"));
  CHECK(law_refusal("over = \"10 mg/kg\"", "over = \"10 mg/kg\"\nfrom = \"10 mg/kg\"") ==
        QStringLiteral(
            "entry \"sulphites\" has no readable threshold / write from = \"10 mg/kg\", or over = \"10 mg/kg\"\n"));
}

TEST_CASE("a law without lists, or a list without entries, is refused", "[book][allergen][refused]") {
  const auto none = read_allergen_law("[[substance]]\nid = \"milk\"\n", QStringLiteral("a.toml"));
  REQUIRE_FALSE(none);
  CHECK(none.error()[0].what == QStringLiteral("allergen law has no list"));
  const auto bare = read_allergen_law("[[list]]\nid = \"us\"\nsource = \"x\"\n", QStringLiteral("a.toml"));
  REQUIRE_FALSE(bare);
  CHECK(bare.error()[0].what == QStringLiteral("list \"us\" has no entries"));
}
