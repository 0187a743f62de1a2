// CSV: the rules of RFC 4180, what spreadsheets write, and what is refused.
#include <random>

#include "show.h"
#include "texts.h"

using namespace lardiner::reader;

namespace {

QString field(const CsvRows& read, size_t row, QStringView column) {
  const Value* found = read.rows.at(row).find(column);
  return found == nullptr ? QStringLiteral("(absent)") : found->text;
}

}  // namespace

TEST_CASE("each record is on a line of its own, ended by CRLF, or LF", "[reader][csv][src:rfc-4180/2.1]") {
  for (const char* bytes : {"a,b\r\naaa,bbb\r\nzzz,yyy\r\n", "a,b\naaa,bbb\nzzz,yyy\n"}) {
    const CsvRows read = csv(bytes);
    REQUIRE(read.rows.size() == 2);
    CHECK(field(read, 0, u"b") == QStringLiteral("bbb"));
    CHECK(field(read, 1, u"b") == QStringLiteral("yyy"));
  }
}

TEST_CASE("the last record may have no line break", "[reader][csv][src:rfc-4180/2.2]") {
  CHECK(field(csv("a,b\r\nzzz,yyy"), 0, u"b") == QStringLiteral("yyy"));
}

TEST_CASE("the first row names the columns, in any case and with blanks around", "[reader][csv][src:rfc-4180/2.3]") {
  const CsvRows read = csv(" Product ,\"MADE At\"\nsalsa,2026-02-28\n");
  CHECK(field(read, 0, u"product") == QStringLiteral("salsa"));
  CHECK(field(read, 0, u"made at") == QStringLiteral("2026-02-28"));
  CHECK(csv("product\n").rows.empty());
}

TEST_CASE("column names are lower-cased alike in every locale", "[reader][csv]") {
  CHECK(field(csv("MADE IN\nx\n"), 0, u"made in") == QStringLiteral("x"));
}

// RFC 4180 counts the blanks around a field as part of it; hands that type a list do not mean them.
TEST_CASE("blanks around an unquoted field are dropped, within quotes they are kept",
          "[reader][csv][src:rfc-4180/2.4]") {
  const CsvRows read = csv("a,b,c\n  x y\t, \" x \" ,\n");
  CHECK(field(read, 0, u"a") == QStringLiteral("x y"));
  CHECK(field(read, 0, u"b") == QStringLiteral(" x "));
  CHECK(field(read, 0, u"c") == QStringLiteral("(absent)"));
}

TEST_CASE("a short row leaves the rest out; a long one is refused", "[reader][csv][src:rfc-4180/2.4]") {
  CHECK(field(csv("a,b\n1\n"), 0, u"b") == QStringLiteral("(absent)"));
  CHECK(csv_error("a,b\n1,2,3\n4,5\n1,2,3,4\n") ==
        QStringLiteral("batches.csv:2:5: the row has more fields than the 2 columns of the header\n  1,2,3\n      ^\n"
                       "  quote a field that contains a comma, or name the column in the first row\n"
                       "batches.csv:4:5: the row has more fields than the 2 columns of the header\n  1,2,3,4\n      ^\n"
                       "  quote a field that contains a comma, or name the column in the first row\n"));
}

TEST_CASE("fields may be quoted; a quote within an unquoted one is refused", "[reader][csv][src:rfc-4180/2.5]") {
  CHECK(field(csv("\"a\",\"b\"\n\"aaa\",\"bbb\"\n"), 0, u"b") == QStringLiteral("bbb"));
  CHECK(csv_error("a,b\n12\" tray,1\nx,\"y\"z\nok,ok\n") ==
        QStringLiteral(
            "batches.csv:2:3: a quote stands within a field that does not begin with one\n  12\" tray,1\n    ^\n"
            "  put the whole field in quotes and double the quotes within: \"12\"\" tray\"\n"
            "batches.csv:3:5: more text follows the quote that closes this field\n  x,\"y\"z\n      ^\n"
            "  put the whole field in quotes and double the quotes within: \"12\"\" tray\"\n"));
}

