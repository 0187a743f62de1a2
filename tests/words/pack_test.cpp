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

TEST_CASE("the shipped packs are whole", "[words][pack]") {
  for (const char* code : {"en", "es"}) {
    const auto read = read_language(pack_bytes(QLatin1String(code)), QLatin1String(code), QLatin1String(code));
    INFO((read ? QString() : problem::text(read.error())).toStdString());
    REQUIRE(read.has_value());
    CHECK(read->code() == QLatin1String(code));
    for (const QString& key : keys()) CHECK(read->has(key));
  }
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
        QStringLiteral("the words have no \"allergen.lupin\"\n  add it under [words]"));
}

TEST_CASE("a word that labels do not print is told with the nearest that they do", "[words][pack]") {
  CHECK(faults(QStringLiteral("keep_hot = "), QStringLiteral("keep_hott = \"x\"\nkeep_hot = ")) ==
        QStringLiteral("\"keep_hott\" is not a word of labels\n  did you mean \"keep_hot\"?"));
  CHECK(faults(QStringLiteral("keep_hot = "), QStringLiteral("zzzzzzzzzzzz = \"x\"\nkeep_hot = ")) ==
        QStringLiteral("\"zzzzzzzzzzzz\" is not a word of labels\n  take it out"));
}

TEST_CASE("a kitchen may add words to the open families", "[words][pack]") {
  CHECK(faults(QStringLiteral("lupin = \"lupin\""), QStringLiteral("lupin = \"lupin\"\nkiwi = \"kiwi fruit\"")) ==
        QStringLiteral("read"));
  CHECK(is_known(QStringLiteral("container.crate")));
  CHECK(values_of(QStringLiteral("container.crate")) == 2);
  CHECK_FALSE(is_known(QStringLiteral("missing.spoon")));
  CHECK_FALSE(is_known(QStringLiteral("allergen.")));
}

TEST_CASE("an empty word is told", "[words][pack]") {
  CHECK(faults(QStringLiteral("contains = \"CONTAINS\""), QStringLiteral("contains = \" \"")) ==
        QStringLiteral("\"contains\" has no text\n  write its words in quotes"));
  CHECK(faults(QStringLiteral("contains = \"CONTAINS\""), QStringLiteral("contains = 7")) ==
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

TEST_CASE("a language without months in letters is told, since its dates could be misread", "[words][pack]") {
  CHECK(faults(QStringLiteral("language = \"en\""), QStringLiteral("language = \"vi\""), QStringLiteral("vi")) ==
        QStringLiteral("language \"vi\" writes months or days with figures\n"
                       "  use a language whose months and days are words, so that no date is misread"));
  CHECK(faults(QStringLiteral("language = \"en\""), QStringLiteral("language = \"xx\""), QStringLiteral("xx")) ==
        QStringLiteral("the months of language \"xx\" are not known\n  write a language tag such as en, es or es-MX"));
  CHECK(faults(QStringLiteral("language = \"en\""), QStringLiteral("language = \"fr\""), QStringLiteral("fr")) ==
        QStringLiteral("read"));
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
  CHECK(read.error().size() == static_cast<std::size_t>(keys().size()) + 1);
}

TEST_CASE("a pack that is no TOML, or holds no words, is told", "[words][pack]") {
  CHECK_FALSE(read_language("language = ", QStringLiteral("p.toml"), QStringLiteral("en")).has_value());
  const auto bare =
      read_language("language = \"en\"\nreviewed_by = \"\"\n", QStringLiteral("p.toml"), QStringLiteral("en"));
  REQUIRE_FALSE(bare.has_value());
  REQUIRE(bare.error().size() == 1);
  CHECK(bare.error().front().what == QStringLiteral("the language pack has no words"));
}
