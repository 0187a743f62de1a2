// Walking a table: what is missing, of the wrong kind or unknown, each with its place.
#include "reader/fields.h"

#include "show.h"
#include "texts.h"

using namespace lardiner;
using reader::Fields;
using reader::Value;

namespace {

// A table, its walk and what was found wrong.
struct Walk {
  explicit Walk(const QByteArray& bytes)
      : table(toml(bytes)), fields(table, QStringLiteral("product \"salsa\""), errors) {}

  QString told() const { return problem::text(errors); }

  Value table;
  problem::Errors errors;
  Fields fields;
};

}  // namespace

TEST_CASE("text is taken as it stands; a number, a blank or nothing is not text", "[reader][fields]") {
  Walk walk("name = \" Salsa \"\nlot = 12\nnote = \" \"\n");
  CHECK(walk.fields.text(u"name") == QStringLiteral(" Salsa "));
  CHECK(walk.fields.text(u"absent") == std::nullopt);
  CHECK(walk.told().isEmpty());
  CHECK(walk.fields.text(u"lot") == std::nullopt);
  CHECK(walk.fields.text(u"note") == std::nullopt);
  CHECK(walk.told() ==
        QStringLiteral("book.toml:2:7: product \"salsa\": lot must be text, not a number\n  lot = 12\n        ^^\n"
                       "  put it in quotes\n"
                       "book.toml:3:8: product \"salsa\": note is empty\n  note = \" \"\n         ^^^\n"
                       "  write a value, or leave note out\n"));
}

TEST_CASE("what is required and absent is told once, at the table", "[reader][fields]") {
  Walk walk("[a]\nid = \"x\"\n");
  problem::Errors errors;
  Fields inner(*walk.table.find(u"a"), QStringLiteral("product \"x\""), errors);
  CHECK(inner.required_text(u"id") == QStringLiteral("x"));
  CHECK(inner.required_text(u"name") == std::nullopt);
  CHECK(problem::text(errors) ==
        QStringLiteral("book.toml:1:1: product \"x\" has no name\n  [a]\n  ^^^\n  state name\n"));
  REQUIRE(errors.size() == 1);
  CHECK(errors[0].code == problem::Code::Missing);
}

TEST_CASE("true, false and their words are read, anything else is refused", "[reader][fields]") {
  Walk walk("a = true\nb = false\nc = \"Yes\"\nd = \"NO\"\ne = \"perhaps\"\nf = 1\n");
  CHECK(walk.fields.boolean(u"a") == true);
  CHECK(walk.fields.boolean(u"b") == false);
  CHECK(walk.fields.boolean(u"c") == true);
  CHECK(walk.fields.boolean(u"d") == false);
  CHECK(walk.fields.boolean(u"absent") == std::nullopt);
  CHECK(walk.told().isEmpty());
  CHECK(walk.fields.boolean(u"e") == std::nullopt);
  CHECK(walk.fields.boolean(u"f") == std::nullopt);
  CHECK(walk.told() ==
        QStringLiteral("book.toml:5:5: product \"salsa\": e is neither true nor false\n  e = \"perhaps\"\n"
                       "      ^^^^^^^^^\n  write true or false\n"
                       "book.toml:6:5: product \"salsa\": f is neither true nor false\n  f = 1\n      ^\n"
                       "  write true or false\n"));
}

TEST_CASE("whole numbers within their range are read, others refused", "[reader][fields]") {
  Walk walk("a = 7\nb = \"7\"\nc = 8\nd = 1.5\ne = true\nf = \"9999999999999999999999\"\n");
  CHECK(walk.fields.integer(u"a", 0, 7) == 7);
  CHECK(walk.fields.integer(u"b", 7, 7) == 7);
  CHECK(walk.told().isEmpty());
  for (const char16_t* key : {u"c", u"d", u"e", u"f"})
    CHECK(walk.fields.integer(QStringView(key), 0, 7) == std::nullopt);
  CHECK(
      walk.told() ==
      QStringLiteral("book.toml:3:5: product \"salsa\": c is 8\n  c = 8\n      ^\n  write a whole number from 0 to 7\n"
                     "book.toml:4:5: product \"salsa\": d is not a whole number\n  d = 1.5\n      ^^^\n"
                     "  write a whole number from 0 to 7\n"
                     "book.toml:5:5: product \"salsa\": e is not a whole number\n  e = true\n      ^^^^\n"
                     "  write a whole number from 0 to 7\n"
                     "book.toml:6:5: product \"salsa\": f is not a whole number\n  f = \"9999999999999999999999\"\n"
                     "      ^^^^^^^^^^^^^^^^^^^^^^^^\n  write a whole number from 0 to 7\n"));
}

TEST_CASE("dates are read quoted or bare", "[reader][fields]") {
  Walk walk("a = 2026-02-28\nb = \"2026-02-28\"\nc = \"31/02\"\nd = 5\ne = 2026-02-28 10:00:00\n");
  CHECK(walk.fields.date(u"a") == QDate(2026, 2, 28));
  CHECK(walk.fields.date(u"b") == QDate(2026, 2, 28));
  CHECK(walk.told().isEmpty());
  for (const char16_t* key : {u"c", u"d", u"e"}) CHECK(walk.fields.date(QStringView(key)) == std::nullopt);
  CHECK(walk.told() ==
        QStringLiteral(
            "book.toml:3:5: \"31/02\" is not a date\n  c = \"31/02\"\n      ^^^^^^^\n  write it as 2026-02-28\n"
            "book.toml:4:5: product \"salsa\": d must be a date, not a number\n  d = 5\n      ^\n"
            "  write it as 2026-02-28\n"
            "book.toml:5:5: \"2026-02-28 10:00:00\" is not a date\n  e = 2026-02-28 10:00:00\n"
            "      ^^^^^^^^^^^^^^^^^^^\n  write it as 2026-02-28\n"));
}

