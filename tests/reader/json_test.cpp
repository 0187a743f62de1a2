// JSON Lines: what is read, with its place, and what is refused.
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <random>

#include "show.h"
#include "texts.h"

using namespace lardiner::reader;

namespace {

QString where(const Value& value) {
  return QStringLiteral("%1:%2+%3").arg(value.place.line).arg(value.place.column).arg(value.place.width);
}

// Whether a value as read says what Qt's value says.
bool same(const Value& read, const QJsonValue& written) {
  if (written.isString()) return read.kind == Value::Kind::String && read.text == written.toString();
  if (written.isBool()) return read.kind == Value::Kind::Boolean && read.is_true() == written.toBool();
  if (written.isDouble()) return read.kind == Value::Kind::Number && read.text.toInt() == written.toInt();
  if (written.isArray()) {
    const QJsonArray items = written.toArray();
    bool all = read.kind == Value::Kind::List && static_cast<qsizetype>(read.items.size()) == items.size();
    for (qsizetype i = 0; all && i < items.size(); ++i) all = same(read.items[static_cast<size_t>(i)], items[i]);
    return all;
  }
  const QJsonObject object = written.toObject();
  bool all = read.kind == Value::Kind::Table;
  size_t expected = 0;
  for (auto it = object.begin(); all && it != object.end(); ++it) {
    const Value* found = read.find(it.key());
    if (!it.value().isNull()) ++expected;
    all = it.value().isNull() ? found == nullptr : found != nullptr && same(*found, it.value());
  }
  return all && read.entries.size() == expected;
}

class Inventor {
 public:
  QJsonValue value(int depth) {
    switch (below(depth > 0 ? 6 : 4)) {
      case 0:
        return text();
      case 1:
        return below(100000) - 50000;
      case 2:
        return below(2) == 0;
      case 3:
        return text();
      case 4:
        return list(depth - 1);
      default:
        return object(depth - 1);
    }
  }
  QJsonObject object(int depth) {
    QJsonObject all;
    for (int left = below(5); left > 0; --left) all.insert(text(), below(8) == 0 ? QJsonValue() : value(depth));
    return all;
  }

 private:
  QJsonArray list(int depth) {
    QJsonArray all;
    for (int left = below(4); left > 0; --left) all.append(value(depth));
    return all;
  }
  QString text() {
    static const QStringList kLetters{QStringLiteral("a"),    QStringLiteral("\""),      QStringLiteral("\\"),
                                      QStringLiteral("\n"),   QStringLiteral("{"),       QStringLiteral(":"),
                                      QString::fromUtf8("ñ"), QString::fromUtf8("🌶"), QStringLiteral("\t"),
                                      QStringLiteral("\x01")};
    QString letters;
    for (int left = below(6); left > 0; --left) letters += kLetters[below(static_cast<int>(kLetters.size()))];
    return letters;
  }
  int below(int n) { return static_cast<int>(random_() % static_cast<unsigned>(n)); }

  std::mt19937 random_{8259};
};

}  // namespace

TEST_CASE("each line is one record", "[reader][json][src:json-lines/2]") {
  const std::vector<Value> records = json("{\"product\":\"salsa\"}\n{\"product\":\"rice pudding\"}\n");
  REQUIRE(records.size() == 2);
  CHECK(records[1].find(u"product")->text == QStringLiteral("rice pudding"));
}

TEST_CASE("lines end in LF or CRLF, the last perhaps in neither; blank lines are skipped",
          "[reader][json][src:json-lines/3]") {
  CHECK(json("{}\r\n\r\n  \n{}").size() == 2);
  CHECK(json("").empty());
}

TEST_CASE("a byte order mark is passed over, bytes that are not UTF-8 are refused",
          "[reader][json][src:json-lines/1]") {
  CHECK(json("\xEF\xBB\xBF{\"a\":1}")[0].find(u"a")->place.column == 6);
  CHECK(json_error("{}\n{\"a\":\"\xC3\x28\"}") ==
        QString::fromUtf8("day.jsonl:2:7: this byte is not UTF-8 text\n  {\"a\":\"\xEF\xBF\xBD\n        ^\n"
                          "  save the file as UTF-8\n"));
}

