// TOML: what is read, with its place, and what is refused.
#include "show.h"
#include "texts.h"

using namespace lardiner::reader;

namespace {

QString keys(const Value& table) {
  QStringList all;
  for (const auto& [key, value] : table.entries) all.append(key);
  return all.join(u' ');
}

QString text(const Value& table, const char* key) {
  const Value* found = table.find(QString::fromUtf8(key));
  return found == nullptr ? QStringLiteral("(absent)") : found->text;
}

// Line, column and width, as an error would draw its caret.
QString where(const Value& value) {
  return QStringLiteral("%1:%2+%3").arg(value.place.line).arg(value.place.column).arg(value.place.width);
}

}  // namespace

TEST_CASE("a TOML file's values keep their own characters", "[reader][toml][src:toml-1.0/float]") {
  const Value file = toml("name = \"salsa\"\nyield = 0.610\nfinished = true\nbig = 5e+22\nparts = [3, +1]\n");
  CHECK(text(file, "name") == QStringLiteral("salsa"));
  CHECK(file.find(u"name")->kind == Value::Kind::String);
  CHECK(text(file, "yield") == QStringLiteral("0.610"));
  CHECK(file.find(u"yield")->kind == Value::Kind::Number);
  CHECK(file.find(u"finished")->is_true());
  CHECK(text(file, "big") == QStringLiteral("5e+22"));
  REQUIRE(file.find(u"parts")->items.size() == 2);
  CHECK(file.find(u"parts")->items[1].text == QStringLiteral("+1"));
  CHECK(file.find(u"absent") == nullptr);
}

TEST_CASE("dates and times are kept as written", "[reader][toml][src:toml-1.0/offset-date-time]") {
  const Value file = toml(
      "odt1 = 1979-05-27T07:32:00Z\nodt2 = 1979-05-27T00:32:00.999999-07:00\nodt4 = 1979-05-27 07:32:00Z # space\n"
      "ld1 = 1979-05-27\nlt1 = 07:32:00\nlist = [1979-05-27 ,1979-05-28]\n");
  CHECK(text(file, "odt1") == QStringLiteral("1979-05-27T07:32:00Z"));
  CHECK(text(file, "odt2") == QStringLiteral("1979-05-27T00:32:00.999999-07:00"));
  CHECK(text(file, "odt4") == QStringLiteral("1979-05-27 07:32:00Z"));
  CHECK(text(file, "ld1") == QStringLiteral("1979-05-27"));
  CHECK(text(file, "lt1") == QStringLiteral("07:32:00"));
  CHECK(file.find(u"lt1")->kind == Value::Kind::Date);
  CHECK(file.find(u"list")->items[0].text == QStringLiteral("1979-05-27"));
}

TEST_CASE("a hash in a text begins no comment", "[reader][toml][src:toml-1.0/comment]") {
  const Value file =
      toml("# This is a full-line comment\nkey = \"value\"  # at the end\nanother = \"# not a comment\"\n");
  CHECK(text(file, "key") == QStringLiteral("value"));
  CHECK(text(file, "another") == QStringLiteral("# not a comment"));
}

TEST_CASE("keys may be bare, quoted or dotted", "[reader][toml][src:toml-1.0/keys]") {
  const Value file =
      toml("1234 = \"value\"\n\"127.0.0.1\" = \"value\"\n'quoted \"value\"' = 1\nsite . \"a.b\" = true\n\"\" = 0\n");
  CHECK(keys(file) == QStringLiteral("1234 127.0.0.1 quoted \"value\" site "));
  CHECK(file.find(u"site")->find(u"a.b")->is_true());
}