TEST_CASE("one text stands for a list of one; a list of anything else is refused item by item", "[reader][fields]") {
  Walk walk("a = [\"milk\", \"egg\"]\nb = \"fish\"\nc = [\"soy\", 1, \"\"]\n");
  CHECK(walk.fields.texts(u"a") == QStringList{QStringLiteral("milk"), QStringLiteral("egg")});
  CHECK(walk.fields.texts(u"b") == QStringList{QStringLiteral("fish")});
  CHECK(walk.fields.texts(u"absent").isEmpty());
  CHECK(walk.told().isEmpty());
  CHECK(walk.fields.texts(u"c") == QStringList{QStringLiteral("soy")});
  CHECK(walk.told() ==
        QStringLiteral("book.toml:3:13: product \"salsa\": c must be text, not a number\n"
                       "  c = [\"soy\", 1, \"\"]\n              ^\n  put it in quotes\n"
                       "book.toml:3:16: product \"salsa\": c is empty\n"
                       "  c = [\"soy\", 1, \"\"]\n                 ^^\n  write a value, or leave c out\n"));
}

TEST_CASE("tables are taken one or several", "[reader][fields]") {
  Walk walk("one = { x = 1 }\nmany = [{ x = 1 }, { x = 2 }]\nbad = [{ x = 1 }, 5]\nword = \"x\"\n");
  CHECK(walk.fields.tables(u"one").size() == 1);
  CHECK(walk.fields.tables(u"many").size() == 2);
  CHECK(walk.fields.table(u"one") != nullptr);
  CHECK(walk.fields.table(u"absent") == nullptr);
  CHECK(walk.told().isEmpty());
  CHECK(walk.fields.tables(u"bad").size() == 1);
  CHECK(walk.fields.table(u"word") == nullptr);
  CHECK(walk.told() ==
        QStringLiteral("book.toml:3:19: product \"salsa\": bad must be a table, not a number\n"
                       "  bad = [{ x = 1 }, 5]\n                    ^\n  write it as [bad] with its keys below\n"
                       "book.toml:4:8: product \"salsa\": word must be a table, not text\n"
                       "  word = \"x\"\n         ^^^\n  write it as [word] with its keys below\n"));
}

TEST_CASE("a key that nobody asked for is told, with the nearest that is known", "[reader][fields]") {
  Walk walk("name = \"x\"\nshelf_lif = 1\nzzz = 2\n");
  walk.fields.text(u"name");
  walk.fields.has(u"shelf_life");
  walk.fields.finish();
  CHECK(walk.told() == QStringLiteral("book.toml:2:1: product \"salsa\" cannot have \"shelf_lif\"\n  shelf_lif = 1\n"
                                      "  ^^^^^^^^^\n  did you mean shelf_life?\n"
                                      "book.toml:3:1: product \"salsa\" cannot have \"zzz\"\n  zzz = 2\n  ^^^\n"
                                      "  what it can have: name, shelf_life\n"));
}

TEST_CASE("a refusal points at the value, or at the table when the key is absent", "[reader][fields]") {
  Walk walk("days = 99\n");
  walk.fields.refuse(u"days", problem::Code::Unsafe, QStringLiteral("99 days is too long"), QStringLiteral("write 7"));
  walk.fields.refuse(u"gone", problem::Code::Missing, QStringLiteral("no gone"), QStringLiteral("state it"));
  CHECK(walk.told() == QStringLiteral("book.toml:1:8: 99 days is too long\n  days = 99\n         ^^\n  write 7\n"
                                      "book.toml: no gone\n  state it\n"));
}

TEST_CASE("a CSV row and a JSON record are walked like a TOML table", "[reader][fields]") {
  problem::Errors errors;
  const auto rows = csv("product,count,fresh\nsalsa,24,TRUE\n").rows;
  Fields row(rows.at(0), QStringLiteral("record"), errors);
  CHECK(row.text(u"product") == QStringLiteral("salsa"));
  CHECK(row.integer(u"count", 1, 100) == 24);
  CHECK(row.boolean(u"fresh") == true);
  CHECK(row.required_text(u"made") == std::nullopt);
  const auto records = json("{\"product\":\"salsa\",\"count\":24.0}");
  Fields record(records.at(0), QStringLiteral("record"), errors);
  CHECK(record.integer(u"count", 1, 100) == std::nullopt);
  CHECK(problem::text(errors) ==
        QStringLiteral("batches.csv:2: record has no made\n  salsa,24,TRUE\n  state made\n"
                       "day.jsonl:1:28: record: count is not a whole number\n"
                       "  {\"product\":\"salsa\",\"count\":24.0}\n                             ^^^^\n"
                       "  write a whole number from 1 to 100\n"));
}
