// What cannot be printed whole is not printed at all: text without room, characters without a face, unshaped scripts.
#include <QRegularExpression>

#include "small_kitchen.h"

using namespace lardiner::command;

namespace {

const QString kRecordWithCaret = QStringLiteral(
    "  ,lime-butter,1,2 kg,2026-11-25 07:40,MK,4 tub 500 g,,,,\n"
    "   ^^^^^^^^^^^\n");

// Labels with another name for the butter.
Ran named(const SmallKitchen& kitchen, const QString& name) {
  kitchen.folder.put_fault("kitchen/products.toml", "name = \"Lime butter\"", "name = \"" + name + u'"');
  return kitchen.labels({"records.csv", "--out", "labels"});
}

// The whole text, but for how much is lacking: that is the layout's to say.
void check_no_room(const Ran& ran, const QString& name, const QString& lack, const QString& hint) {
  const QString start =
      "records.csv:2:2: the label of " + name + " A26329LBU01C does not fit on \"lid\" (50 × 50 mm): ";
  const QString end = "\n" + kRecordWithCaret + "  " + hint + "\n";
  INFO(ran.err.toStdString());
  REQUIRE(ran.err.startsWith(start));
  REQUIRE(ran.err.endsWith(end));
  const QString said = ran.err.mid(start.size(), ran.err.size() - start.size() - end.size());
  INFO(said.toStdString());
  CHECK(QRegularExpression(QRegularExpression::anchoredPattern(lack)).match(said).hasMatch());
}

}  // namespace

TEST_CASE("text that cannot fit is refused with the fact, the medium, the space that lacks, and the smallest that fits",
          "[command][no_room][src:practice]") {
  const SmallKitchen kitchen;
  const QString name =
      "Butter with lime and smoked pepper for the fish and the corn of the whole week, salted twice and again";
  const Ran ran = named(kitchen, name);
  CHECK(ran.status == 1);
  CHECK(ran.out == "");
  check_no_room(ran, name, "[a-z-]+ needs \\d+\\.\\d mm more height",
                "\"side\" (100 × 50 mm) is the smallest medium of the book that holds it");
  CHECK(kitchen.as_it_was());
  CHECK(kitchen.labels({"records.csv", "--out", "labels", "--medium", "side"}).status == 0);
}

TEST_CASE("text that no medium of the book holds is refused with the remedy", "[command][no_room][src:practice]") {
  const SmallKitchen kitchen;
  const QString name =
      QStringLiteral("Butter with lime and smoked pepper for the fish and the corn ").repeated(20).trimmed();
  const Ran ran = named(kitchen, name);
  CHECK(ran.status == 1);
  check_no_room(ran, name, "name needs \\d+\\.\\d mm more height",
                "no medium of the book holds it: add a larger one, or shorten the text");
  CHECK(kitchen.as_it_was());
}

TEST_CASE("a word that is wider than the label is refused by name, and never broken",
          "[command][no_room][src:practice]") {
  const SmallKitchen kitchen;
  const QString name = QString(40, u'M');
  const Ran ran = named(kitchen, name);
  CHECK(ran.status == 1);
  check_no_room(ran, name, "name needs \\d+\\.\\d mm more width for \"M{40}\"",
                "no medium of the book holds it: add a larger one, or shorten the text");
  CHECK(kitchen.as_it_was());
}

TEST_CASE("a character that no shipped face has is refused, not printed as a box", "[command][no_room][src:practice]") {
  const SmallKitchen kitchen;
  const Ran ran = named(kitchen, "Lime 馕 butter");
  CHECK(ran.status == 1);
  CHECK(ran.out == "");
  CHECK(ran.err ==
        "records.csv:2:2: the name of this label cannot be printed: \"Lime 馕 butter\" has 馕 (U+9995) as character 6, "
        "which the label faces do not have\n" +
            kRecordWithCaret + "  write it otherwise, or add it to the Chinese faces with fonts/make-subsets\n");
  CHECK(kitchen.as_it_was());
}

TEST_CASE("a script that would need shaping is refused by its name", "[command][no_room][src:practice]") {
  const std::vector<std::pair<QString, QString>> cases = {
      {"زبدة",
       "the name of this label cannot be printed: \"زبدة\" has ز (U+0632) as character 1, and Arabic script cannot "
       "be set on labels"},
      {"मक्खन",
       "the name of this label cannot be printed: \"मक्खन\" has म (U+092E) as character 1, and Devanagari script "
       "cannot be set on labels"}};
  for (const auto& [name, what] : cases) {
    const SmallKitchen kitchen;
    const Ran ran = named(kitchen, name);
    CHECK(ran.status == 1);
    CHECK(ran.err == "records.csv:2:2: " + what + "\n" + kRecordWithCaret +
                         "  write it in Latin, Greek, Cyrillic or Chinese characters, digits and common signs\n");
    CHECK(kitchen.as_it_was());
  }
}

TEST_CASE("letters of the faces print as written: accents, fractions, the eszett", "[command][no_room][src:practice]") {
  const SmallKitchen kitchen;
  const QString name = "Crème ½ ñ Größe";
  REQUIRE(named(kitchen, name).status == 0);
  CHECK(page_texts(kitchen.folder, "labels/lid.pdf").front().text.startsWith(name));
}