TEST_CASE("texts of one line and of several, with escapes or without", "[reader][toml][src:toml-1.0/string]") {
  const Value file = toml(
      "str = \"I'm a string. \\\"You can quote me\\\". Name\\tJos\\u00E9\\nLocation\\tSF.\"\n"
      "fox = \"\"\"\\\n  The quick brown \\\n\n  fox.\"\"\"\nroses = \"\"\"\nRoses are red\nViolets\"\"\"\n"
      "path = 'D:\\book\\nuts'\nboth = \"\"\"\"This,\" she said\"\"\"\"\n");
  CHECK(text(file, "str") == QString::fromUtf8("I'm a string. \"You can quote me\". Name\tJosé\nLocation\tSF."));
  CHECK(text(file, "fox") == QStringLiteral("The quick brown fox."));
  CHECK(text(file, "roses") == QStringLiteral("Roses are red\nViolets"));
  CHECK(text(file, "path") == QStringLiteral("D:\\book\\nuts"));
  CHECK(text(file, "both") == QStringLiteral("\"This,\" she said\""));
}

TEST_CASE("entries stand in the order of the file, since formula order is the order of addition", "[reader][toml]") {
  const Value file = toml("zest = 1\napple.type = 1\nlime = 2\napple.skin = 2\n[salt]\n[butter]\n");
  CHECK(keys(file) == QStringLiteral("zest apple lime salt butter"));
  CHECK(keys(*file.find(u"apple")) == QStringLiteral("type skin"));
}

TEST_CASE("arrays of tables keep their order", "[reader][toml][src:toml-1.0/array-of-tables]") {
  const Value file = toml("[[product]]\nid = \"b\"\n\n[[product]]\nid = \"a\"\n[product.chilled]\ndays = 7\n");
  const Value* products = file.find(u"product");
  REQUIRE(products->items.size() == 2);
  CHECK(text(products->items[0], "id") == QStringLiteral("b"));
  CHECK(text(products->items[1], "id") == QStringLiteral("a"));
  CHECK(text(*products->items[1].find(u"chilled"), "days") == QStringLiteral("7"));
  CHECK(where(products->items[1]) == QStringLiteral("4:1+11"));
}

TEST_CASE("every value knows its line, its column in letters and its width", "[reader][toml][places]") {
  const Value file = toml("\"crème fraîche\" = \"é\" # c\nlist = [ 1,\n  22 ]\n[a.b]\n  in = { x = 'y' }\n");
  const Value* cream = file.find(QString::fromUtf8("crème fraîche"));
  CHECK(where(*cream) == QStringLiteral("1:19+3"));
  CHECK(cream->key_place.column == 1);
  CHECK(cream->key_place.width == 15);
  CHECK(cream->place.source_line == QString::fromUtf8("\"crème fraîche\" = \"é\" # c"));
  CHECK(where(file.find(u"list")->items[1]) == QStringLiteral("3:3+2"));
  CHECK(where(*file.find(u"a")->find(u"b")) == QStringLiteral("4:1+5"));
  CHECK(where(*file.find(u"a")->find(u"b")->find(u"in")->find(u"x")) == QStringLiteral("5:14+3"));
  CHECK(file.place.line == 0);
  CHECK(file.place.file == QStringLiteral("book.toml"));
}

TEST_CASE("a byte order mark and CRLF move no column", "[reader][toml][places]") {
  const Value file = toml(
      "\xEF\xBB\xBF"
      "a = 1\r\nb = 2\r\n");
  CHECK(where(*file.find(u"a")) == QStringLiteral("1:5+1"));
  CHECK(where(*file.find(u"b")) == QStringLiteral("2:5+1"));
  CHECK(file.find(u"b")->place.source_line == QStringLiteral("b = 2"));
}

TEST_CASE("a line of very many values takes no longer than its length", "[reader][toml][places]") {
  QByteArray line = "a = [0";
  for (int i = 1; i < 20000; ++i) line += ",1";
  const Value file = toml(line + "]\n");
  CHECK(file.entries[0].second.items.back().place.column == 40004);
  CHECK(file.entries[0].second.place.width == 156);
}

TEST_CASE("an empty TOML file is an empty table", "[reader][toml]") { CHECK(toml("").entries.empty()); }

