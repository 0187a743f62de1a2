// Words and sentences as labels print them.
#include "words/words.h"

#include <QRegularExpression>

#include "pack_files.h"
#include "reader/read.h"

using namespace lardiner::words;

namespace {

const char* const kNine[] = {"milk", "egg", "fish", "crustacean", "tree-nut", "wheat", "peanut", "soy", "sesame"};
const char* const kFourteen[] = {"gluten-cereals", "wheat",     "rye",   "barley", "oats",     "crustacean", "egg",
                                 "fish",           "peanut",    "soy",   "milk",   "tree-nut", "celery",     "mustard",
                                 "sesame",         "sulphites", "lupin", "mollusc"};
const char* const kTwelveNuts[] = {"almond", "black-walnut", "brazil-nut", "california-walnut",
                                   "cashew", "hazelnut",     "heartnut",   "macadamia",
                                   "pecan",  "pine-nut",     "pistachio",  "walnut"};

QString allergen(const Language& language, const char* id) {
  return language.word(QStringLiteral("allergen.") + QLatin1String(id));
}

using lardiner::reader::Value;

// The tables of the list `key`, none when it is not there.
std::vector<Value> tables(const Value& of, QStringView key) {
  const Value* list = of.find(key);
  return list ? list->items : std::vector<Value>{};
}

void add_allergen(const Value& table, QStringList& keys) {
  keys.append(QStringLiteral("allergen.") + table.find(u"id")->text);
  for (const Value& species : tables(table, u"species")) keys.append(QStringLiteral("allergen.") + species.text);
}

// The keys of all substances, species, lists and entries in templates/rules/allergens.toml.
QStringList words_of_law(const Value& law) {
  QStringList keys;
  for (const Value& substance : tables(law, u"substance")) add_allergen(substance, keys);
  for (const Value& list : tables(law, u"list")) {
    keys.append(QStringLiteral("list.") + list.find(u"id")->text);
    for (const Value& entry : tables(list, u"entry")) add_allergen(entry, keys);
  }
  return keys;
}

}  // namespace

TEST_CASE("a sentence is filled in one pass: braces in a value stay", "[words]") {
  const Language language(
      QStringLiteral("en"),
      {{QStringLiteral("a"), QStringLiteral("{1} of {0}!")}, {QStringLiteral("b"), QStringLiteral("x")}}, {});
  CHECK(language.sentence(QStringLiteral("a"), {QStringLiteral("{1}"), QStringLiteral("2")}) ==
        QStringLiteral("2 of {1}!"));
  CHECK(language.sentence(QStringLiteral("b"), {QStringLiteral("unused")}) == QStringLiteral("x"));
}

TEST_CASE("what is no gap stays, and so does a gap that has no value", "[words]") {
  const auto filled = [](const char* text) {
    const Language language(QStringLiteral("en"), {{QStringLiteral("a"), QString::fromLatin1(text)}}, {});
    return language.sentence(QStringLiteral("a"), {QStringLiteral("x"), QStringLiteral("y")});
  };
  CHECK(filled("{0}{1}{0}") == "xyx");
  CHECK(filled("{{0}}") == "{x}");
  CHECK(filled("{0") == "{0");
  CHECK(filled("{10} {a} {} {") == "{10} {a} {} {");
  CHECK(filled("{7}, {1}") == "{7}, y");
  const Language language(QStringLiteral("en"), {{QStringLiteral("a"), QStringLiteral("{0} (in {1}) {")}}, {});
  CHECK(language.around(QStringLiteral("a")) == QStringList{QString(), QStringLiteral(" (in "), QStringLiteral(") {")});
}

TEST_CASE("a word that is not there is seen, never silent", "[words]") {
  const Language language(QStringLiteral("en"), {}, {});
  CHECK_FALSE(language.has(QStringLiteral("allergen.lupin")));
  CHECK(language.word(QStringLiteral("allergen.lupin")) == QStringLiteral("[allergen.lupin]"));
}

