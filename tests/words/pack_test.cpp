// Language packs: the shipped ones are complete, and what is wrong with one is told whole.
#include "words/pack.h"

#include "pack_files.h"

using namespace lardiner;
using namespace lardiner::words;

namespace {

// The English pack with one line changed, read as a pack for `code`.
QString faults(const QString& from, const QString& to, const QString& code = QStringLiteral("en")) {
  QString toml = QString::fromUtf8(pack_bytes(QStringLiteral("en")));
  REQUIRE(toml.count(from) == 1);
  toml.replace(from, to);
  const auto read = read_language(toml.toUtf8(), QStringLiteral("p.toml"), code);
  if (read) return QStringLiteral("read");
  // Without the place and the line shown, which belong to the reader.
  QStringList texts;
  for (problem::Error error : read.error()) {
    CHECK(error.place.file == QStringLiteral("p.toml"));
    error.place = {};
    texts.append(problem::text(error));
  }
  return texts.join(u'\n');
}

}  // namespace

TEST_CASE("the shipped packs are whole, and each sentence has the values it takes", "[words][pack]") {
  for (const QString& code : shipped_languages()) {
    const auto read = read_language(pack_bytes(code), code, code);
    INFO((read ? code : problem::text(read.error())).toStdString());
    REQUIRE(read.has_value());
    CHECK(read->code() == code);
    for (const QString& key : keys(code)) {
      INFO(key.toStdString());
      REQUIRE(read->has(key));
      QString filled = read->word(key);
      for (int i = 0; i < values_of(key); ++i) {
        CHECK(filled.count(QStringLiteral("{%1}").arg(i)) == 1);
        filled.remove(QStringLiteral("{%1}").arg(i));
      }
      CHECK_FALSE(filled.contains(u'{'));
    }
  }
}

TEST_CASE("only the authors' own language is shipped as reviewed", "[words][pack]") {
  for (const QString& code : shipped_languages()) CHECK(shipped(code).reviewed() == (code == QStringLiteral("en")));
}

TEST_CASE("a pack that nobody reviewed says so", "[words][pack]") {
  CHECK(shipped(QStringLiteral("en")).reviewed());
  CHECK_FALSE(Language(QStringLiteral("en"), {}, {}).reviewed());
  CHECK(faults(QStringLiteral("reviewed_by = \"the authors of Lardiner\"\n"), QString()) ==
        QStringLiteral("the language pack does not say who reviewed it\n  write reviewed_by = \"\" while nobody has"));
}

TEST_CASE("a missing word is told", "[words][pack]") {
  CHECK(faults(QStringLiteral("raw = \"RAW: COOK BEFORE SERVING\"\n"), QString()) ==
        QStringLiteral("the words have no \"raw\"\n  add it under [words]"));
  CHECK(faults(QStringLiteral("lupin = \"lupin\"\n"), QString()) ==
        QStringLiteral("the words have no \"allergen.lupin\"\n  add lupin under [words.allergen]"));
}

TEST_CASE("a word that labels do not print is told with the nearest that they do", "[words][pack]") {
  CHECK(faults(QStringLiteral("keep_hot = "), QStringLiteral("keep_hott = \"x\"\nkeep_hot = ")) ==
        QStringLiteral("\"keep_hott\" is not a word of labels or sheets\n  did you mean \"keep_hot\"?"));
  CHECK(faults(QStringLiteral("keep_hot = "), QStringLiteral("zzzzzzzzzzzz = \"x\"\nkeep_hot = ")) ==
        QStringLiteral("\"zzzzzzzzzzzz\" is not a word of labels or sheets\n  take it out"));
}