TEST_CASE("quoted fields may hold line breaks, quotes and commas", "[reader][csv][src:rfc-4180/2.6]") {
  const CsvRows read = csv("a,b\r\n\"b \r\nbb\",\"c,c\"\r\nzzz,yyy\r\n");
  REQUIRE(read.rows.size() == 2);
  CHECK(field(read, 0, u"a") == QStringLiteral("b \r\nbb"));
  CHECK(field(read, 0, u"b") == QStringLiteral("c,c"));
  CHECK(read.rows[1].place.line == 4);
}

TEST_CASE("a quote within a quoted field is doubled", "[reader][csv][src:rfc-4180/2.7]") {
  CHECK(field(csv("a,b\n\"b\"\"bb\",\"\"\"\"\n"), 0, u"a") == QStringLiteral("b\"bb"));
  CHECK(field(csv("a,b\n\"b\"\"bb\",\"\"\"\"\n"), 0, u"b") == QStringLiteral("\""));
}

TEST_CASE("a quote that is never closed is shown where it opened", "[reader][csv][errors]") {
  CHECK(csv_error("a,b\nx, \"y\n1,2\n3,\"\"4\n") ==
        QStringLiteral("batches.csv:2:4: this quote is never closed\n  x, \"y\n     ^\n"
                       "  close it, or write \"\" for a quote within a quoted field\n"));
  CHECK(csv_error("a,b\n1,2,3\nx, \"y\n1,2\n") ==
        QStringLiteral("batches.csv:2:5: the row has more fields than the 2 columns of the header\n  1,2,3\n      ^\n"
                       "  quote a field that contains a comma, or name the column in the first row\n"
                       "batches.csv:3:4: this quote is never closed\n  x, \"y\n     ^\n"
                       "  close it, or write \"\" for a quote within a quoted field\n"));
}

TEST_CASE("a spreadsheet's file with a mark, CRLF and semicolons is read", "[reader][csv]") {
  const CsvRows read =
      csv("\xEF\xBB\xBF"
          "Product;Made, at;kg\r\nsalsa;28;2,5\r\n;;\r\n\r\n\"a;b\";1;\r\n");
  CHECK(read.semicolons);
  REQUIRE(read.rows.size() == 2);
  CHECK(field(read, 0, u"kg") == QStringLiteral("2,5"));
  CHECK(field(read, 1, u"product") == QStringLiteral("a;b"));
  CHECK(read.rows[0].find(u"product")->key_place.column == 1);
  CHECK(read.rows[0].find(u"kg")->place.column == 10);
}

TEST_CASE("the header row alone chooses the separator, quotes left aside", "[reader][csv]") {
  CHECK_FALSE(csv("\"a;b;c\",d\n1;2;3;4,5\n").semicolons);
  CHECK(field(csv("\"a;b;c\",d\n1;2;3;4,5\n"), 0, u"d") == QStringLiteral("5"));
  CHECK_FALSE(csv("a\n1;2\n").semicolons);
  CHECK(csv_error("a;b\n1;2;3\n") ==
        QStringLiteral("batches.csv:2:5: the row has more fields than the 2 columns of the header\n  1;2;3\n      ^\n"
                       "  quote a field that contains a semicolon, or name the column in the first row\n"));
}

TEST_CASE("columns named twice or not at all are refused; nameless empty ones at the end are passed over",
          "[reader][csv]") {
  CHECK(
      csv_error("lot,,Lot\n1,2,3\n") ==
      QStringLiteral(
          "batches.csv:1: column 2 has no name\n  lot,,Lot\n  name every column in the first row\n"
          "batches.csv:1:6: two columns are named \"lot\"\n  lot,,Lot\n       ^^^\n  rename or remove one of them\n"));
  CHECK(csv("a,b,,\n1,2,,\n").rows.size() == 1);
  CHECK(csv_error("a,b,,\n1,2,,3\n") ==
        QStringLiteral("batches.csv:2:6: the row has more fields than the 2 columns of the header\n  1,2,,3\n       ^\n"
                       "  quote a field that contains a comma, or name the column in the first row\n"));
}

