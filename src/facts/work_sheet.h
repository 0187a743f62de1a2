// What a sheet for the hands says, in words, before any layout: prep sheets, assembly sheets and the day's plan.
#pragma once

#include <QString>
#include <QStringList>
#include <variant>
#include <vector>

namespace lardiner::facts {

/// One cell of a table. An empty tick box or a line to write on is a cell too.
struct Cell {
  enum class Kind { Text, Tick, Blank };
  Kind kind = Kind::Text;
  QString text;       ///< of a Blank: what is written before the line, may be empty
  QStringList small;  ///< beneath the text, smaller, a line each: the other system, the second language, allergens
  bool strong = false;
};

struct Column {
  enum class Kind { Text, Amount, Tick, Blank };  ///< an Amount is set large and to the right
  Kind kind = Kind::Text;
  QString heading;  ///< may be empty
  int share = 1;    ///< of the width that amounts and ticks leave
};

/// Cells under the columns; a row is never split over two pages. `band` rows are headings within the table ("Bowl:
/// dry", a clean-down line): their first cell runs over all columns.
struct Row {
  std::vector<Cell> cells;
  bool band = false;
};

struct Table {
  QString caption;  ///< may be empty; stays with its first row, and is repeated with the headings on the next page
  std::vector<Column> columns;
  std::vector<Row> rows;
};

/// A paragraph; a strong one is a heading, and stays with what follows it.
struct Note {
  QString text;
  bool strong = false;
};

/// A picture of spans of time, one under the other on one axis.
struct Spans {
  struct Mark {
    int at = 0;  ///< in [0, length]
    QString text;
    bool strong = false;  ///< the time of the run, a day's begin
  };
  struct Span {
    QString text;
    int from = 0, to = 0;  ///< the window in which it can start
    int end = 0;           ///< when it is ready if started at `to`
    bool open = false;     ///< nothing bounds it before `from`
  };
  QString caption;
  int length = 1;
  std::vector<Mark> marks;
  std::vector<Span> spans;
  QStringList notes;  ///< what the picture does not know
};

using Part = std::variant<Note, Table, Spans>;

struct WorkSheet {
  QString language;  ///< of the document, as Language::tag
  QString title;     ///< largest: "Black-bean filling"
  QString amount;    ///< beside it, as large: "17.6 kg"; may be empty
  QStringList head;  ///< beneath, a line each
  QString running;   ///< on each page: product, lot, day
  QString page_of;   ///< "Page {0} of {1}"
  std::vector<Part> parts;
  QStringList foot;  ///< at the end of the last page: cautions
};

}  // namespace lardiner::facts