TEST_CASE("a kitchen may add words to the open families", "[words][pack]") {
  CHECK(faults(QStringLiteral("lupin = \"lupin\""), QStringLiteral("lupin = \"lupin\"\nkiwi = \"kiwi fruit\"")) ==
        QStringLiteral("read"));
  CHECK(is_known(QStringLiteral("container.crate"), QStringLiteral("en")));
  CHECK(values_of(QStringLiteral("container.crate")) == 2);
  CHECK_FALSE(is_known(QStringLiteral("missing.spoon"), QStringLiteral("en")));
  CHECK_FALSE(is_known(QStringLiteral("allergen."), QStringLiteral("en")));
}

TEST_CASE("an empty word is told", "[words][pack]") {
  CHECK(faults(QStringLiteral("contains = \"CONTAINS {0}\""), QStringLiteral("contains = \" \"")) ==
        QStringLiteral("\"contains\" has no text\n  write its words in quotes"));
  CHECK(faults(QStringLiteral("contains = \"CONTAINS {0}\""), QStringLiteral("contains = 7")) ==
        QStringLiteral("\"contains\" has no text\n  write its words in quotes"));
}

TEST_CASE("a sentence that drops what it must say, or wants more, is told", "[words][pack]") {
  const QString keep = QStringLiteral("\"Keep at {0} or above\"");
  CHECK(faults(keep, QStringLiteral("\"Keep hot\"")) ==
        QStringLiteral("\"keep_hot\" lacks {0}\n  write it where the value stands in the sentence"));
  CHECK(faults(keep, QStringLiteral("\"Keep at {0} or {1}\"")) ==
        QStringLiteral("\"keep_hot\" has {1}, which nothing fills\n  take it out"));
  CHECK(faults(keep, QStringLiteral("\"Keep at {0} or {x}\"")) ==
        QStringLiteral("\"keep_hot\" has {x}, which nothing fills\n  take it out"));
  CHECK(faults(QStringLiteral("\"Tub {0} of {1}\""), QStringLiteral("\"Tub {0}\"")) ==
        QStringLiteral("\"container.tub\" lacks {1}\n  write it where the value stands in the sentence"));
  CHECK(faults(QStringLiteral("\"Tub {0} of {1}\""), QStringLiteral("\"{1}, tub {0}\"")) == QStringLiteral("read"));
}

TEST_CASE("a word said in its family and again with its whole key is told", "[words][pack]") {
  CHECK(faults(QStringLiteral("use_by = \"USE BY\""), QStringLiteral("use_by = \"USE BY\"\n\"list.us\" = \"x\"")) ==
        QStringLiteral("\"list.us\" is said twice\n  keep one"));
}

TEST_CASE("a pack in a file of another language is told", "[words][pack]") {
  CHECK(faults(QStringLiteral("language = \"en\""), QStringLiteral("language = \"fr\"")) ==
        QStringLiteral("the pack for \"en\" says it is for \"fr\"\n  name the file after its language"));
}

TEST_CASE("a list and brackets, which other text is built around, have their values in order", "[words][pack]") {
  const QString parts = QStringLiteral("with_parts = \"{0} ({1})\"");
  const QString refusal = QStringLiteral(
      "\"with_parts\" does not have its values once and in order\n"
      "  write {0} before {1}: other text is built around them");
  CHECK(faults(parts, QStringLiteral("with_parts = \"({1}) {0}\"")) == refusal);
  CHECK(faults(parts, QStringLiteral("with_parts = \"{0} ({1}) {1}\"")) == refusal);
  CHECK(faults(parts, QStringLiteral("with_parts = \"{0} [{1}]\"")) == QStringLiteral("read"));
}