TEST_CASE("every entry of the US, EU and Canadian lists has a name in each language",
          "[words][allergen][src:21-usc-321/qq][src:eu-1169-2011/annex-ii][src:canada-fdr/B.01.010.1]") {
  for (const QString& code : shipped_languages()) {
    const Language language = shipped(code);
    for (const char* id : kNine) CHECK(language.has(QStringLiteral("allergen.") + QLatin1String(id)));
    for (const char* id : kFourteen) CHECK(language.has(QStringLiteral("allergen.") + QLatin1String(id)));
    CHECK(language.has(QStringLiteral("allergen.triticale")));
  }
}

TEST_CASE("the twelve nuts of the US list, and those that left it, have names",
          "[words][allergen][src:fda-allergen-qa5]") {
  for (const QString& code : shipped_languages()) {
    const Language language = shipped(code);
    for (const char* id : kTwelveNuts) CHECK(language.has(QStringLiteral("allergen.") + QLatin1String(id)));
    CHECK(language.has(QStringLiteral("allergen.coconut")));
    CHECK(language.has(QStringLiteral("allergen.chestnut")));
  }
}

TEST_CASE("whatever the shipped law of allergens can name has a word in every shipped language", "[words][allergen]") {
  QFile file(QStringLiteral(LARDINER_SOURCE_DIR "/templates/rules/allergens.toml"));
  REQUIRE(file.open(QIODevice::ReadOnly));
  const auto law = lardiner::reader::read_toml(file.readAll(), file.fileName());
  REQUIRE(law.has_value());
  const QStringList wanted = words_of_law(*law);
  CHECK(wanted.size() > 100);
  for (const QString& code : shipped_languages()) {
    const Language language = shipped(code);
    for (const QString& key : wanted) {
      INFO(key.toStdString());
      CHECK(language.has(key));
    }
  }
}

TEST_CASE("no two allergens have the same name in a language", "[words][allergen]") {
  for (const QString& code : shipped_languages()) {
    const Language language = shipped(code);
    QStringList names;
    for (const QString& key : keys(code)) {
      if (key.startsWith(QLatin1String("allergen."))) names.append(language.word(key));
    }
    CHECK(names.removeDuplicates() == 0);
  }
}

TEST_CASE("species are named without brackets, since they stand in brackets", "[words][allergen]") {
  const QRegularExpression bracket(QStringLiteral("[()（）]"));
  for (const QString& code : shipped_languages()) {
    const QStringList all = keys(code);
    const qsizetype first = all.indexOf(QStringLiteral("allergen.almond"));
    REQUIRE(first > 0);
    for (const QString& key : all.mid(first)) {
      if (key.startsWith(QLatin1String("allergen."))) CHECK_FALSE(shipped(code).word(key).contains(bracket));
    }
  }
}

TEST_CASE("allergens are named in plain words", "[words][allergen]") {
  const Language english = shipped(QStringLiteral("en"));
  CHECK(english.list({allergen(english, "wheat"), allergen(english, "milk"), allergen(english, "egg")}) ==
        QStringLiteral("wheat, milk, egg"));
  CHECK(english.sentence(QStringLiteral("none_of"), {english.word(QStringLiteral("list.us"))}) ==
        QStringLiteral("None of the US major allergens"));
  const Language spanish = shipped(QStringLiteral("es"));
  CHECK(spanish.sentence(QStringLiteral("none_of"), {spanish.word(QStringLiteral("list.us"))}) ==
        QStringLiteral("Ninguno de los alérgenos principales de EE. UU."));
}