TEST_CASE("a text that is not closed is shown where it opens", "[reader][toml][errors][src:toml-1.0/string]") {
  CHECK(toml_error("id = \"salsa\nnote = 1\n") ==
        QStringLiteral("book.toml:1:6: this text is never closed\n  id = \"salsa\n       ^^^^^^\n"
                       "  end it with \" on the same line, or write \"\"\" around text of several lines"));
  CHECK(toml_error("a = 'x") ==
        QStringLiteral("book.toml:1:5: this text is never closed\n  a = 'x\n      ^^\n"
                       "  end it with ' on the same line, or write ''' around text of several lines"));
  CHECK(toml_error("a = 1\nb = \"\"\"x\ny\n") ==
        QStringLiteral("book.toml:2:5: this text is never closed\n  b = \"\"\"x\n      ^^^^\n  end it with \"\"\""));
  CHECK(toml_error("'''\r\n") ==
        QStringLiteral("book.toml:1:1: this text is never closed\n  '''\n  ^^^\n  end it with '''"));
}

TEST_CASE("a table's name that is not closed", "[reader][toml][errors][src:toml-1.0/table]") {
  const QString told =
      QStringLiteral("a ] is missing here\n  [a\n    ^\n  write a table as [name], one of several as [[name]]");
  CHECK(toml_error("[a") == QStringLiteral("book.toml:1:3: ") + told);
  CHECK(toml_error("[a\r\nb = 1\r\n") == QStringLiteral("book.toml:1:3: ") + told);
}

TEST_CASE("a missing equals sign, key or value", "[reader][toml][errors][src:toml-1.0/key-value-pair]") {
  CHECK(toml_error("name \"salsa\"\n") ==
        QStringLiteral("book.toml:1:6: an = is missing here\n  name \"salsa\"\n       ^\n"
                       "  write a line as: key = value"));
  CHECK(toml_error("key = # INVALID\n") == QStringLiteral("book.toml:1:7: a value is missing here\n  key = # INVALID\n"
                                                          "        ^\n  write one after the =, or remove the line"));
  CHECK(toml_error("= \"no key name\"") ==
        QStringLiteral("book.toml:1:1: a key or a [table] is expected here\n  = \"no key name\"\n  ^\n"
                       "  write a line as: key = value; put a key that has other than a-z, 0-9, - and _ in quotes"));
  CHECK(toml_error("first = \"Tom\" last = \"X\" # INVALID") ==
        QStringLiteral("book.toml:1:15: \"last = \"X\"\" stands after the end of the value\n"
                       "  first = \"Tom\" last = \"X\" # INVALID\n                ^^^^^^^^^^\n"
                       "  write one key a line, decimals with a point, and a number with its unit in quotes"));
}

TEST_CASE("what is stated twice is refused at the second place", "[reader][toml][errors][src:toml-1.0/keys]") {
  CHECK(toml_error("name = \"Tom\"\nname = \"Pradyun\"\n") ==
        QStringLiteral("book.toml:2:1: name is already stated\n  name = \"Pradyun\"\n  ^^^^\n  keep one of the two"));
  CHECK(toml_error("spelling = 1\n\"spelling\" = 2\n") ==
        QStringLiteral(
            "book.toml:2:1: \"spelling\" is already stated\n  \"spelling\" = 2\n  ^^^^^^^^^^\n  keep one of the two"));
  CHECK(toml_error("[fruit]\n[fruit]\n") ==
        QStringLiteral("book.toml:2:1: [fruit] is already stated\n  [fruit]\n  ^^^^^^^\n  keep one of the two"));
  CHECK(toml_error("fruit.apple = 1\nfruit.apple.smooth = true\n") ==
        QStringLiteral("book.toml:2:1: fruit.apple.smooth adds to what is already stated whole\n"
                       "  fruit.apple.smooth = true\n  ^^^^^^^^^^^^^^^^^^\n  write all of it in one place"));
  CHECK(toml_error("a = { b.c = 1, b.c = 2 }\n") ==
        QStringLiteral("book.toml:1:16: b.c is already stated\n  a = { b.c = 1, b.c = 2 }\n                 ^^^\n"
                       "  keep one of the two"));
}