TEST_CASE("a form of a counted word that the language needs is missed at its table, with file and line",
          "[words][pack][plural]") {
  const auto without = [](const QString& line) {
    const QString whole = QString::fromUtf8(pack_bytes(QStringLiteral("ru")));
    REQUIRE(whole.count(line) == 1);
    const auto read =
        read_language(QString(whole).remove(line).toUtf8(), QStringLiteral("ru.toml"), QStringLiteral("ru"));
    REQUIRE_FALSE(read.has_value());
    REQUIRE(read.error().size() == 1);
    const qsizetype table = whole.left(whole.indexOf(QStringLiteral("[words.pieces]"))).count(u'\n') + 1;
    CHECK(read.error().front().place.line == table);
    problem::Error error = read.error().front();
    CHECK(error.place.file == QStringLiteral("ru.toml"));
    error.place = {};
    return problem::text(error);
  };
  CHECK(without(QStringLiteral("few = \"{0} штуки\"\n")) ==
        QStringLiteral("the words have no \"pieces.few\"\n  add few under [words.pieces]"));
  CHECK(without(QStringLiteral("many = \"{0} штук\"\n")) ==
        QStringLiteral("the words have no \"pieces.many\"\n  add many under [words.pieces]"));
}

TEST_CASE("a form that the language does not have is told", "[words][pack][plural]") {
  CHECK(faults(QStringLiteral("one = \"{0} piece\""), QStringLiteral("one = \"{0} piece\"\nfew = \"{0} pieces\"")) ==
        QStringLiteral("\"pieces.few\" is not a word of labels or sheets\n  did you mean \"pieces.one\"?"));
  CHECK(faults(QStringLiteral("net = \"Net {0}\""), QStringLiteral("net = \"Net {0}\"\npieces = \"{0} pieces\"")) !=
        QStringLiteral("read"));
}

TEST_CASE(
    "a language whose days or months have no name that says what they are is told, since its dates could be misread",
    "[words][pack]") {
  const auto as = [](const char* code) {
    return faults(QStringLiteral("language = \"en\""), QStringLiteral("language = \"%1\"").arg(QLatin1String(code)),
                  QLatin1String(code));
  };
  // The days of Metaʼ are "Aneg 2" in CLDR, short and long; Church Slavic has no months there but "M12".
  CHECK(
      as("mgo").startsWith(QStringLiteral("language \"mgo\" has days or months without a name of their own\n"
                                          "  use a language that names them in words, so that no date is misread")));
  CHECK(
      as("cu").startsWith(QStringLiteral("the months of language \"cu\" are not known\n"
                                         "  write a language tag such as en, es or es-MX")));
  CHECK(
      as("xx").startsWith(QStringLiteral("the months of language \"xx\" are not known\n"
                                         "  write a language tag such as en, es or es-MX")));
  CHECK(as("en-GB") == QStringLiteral("read"));
}

TEST_CASE("a fault stands at its line", "[words][pack]") {
  const auto read =
      read_language("language = \"fr\"\nreviewed_by = \"\"\n[words]\n", QStringLiteral("p.toml"), QStringLiteral("en"));
  REQUIRE_FALSE(read.has_value());
  CHECK(problem::text(read.error().front()) == QStringLiteral("p.toml:1:12: the pack for \"en\" says it is for \"fr\"\n"
                                                              "  language = \"fr\"\n"
                                                              "             ^^^^\n"
                                                              "  name the file after its language"));
}

TEST_CASE("all faults of a pack are told at once", "[words][pack]") {
  const auto read =
      read_language("language = \"en\"\nreviewed_by = \"\"\n[words]\nuse_by = \"\"\nhold = 1\nx = \"y\"\n",
                    QStringLiteral("p.toml"), QStringLiteral("en"));
  REQUIRE_FALSE(read.has_value());
  CHECK(read.error().size() == static_cast<std::size_t>(keys(QStringLiteral("en")).size()) + 1);
}

TEST_CASE("a pack that is no TOML, or holds no words, is told", "[words][pack]") {
  CHECK_FALSE(read_language("language = ", QStringLiteral("p.toml"), QStringLiteral("en")).has_value());
  const auto bare =
      read_language("language = \"en\"\nreviewed_by = \"\"\n", QStringLiteral("p.toml"), QStringLiteral("en"));
  REQUIRE_FALSE(bare.has_value());
  REQUIRE(bare.error().size() == 1);
  CHECK(bare.error().front().what == QStringLiteral("the language pack has no words"));
}