TEST_CASE("no pack says that food is free from anything", "[words]") {
  // How each language says "free from", "without", "does not contain".
  const QHash<QString, QString> free{
      {QStringLiteral("en"), QStringLiteral("\\bfree\\b|\\bno (?!date|t )")},
      {QStringLiteral("es"), QStringLiteral("\\blibre\\b|\\bsin (?!control|fecha)|no contiene")},
      {QStringLiteral("fr"), QStringLiteral("\\bsans\\b|\\bexempt|ne contient")},
      {QStringLiteral("pt"), QStringLiteral("\\bsem\\b|\\blivre\\b|\\bisent|não contém")},
      {QStringLiteral("vi"), QStringLiteral("không chứa|không có|miễn")},
      {QStringLiteral("el"), QStringLiteral("\\bχωρίς\\b|ελεύθερο|δεν περιέχει")},
      {QStringLiteral("ru"), QStringLiteral("\\bбез\\b|не содерж|свободно от")},
      {QStringLiteral("zh"), QStringLiteral("不含|无添加|不添加")}};
  for (const QString& code : shipped_languages()) {
    REQUIRE(free.contains(code));
    const QRegularExpression form(
        free[code], QRegularExpression::CaseInsensitiveOption | QRegularExpression::UseUnicodePropertiesOption);
    const Language language = shipped(code);
    for (const QString& key : keys(code)) {
      INFO(language.word(key).toStdString());
      CHECK_FALSE(form.match(language.word(key)).hasMatch());
    }
  }
}

TEST_CASE("no fixed word reads as a day of the week, as the Greek for making does for Friday", "[words][date]") {
  for (const QString& code : shipped_languages()) {
    const Language language = shipped(code);
    for (int day = 1; day <= 7; ++day) {
      const QString name = QLocale(code).dayName(day);
      const QRegularExpression alone(
          QStringLiteral("\\b") + QRegularExpression::escape(name) + QStringLiteral("\\b"),
          QRegularExpression::CaseInsensitiveOption | QRegularExpression::UseUnicodePropertiesOption);
      REQUIRE(alone.match(name + QStringLiteral(" 25")).hasMatch());
      for (const QString& key : keys(code)) {
        INFO(key.toStdString() << ": " << language.word(key).toStdString());
        CHECK_FALSE(alone.match(language.word(key)).hasMatch());
      }
    }
  }
}

TEST_CASE("lists, clauses, sentences and brackets are joined by the language's own signs", "[words]") {
  const QStringList three{QStringLiteral("A"), QStringLiteral("B"), QStringLiteral("C")};
  const Language english = shipped(QStringLiteral("en"));
  CHECK(english.list(three) == QStringLiteral("A, B, C"));
  CHECK(english.clauses(three) == QStringLiteral("A, B, C"));
  CHECK(english.sentences(three) == QStringLiteral("A. B. C"));
  CHECK(english.list({}) == QString());
  const Language chinese = shipped(QStringLiteral("zh"));
  CHECK(chinese.list(three) == QStringLiteral("A、B、C"));
  CHECK(chinese.clauses(three) == QStringLiteral("A，B，C"));
  CHECK(chinese.sentences(three) == QStringLiteral("A。B。C"));
  CHECK(chinese.around(QStringLiteral("with_parts")) ==
        QStringList{QString(), QStringLiteral("（"), QStringLiteral("）")});
  CHECK(english.around(QStringLiteral("with_parts")) ==
        QStringList{QString(), QStringLiteral(" ("), QStringLiteral(")")});
}

TEST_CASE("a counted word takes the form that goes with its number", "[words][plural]") {
  const auto pieces = [](const char* code, const char* figure) {
    return shipped(QLatin1String(code)).counted(QStringLiteral("pieces"), QLatin1String(figure));
  };
  CHECK(pieces("en", "1") == QStringLiteral("1 piece"));
  CHECK(pieces("en", "24") == QStringLiteral("24 pieces"));
  CHECK(pieces("es", "1") == QStringLiteral("1 pieza"));
  CHECK(pieces("es", "24") == QStringLiteral("24 piezas"));
  CHECK(pieces("es", "1000000") == QStringLiteral("1000000 de piezas"));
  CHECK(pieces("fr", "1,5") == QStringLiteral("1,5 pièce"));
  CHECK(pieces("ru", "21") == QStringLiteral("21 штука"));
  CHECK(pieces("ru", "22") == QStringLiteral("22 штуки"));
  CHECK(pieces("ru", "11") == QStringLiteral("11 штук"));
  CHECK(pieces("ru", "25") == QStringLiteral("25 штук"));
  CHECK(pieces("zh", "24") == QStringLiteral("24件"));
}

