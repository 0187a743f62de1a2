// Work sheets as plain text: columns, boxes, lines to write on, bars of time, and letters of two columns.
#include "command/sheet_text.h"

#include "command/spans_text.h"
#include "command/text_columns.h"
#include "show.h"

using namespace lardiner;
using namespace lardiner::command;
using facts::Cell;
using facts::Column;

namespace {

Cell cell(const char* text) { return {Cell::Kind::Text, QString::fromUtf8(text), {}, false}; }

}  // namespace

TEST_CASE("an ideograph takes two columns of a terminal, an accent that stands over a letter none",
          "[command][sheet_text][src:practice]") {
  CHECK(columns_of(QStringLiteral("butter")) == 6);
  CHECK(columns_of(QStringLiteral("黄油 9")) == 6);
  CHECK(columns_of(QString::fromUtf8("e\u0301")) == 1);
  CHECK(columns_of(QString::fromUtf8("2\u2060kg")) == 3);
  CHECK(padded(QStringLiteral("黄油"), 6) == QStringLiteral("黄油  "));
  CHECK(padded(QStringLiteral("9 kg"), 6, true) == QStringLiteral("  9 kg"));
  CHECK(padded(QStringLiteral("longer"), 3) == QStringLiteral("longer"));
}

TEST_CASE("a text is broken at blanks, and within a word that is wider than its column", "[command][sheet_text]") {
  CHECK(broken(QStringLiteral("one two three"), 7) == QStringList{"one two", "three"});
  CHECK(broken(QStringLiteral("abcdefgh ij"), 3) == QStringList{"abc", "def", "gh", "ij"});
  CHECK(broken(QStringLiteral("黄油黄油"), 5) == QStringList{"黄油", "黄油"});
  CHECK(broken(QString(), 5) == QStringList{""});
}

TEST_CASE("a sheet as text, whole", "[command][sheet_text]") {
  facts::WorkSheet sheet;
  sheet.kind = QStringLiteral("Prep sheet");
  sheet.title = QStringLiteral("Lime butter");
  sheet.amount = QStringLiteral("2 kg");
  sheet.head = {{QStringLiteral("for Mill Road"), false}};
  sheet.fields = {cell("Lot A1"), {Cell::Kind::Blank, QStringLiteral("By"), {}, false}};
  facts::Table table;
  table.caption = QStringLiteral("Into the bowl");
  table.columns = {{Column::Kind::Tick, {}, 1},
                   {Column::Kind::Text, QStringLiteral("Item"), 1},
                   {Column::Kind::Amount, QStringLiteral("Weigh"), 1},
                   {Column::Kind::Blank, QStringLiteral("Lot"), 1}};
  Cell butter = cell("Butter");
  butter.small = {{QStringLiteral("MILK"), true}};
  const Cell tick{Cell::Kind::Tick, {}, {}, false};
  const Cell blank{Cell::Kind::Blank, {}, {}, false};
  table.rows = {{{tick, butter, cell("1.942 kg"), blank}, false},
                {{cell("CLEAN DOWN"), {Cell::Kind::Blank, QStringLiteral("By"), {}, false}}, true},
                {{tick, cell("Zest"), cell("58 g"), cell("LZ-1")}, false}};
  sheet.parts = {table, facts::Note{QStringLiteral("Steps"), true}};
  sheet.foot = {QStringLiteral("Wash hands.")};
  CHECK(text(sheet) ==
        "Prep sheet\n"
        "Lime butter  2 kg\n"
        "for Mill Road\n"
        "Lot A1  By ____\n"
        "\n"
        "Into the bowl\n"
        "     Item       Weigh  Lot\n"
        "[ ]  Butter  1.942 kg  ____\n"
        "     MILK\n"
        "-- CLEAN DOWN  By ____\n"
        "[ ]  Zest        58 g  LZ-1\n"
        "\n"
        "Steps\n"
        "\n"
        "Wash hands.\n");
}

TEST_CASE("a start window as a bar: its start, what follows, and where nothing bounds it", "[command][sheet_text]") {
  facts::Spans spans;
  spans.caption = QStringLiteral("When");
  spans.length = 59;  // a letter each
  spans.marks = {
      {0, QStringLiteral("06:00"), true}, {3, QStringLiteral("07:00"), false}, {20, QStringLiteral("12:00"), false}};
  spans.spans = {{QStringLiteral("Butter"), 0, 6, 9, 0, false}, {QStringLiteral("Rub"), 2, 5, 6, 4, true}};
  spans.notes = {QStringLiteral("Not known: ovens.")};
  CHECK(text(spans) ==
        "When\n"
        "        |06:00              |12:00\n"
        "           |07:00\n"
        "Butter  *======---\n"
        "Rub       <=*=-\n" +
            bar_key() +
            "\n"
            "Not known: ovens.\n");
}