TEST_CASE("values keep their characters, their order and their places", "[reader][json][places][src:rfc-8259/3]") {
  const Value record = json("{\"z\": 1.50, \"a\":true,\"none\":null ,\"in\":[ {\"lot\":\"L\\u00e9\"},[],-1e5 ]}")[0];
  REQUIRE(record.entries.size() == 3);
  CHECK(record.entries[0].first == QStringLiteral("z"));
  CHECK(record.find(u"z")->text == QStringLiteral("1.50"));
  CHECK(where(*record.find(u"z")) == QStringLiteral("1:7+4"));
  CHECK(record.find(u"a")->is_true());
  CHECK(record.find(u"none") == nullptr);
  const Value& in = *record.find(u"in");
  CHECK(in.key_place.column == 35);
  CHECK(in.key_place.width == 4);
  CHECK(where(in) == QStringLiteral("1:40+1"));
  CHECK(where(in.items[0]) == QStringLiteral("1:42+1"));
  CHECK(in.items[0].find(u"lot")->text == QString::fromUtf8("Lé"));
  CHECK(where(*in.items[0].find(u"lot")) == QStringLiteral("1:49+9"));
  CHECK(where(in.items[1]) == QStringLiteral("1:60+1"));
  CHECK(in.items[2].text == QStringLiteral("-1e5"));
  CHECK(record.place.column == 0);
}

TEST_CASE("a key given twice in a record is refused", "[reader][json][errors][src:rfc-8259/4]") {
  CHECK(json_error("{\"a\":1,\"a\":2}") ==
        QStringLiteral("day.jsonl:1:8: \"a\" is already stated in this record\n  {\"a\":1,\"a\":2}\n         ^^^\n"
                       "  keep one of the two\n"));
  CHECK(json_error("{\"a\":null,\"\\u0061\":2}") ==
        QStringLiteral("day.jsonl:1:11: \"a\" is already stated in this record\n  {\"a\":null,\"\\u0061\":2}\n"
                       "            ^^^^^^^^\n  keep one of the two\n"));
  CHECK(json("{\"a\":{\"a\":1},\"b\":{\"a\":2}}").size() == 1);
}

TEST_CASE("a line that is no object is refused, and every bad line is told",
          "[reader][json][errors][src:json-lines/2]") {
  const QString no_object = QStringLiteral("a record is an object in braces\n  ");
  const QString hint = QStringLiteral("\n  write each line as {\"key\": value}\n");
  CHECK(json_error("[1]\n{\"a\":1}\n\"x\"\n null\n7") ==
        QStringLiteral("day.jsonl:1:1: ") + no_object + QStringLiteral("[1]\n  ^") + hint +
            QStringLiteral("day.jsonl:3:1: ") + no_object + QStringLiteral("\"x\"\n  ^^^") + hint +
            QStringLiteral("day.jsonl:4:2: ") + no_object + QStringLiteral(" null\n   ^^^^") + hint +
            QStringLiteral("day.jsonl:5:1: ") + no_object + QStringLiteral("7\n  ^") + hint);
}

TEST_CASE("a record that goes on over the line is refused", "[reader][json][errors][src:json-lines/3]") {
  CHECK(json_error("{\"a\":1") ==
        QStringLiteral("day.jsonl:1:7: the line ends within the record\n  {\"a\":1\n        ^\n"
                       "  write each record whole on one line\n"));
  CHECK(json_error("{\"a\":\"b}") ==
        QStringLiteral("day.jsonl:1:6: this text is never closed\n  {\"a\":\"b}\n       ^^^\n"
                       "  end it with \" on the same line\n"));
}

TEST_CASE("faults of syntax are told with place and remedy", "[reader][json][errors][src:rfc-8259/2]") {
  const auto first = [](const char* bytes) { return json_error(bytes); };
  CHECK(first("{} {}") == QStringLiteral("day.jsonl:1:4: more text follows the record\n  {} {}\n     ^\n"
                                         "  write one record a line\n"));
  CHECK(first("{'a':1}") == QStringLiteral("day.jsonl:1:2: a key in double quotes is expected here\n  {'a':1}\n   ^\n"
                                           "  write \"key\": value, and no comma after the last\n"));
  CHECK(first("{\"a\" 1}") == QStringLiteral("day.jsonl:1:6: a : is missing here\n  {\"a\" 1}\n       ^\n"
                                             "  write \"key\": value\n"));
  CHECK(first("{\"a\":1 \"b\":2}") ==
        QStringLiteral("day.jsonl:1:8: a comma or } is missing here\n  {\"a\":1 \"b\":2}\n"
                       "         ^\n  put a comma between entries\n"));
  CHECK(first("{\"a\":[1 2]}") ==
        QStringLiteral("day.jsonl:1:9: a comma or ] is missing here\n  {\"a\":[1 2]}\n          ^\n"
                       "  put a comma between the items of a list\n"));
  CHECK(first("{\"a\":}") == QStringLiteral("day.jsonl:1:6: a value is missing here\n  {\"a\":}\n       ^\n"
                                            "  write one, or leave the key out\n"));
  CHECK(first("{\"a\":[1,null]}") ==
        QStringLiteral("day.jsonl:1:9: null stands in a list\n  {\"a\":[1,null]}\n          ^^^^\n"
                       "  leave it out\n"));
}