TEST_CASE("a sheet counts each kind of container, in every language", "[words][plural]") {
  const auto counted = [](const char* code, const char* key, const char* figure) {
    return shipped(QLatin1String(code)).counted(QLatin1String(key), QLatin1String(figure));
  };
  CHECK(counted("en", "tubs", "1") == QStringLiteral("1 tub"));
  CHECK(counted("es", "trays", "25") == QStringLiteral("25 bandejas"));
  CHECK(counted("fr", "jars", "12") == QStringLiteral("12 bocaux"));
  CHECK(counted("el", "pans", "3") == QStringLiteral("3 ταψιά"));
  CHECK(counted("ru", "jars", "22") == QStringLiteral("22 банки"));
  CHECK(counted("ru", "trays", "25") == QStringLiteral("25 подносов"));
  CHECK(counted("zh", "bottles", "6") == QStringLiteral("6瓶"));
  const QString container = QStringLiteral("container.");
  for (const QString& code : shipped_languages()) {
    for (const QString& key : keys(code)) {
      if (!key.startsWith(container)) continue;
      const QString kind = key.mid(container.size()) + u's';  // "container.tub", "tubs"
      CHECK(is_known(plural_key(kind, Plural::Other), code));
    }
  }
}

TEST_CASE("a document in Chinese says which characters", "[words]") {
  CHECK(shipped(QStringLiteral("zh")).tag() == QStringLiteral("zh-Hans"));
  CHECK(shipped(QStringLiteral("es")).tag() == QStringLiteral("es"));
}

TEST_CASE("labels read as a tired cook would say it", "[words]") {
  const Language english = shipped(QStringLiteral("en"));
  const auto say = [&](const char* key, const QStringList& values) {
    return english.sentence(QString::fromLatin1(key), values);
  };
  CHECK(say("container.tub", {QStringLiteral("3"), QStringLiteral("24")}) == QStringLiteral("Tub 3 of 24"));
  CHECK(say("keep_at_or_below", {QStringLiteral("5 °C (41 °F)")}) == QStringLiteral("Keep at 5 °C (41 °F) or below"));
  CHECK(say("thaw_day_is_day_1", {english.counted(QStringLiteral("days_left"), QStringLiteral("4"))}) ==
        QStringLiteral("4 days left: the thaw day is day 1"));
  CHECK(say("use_on_thaw_day", {english.counted(QStringLiteral("days_left"), QStringLiteral("1"))}) ==
        QStringLiteral("1 day left: use it on the thaw day"));
  CHECK(say("finished_discard", {QStringLiteral("__"), QStringLiteral("__")}) ==
        QStringLiteral("Finished __ discard by __"));
  CHECK(say("no_date", {english.word(QStringLiteral("missing.cook_reading"))}) ==
        QStringLiteral("No date: the cook reading is missing. Ask the chef."));
}

TEST_CASE("the safe handling statement has its fixed wording in English", "[words][src:memory]") {
  // 9 CFR 317.2(l), 381.125(b); value from memory.
  const QString text = shipped(QStringLiteral("en")).word(QStringLiteral("safe_handling"));
  CHECK(
      text.startsWith(QStringLiteral("Safe Handling Instructions. This product was prepared from inspected and "
                                     "passed meat and/or poultry.")));
  for (const char* part : {"Keep refrigerated or frozen. Thaw in refrigerator or microwave.",
                           "Keep raw meat and poultry separate from other foods.", "Cook thoroughly.",
                           "Keep hot foods hot. Refrigerate leftovers immediately or discard."}) {
    CHECK(text.contains(QLatin1String(part)));
  }
}