TEST_CASE("a file without a header row is refused", "[reader][csv][errors]") {
  const QString refused =
      QStringLiteral("batches.csv: the file has no header row\n  name the columns in the first row\n");
  CHECK(csv_error("") == refused);
  CHECK(csv_error("\r\n  \r\n") == refused);
}

TEST_CASE("a carriage return alone ends no line", "[reader][csv][errors][src:rfc-4180/2.1]") {
  const QString hint = QStringLiteral("\n  save the file with line ends LF or CRLF\n");
  CHECK(csv_error("a,b\r1,2\r") ==
        QString::fromUtf8("batches.csv:1:4: a carriage return ends this line without a line feed\n"
                          "  a,b\xEF\xBF\xBD"
                          "1,2\xEF\xBF\xBD\n     ^") +
            hint);
  CHECK(csv_error("\"a\"\r\"b\"\n") ==
        QString::fromUtf8("batches.csv:1:4: a carriage return ends this line without a line feed\n"
                          "  \"a\"\xEF\xBF\xBD\"b\"\n     ^") +
            hint);
}

TEST_CASE("bytes that are no text are refused in CSV too", "[reader][csv][errors]") {
  CHECK(csv_error("a\njalape\xF1o\n") ==
        QString::fromUtf8("batches.csv:2:7: this byte is not UTF-8 text\n"
                          "  jalape\xEF\xBF\xBD\n        ^\n  save the file as UTF-8\n"));
  CHECK(csv_error(QByteArray("a\n1\0002\n", 6)) ==
        QString::fromUtf8("batches.csv:2:2: a NUL byte stands in the text\n  1\xEF\xBF\xBD"
                          "2\n   ^\n"
                          "  remove it, or save the file as plain UTF-8 text\n"));
}

TEST_CASE("every field knows its line, its column in letters and its width, quotes included", "[reader][csv][places]") {
  const CsvRows read = csv(QString::fromUtf8("a,b,c\njalapeño, \"x\ny\" ,z\n\nüü,,n\n").toUtf8());
  const Value* z = read.rows.at(0).find(u"c");
  CHECK(z->place.line == 3);
  CHECK(z->place.column == 5);
  CHECK(read.rows[0].find(u"b")->place.line == 2);
  CHECK(read.rows[0].find(u"b")->place.column == 11);
  CHECK(read.rows[0].find(u"b")->place.width == 2);
  CHECK(read.rows[0].place.line == 2);
  CHECK(read.rows[0].place.column == 0);
  CHECK(read.rows[1].find(u"c")->place.line == 5);
  CHECK(read.rows[1].find(u"c")->place.column == 5);
}

TEST_CASE("a fault in a very long line is shown in part, its column being the file's", "[reader][csv][places]") {
  const QByteArray long_line = QByteArray(300, 'x') + "\"" + QByteArray(300, 'y');
  CHECK(csv_error("a\n" + long_line + "\n") ==
        QString::fromUtf8("batches.csv:2:301: a quote stands within a field that does not begin with one\n  …") +
            QString(79, u'x') + u'"' + QString(78, u'y') + QString::fromUtf8("…\n  ") + QString(80, u' ') +
            QStringLiteral("^\n  put the whole field in quotes and double the quotes within: \"12\"\" tray\"\n"));
}