TEST_CASE("values that JSON does not have are refused whole", "[reader][json][errors][src:rfc-8259/6]") {
  for (const char* word : {"tru", "NaN", "1.", "-", "1e", "salsa", "True", "+1", ".5", "Infinity"}) {
    const QString letters = QString::fromUtf8(word);
    CHECK(json_error("{\"a\":" + QByteArray(word) + "}") ==
          QStringLiteral("day.jsonl:1:6: \"%1\" is not a JSON value\n  {\"a\":%1}\n       %2\n"
                         "  put text in double quotes; a number is written as 12 or 0.5\n")
              .arg(letters, QString(letters.size(), u'^')));
  }
}

TEST_CASE("faults within a text are refused", "[reader][json][errors][src:rfc-8259/7]") {
  CHECK(json_error("{\"a\":\"\\q\"}") ==
        QStringLiteral("day.jsonl:1:7: this is not an escape that JSON knows\n  {\"a\":\"\\q\"}\n        ^\n"
                       "  write \\\\ for a backslash\n"));
  CHECK(json_error("{\"a\":\"x\ty\"}") ==
        QStringLiteral("day.jsonl:1:8: a control character stands in this text\n  {\"a\":\"x\ty\"}\n         ^\n"
                       "  remove it, or write a tab as \\t\n"));
  CHECK(json_error("{\"a\":\"\\u12\"}") ==
        QStringLiteral("day.jsonl:1:7: \\u needs four hexadecimal digits\n  {\"a\":\"\\u12\"}\n"
                       "        ^\n  write the character itself\n"));
}

TEST_CASE("half a surrogate pair is refused, a whole one read", "[reader][json][errors][src:rfc-8259/8.2]") {
  CHECK(json("{\"a\":\"\\ud83c\\udf36\"}")[0].find(u"a")->text == QString::fromUtf8("🌶"));
  CHECK(json_error("{\"a\":\"\\ud83c\"}") ==
        QStringLiteral("day.jsonl:1:7: half a surrogate pair is no character\n"
                       "  {\"a\":\"\\ud83c\"}\n        ^\n  write the character itself\n"));
  CHECK(json_error("{\"a\":\"\\udf36\"}") ==
        QStringLiteral("day.jsonl:1:6: half a surrogate pair is no character\n"
                       "  {\"a\":\"\\udf36\"}\n       ^^^^^^^^\n  write the character itself\n"));
}

TEST_CASE("nesting beyond 32 is refused", "[reader][json][errors][src:rfc-8259/9]") {
  const auto nested = [](int lists) { return "{\"a\":" + QByteArray(lists, '[') + QByteArray(lists, ']') + "}"; };
  CHECK(json(nested(31)).size() == 1);
  CHECK(json_error(nested(32)) == QStringLiteral("day.jsonl:1:37: the record is nested deeper than 32\n  ") +
                                      QString::fromUtf8(nested(32)) + u'\n' + QString(38, u' ') +
                                      QStringLiteral("^\n  write it flatter\n"));
}

TEST_CASE("what Qt writes as JSON Lines is read back the same", "[reader][json][property]") {
  Inventor inventor;
  for (int round = 0; round < 400; ++round) {
    const QJsonObject written = inventor.object(4);
    const QByteArray line = QJsonDocument(written).toJson(QJsonDocument::Compact);
    if (line.contains("null]") || line.contains("[null") || line.contains(",null,")) continue;
    CAPTURE(line.toStdString());
    const std::vector<Value> read = json(line + "\n");
    REQUIRE(read.size() == 1);
    CHECK(same(read[0], written));
  }
}

TEST_CASE("a record that is asked for again, in any order, is the same with the same place",
          "[reader][json][src:practice]") {
  const auto rows =
      json_rows("{\"n\": 1}\n\n{\"n\": 2, \"list\": [{\"a\": \"b\"}]}\n{\"n\": 3}", QStringLiteral("day.jsonl"));
  REQUIRE(rows.has_value());
  REQUIRE(rows->count == 3);
  for (const size_t at : {2U, 1U, 0U, 1U}) CHECK(rows->row(at).find(u"n")->text == QString::number(at + 1));
  CHECK(rows->row(1).place.line == 3);
  CHECK(rows->row(1).find(u"list")->items.front().find(u"a")->text == "b");
}