TEST_CASE("faults within a text", "[reader][toml][errors][src:toml-1.0/string]") {
  CHECK(toml_error("a = \"\\q\"") ==
        QStringLiteral("book.toml:1:7: this is not an escape that TOML knows\n  a = \"\\q\"\n"
                       "        ^\n  write \\\\ for a backslash, or put the text in single quotes"));
  CHECK(toml_error("a = \"\\uD800\"") ==
        QStringLiteral("book.toml:1:12: half a surrogate pair is no character\n  a = \"\\uD800\"\n             ^\n"
                       "  write the character itself, or its code as \\UXXXXXXXX"));
  CHECK(toml_error("a = \"b\x01\"") == QString::fromUtf8("book.toml:1:7: a control character stands in this text\n"
                                                         "  a = \"b\xEF\xBF\xBD\"\n        ^\n  remove it"));
  CHECK(toml_error(QString::fromUtf8("a = “salsa”").toUtf8()) ==
        QString::fromUtf8("book.toml:1:5: a typographic quote cannot begin a text\n  a = “salsa”\n      ^^^^^^^\n"
                          "  use the plain quote \""));
}

TEST_CASE("words, numbers and dates that are none", "[reader][toml][errors]") {
  CHECK(toml_error("a = fresh") ==
        QStringLiteral("book.toml:1:5: \"fresh\" is not a value\n  a = fresh\n      ^^^^^\n"
                       "  put text in quotes; a number is written as 12 or 0.5, a date as 2026-02-28"));
  CHECK(toml_error("a = True") == QStringLiteral("book.toml:1:5: \"True\" is not a value\n  a = True\n      ^^^^\n"
                                                 "  write true in small letters"));
  const QString plain = QStringLiteral("\n  write a plain decimal number such as 12 or 0.5, or put the text in quotes");
  CHECK(toml_error("a = 31/02") ==
        QStringLiteral("book.toml:1:5: \"31/02\" is not a number\n  a = 31/02\n      ^^^^^") + plain);
  CHECK(toml_error("a = .7") == QStringLiteral("book.toml:1:5: \".7\" is not a number\n  a = .7\n      ^^") + plain);
  CHECK(toml_error("a = 7.") == QStringLiteral("book.toml:1:5: \"7.\" is not a number\n  a = 7.\n      ^^") + plain);
  CHECK(toml_error("a = 012") ==
        QStringLiteral("book.toml:1:5: \"012\" is not a number\n  a = 012\n      ^^^") + plain);
  CHECK(toml_error("a = 99999999999999999999") ==
        QStringLiteral("book.toml:1:5: \"99999999999999999999\" is too large a number\n  a = 99999999999999999999\n"
                       "      ^^^^^^^^^^^^^^^^^^^^\n  write a plain decimal number such as 1000 or 0.5"));
  CHECK(toml_error("a = 2026-02-30") ==
        QStringLiteral("book.toml:1:5: \"2026-02-30\" is not a date or time\n  a = 2026-02-30\n      ^^^^^^^^^^\n"
                       "  write it as 2026-02-28 or 2026-02-28 14:30:00, or put the text in quotes"));
  CHECK(toml_error("a = 2,5") ==
        QStringLiteral("book.toml:1:6: \",5\" stands after the end of the value\n  a = 2,5\n       ^^\n"
                       "  write one key a line, decimals with a point, and a number with its unit in quotes"));
}

TEST_CASE("numbers that TOML allows and no kitchen writes are refused",
          "[reader][toml][errors][src:toml-1.0/integer]") {
  for (const char* number : {"1_000", "0xDEADBEEF", "0o755", "0b11010110", "inf", "-inf", "nan", "224_617.445"}) {
    const QString word = QString::fromUtf8(number);
    CHECK(toml_error("a = 1\nb = " + QByteArray(number)) ==
          QStringLiteral("book.toml:2:5: \"%1\" is not a plain number\n  b = %1\n      %2\n"
                         "  write a plain decimal number such as 1000 or 0.5")
              .arg(word, QString(word.size(), u'^')));
  }
}