TEST_CASE("a row of very many fields takes no longer than its length", "[reader][csv][places]") {
  QByteArray names = "c0";
  QByteArray fields = "x";
  for (int i = 1; i < 20000; ++i) {
    names += ",c" + QByteArray::number(i);
    fields += ",x";
  }
  const CsvRows read = csv(names + "\n" + fields + "\n");
  CHECK(read.rows.at(0).entries.back().second.place.column == 39999);
  CHECK(read.rows.at(0).entries.back().second.place.shown_from == 39919);
}

TEST_CASE("reading stops after a hundred faults", "[reader][csv][errors]") {
  QByteArray bytes = "a\n";
  for (int i = 0; i < 500; ++i) bytes += "1,2\n";
  CHECK(csv_error(bytes).count(QStringLiteral("more fields")) == static_cast<int>(kMostFaults));
}

TEST_CASE("a table written with proper quoting is read back the same, with both separators",
          "[reader][csv][property]") {
  std::mt19937 random(4180);
  const QStringList letters{QStringLiteral("a"),  QStringLiteral("\""),   QStringLiteral(","),
                            QStringLiteral(";"),  QStringLiteral("\n"),   QStringLiteral("\r\n"),
                            QStringLiteral(" "),  QString::fromUtf8("é"), QString::fromUtf8("🌶"),
                            QStringLiteral("\t"), QStringLiteral("7"),    QStringLiteral("\r")};
  const auto below = [&](size_t n) { return static_cast<qsizetype>(random() % n); };
  for (int round = 0; round < 400; ++round) {
    const QString separator = round % 2 == 0 ? QStringLiteral(",") : QStringLiteral(";");
    QString file =
        QStringList{QStringLiteral("c0"), QStringLiteral("c1"), QStringLiteral("c2")}.join(separator) + u'\n';
    std::vector<QStringList> table;
    for (qsizetype row = 0; row < 1 + below(4); ++row) {
      QStringList cells;
      QStringList written;
      for (int column = 0; column < 3; ++column) {
        QString cell;
        for (qsizetype left = 1 + below(6); left > 0; --left)
          cell += letters[below(static_cast<size_t>(letters.size()))];
        cells.append(cell);
        written.append(u'"' + QString(cell).replace(u'"', QStringLiteral("\"\"")) + u'"');
      }
      table.push_back(cells);
      file += written.join(separator) + (round % 3 == 0 ? QStringLiteral("\r\n") : QStringLiteral("\n"));
    }
    const CsvRows read = csv(file.toUtf8());
    CHECK(read.semicolons == (round % 2 == 1));
    REQUIRE(read.rows.size() == table.size());
    for (size_t row = 0; row < table.size(); ++row)
      for (int column = 0; column < 3; ++column)
        CHECK(field(read, row, QStringLiteral("c%1").arg(column)) == table[row][column]);
  }
}

TEST_CASE("a row that is asked for again, in any order, is the same with the same place",
          "[reader][csv][src:practice]") {
  const QByteArray text = "name, note ,n\n\nbutter,\"two\nlines, \"\"quoted\"\"\",1\r\n  ,,\n ,late,\nsalsa,,2";
  const CsvRows all = csv(text);
  const auto rows = csv_rows(text, QStringLiteral("batches.csv"));
  REQUIRE(rows.has_value());
  REQUIRE(rows->count == 3);
  REQUIRE(all.rows.size() == 3);
  for (const size_t at : {2U, 0U, 1U, 0U}) {
    const Value row = rows->row(at);
    CHECK(row.place == all.rows[at].place);
    REQUIRE(row.entries.size() == all.rows[at].entries.size());
    for (const Entry& entry : row.entries) {
      const Value* same = all.rows[at].find(entry.first);
      REQUIRE(same);
      CHECK(entry.second.text == same->text);
      CHECK(entry.second.place == same->place);
      CHECK(entry.second.key_place == same->key_place);
    }
  }
  CHECK(rows->row(0).find(u"note")->text == "two\nlines, \"quoted\"");
  CHECK(rows->row(1).find(u"note")->place.line == 6);
  CHECK(rows->row(2).find(u"n")->text == "2");
}