TEST_CASE("lists and inline tables that are not closed as they should be",
          "[reader][toml][errors][src:toml-1.0/array]") {
  CHECK(toml_error("a = [1 2]") ==
        QStringLiteral("book.toml:1:8: a comma or ] is missing here\n  a = [1 2]\n         ^\n"
                       "  put a comma between the items of the list and ] after the last"));
  CHECK(toml_error("a = { x = 1\n}") ==
        QStringLiteral("book.toml:1:12: a comma or } is missing here\n  a = { x = 1\n             ^\n"
                       "  write the whole { } on one line, commas between, none after the last"));
  CHECK(toml_error("a = { x = 1, }") ==
        QStringLiteral("book.toml:1:14: no comma may stand before this }\n  a = { x = 1, }\n"
                       "               ^\n  remove the comma"));
}

TEST_CASE("a fault that is not common is told in the parser's words, with place and remedy", "[reader][toml][errors]") {
  CHECK(toml_error("[a.]\n") ==
        QStringLiteral(
            "book.toml:1:4: this is not TOML: key: expected bare key starting character or string delimiter, saw ']'\n"
            "  [a.]\n     ^\n  write it as TOML 1.0 has it: https://toml.io/en/v1.0.0"));
}

TEST_CASE("nesting is bounded", "[reader][toml][errors]") {
  const QByteArray deep = QByteArray(32, '[') + QByteArray(32, ']');
  CHECK(toml("a = " + deep.mid(1, 62)).entries.size() == 1);
  CHECK(toml_error("a =\t" + QByteArray(33, '[')) ==
        QStringLiteral(
            "book.toml:1:37: lists and tables are nested too deep here\n  a =\t%1\n     \t%2^\n  write it flatter")
            .arg(QString(33, u'['), QString(32, u' ')));
  CHECK(toml("a.a.a.a.a.a.a.a.a.a.a.a.a.a.a.a = 1").entries.size() == 1);
  CHECK(toml_error("a.a.a.a.a.a.a.a.a.a.a.a.a.a.a.a.a = 1") ==
        QStringLiteral("book.toml:1:32: a key has more than 16 parts\n  a.a.a.a.a.a.a.a.a.a.a.a.a.a.a.a.a = 1\n") +
            QString(33, u' ') + QStringLiteral("^\n  remove dots, or put the text in quotes"));
  CHECK(toml("note = \"a.b.c.d.e.f.g.h.i.j.k.l.m.n.o.p.q.r\" # ....................\n").entries.size() == 1);
}

TEST_CASE("bytes that are no text are refused where they stand", "[reader][toml][errors]") {
  CHECK(toml_error("a = 1\nb = \"\xFF\"\n") ==
        QString::fromUtf8("book.toml:2:6: this byte is not UTF-8 text\n"
                          "  b = \"\xEF\xBF\xBD\n       ^\n  save the file as UTF-8"));
  CHECK(toml_error(QByteArray("a\0b", 3)) == QString::fromUtf8("book.toml:1:2: a NUL byte stands in the text\n"
                                                               "  a\xEF\xBF\xBD"
                                                               "b\n   ^\n"
                                                               "  remove it, or save the file as plain UTF-8 text"));
  CHECK(toml_error(QByteArray("\xFF\xFE"
                              "a\0",
                              4)) == QStringLiteral("book.toml: the file is in UTF-16\n  save it as UTF-8"));
  CHECK(toml_error("a=1\r\rb=2") ==
        QString::fromUtf8("book.toml:1:5: a carriage return ends this line without a line feed\n"
                          "  a=1\xEF\xBF\xBD\xEF\xBF\xBD"
                          "b=2\n      ^\n  save the file with line ends LF or CRLF"));
}

TEST_CASE("a file beyond the limit is refused before it is read", "[reader][toml][errors]") {
  CHECK(toml(QByteArray(kMostTomlBytes, '\n')).entries.empty());
  CHECK(toml_error(QByteArray(kMostTomlBytes + 1, '\n')) ==
        QStringLiteral("book.toml: the file has 4194305 bytes, more than the 4194304 that are read\n"
                       "  split it into several files"));
}
