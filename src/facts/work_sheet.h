// What a sheet for the hands says, in words, before any layout: prep sheets, assembly sheets and the day's plan.
#pragma once

#include <QString>
#include <QStringList>
#include <variant>
#include <vector>

namespace lardiner::facts {

/// Set smaller, on a line of its own beneath what it belongs to: the other system of units, the second language,
/// allergens (strong).
struct SmallLine {
  QString text;
  bool strong = false;
  bool large = false;  ///< beneath an item of a table, as large as that: what must not be overlooked
  friend bool operator==(const SmallLine&, const SmallLine&) = default;
};

/// One cell of a table. An empty tick box and a line to write on are cells too.
struct Cell {
  enum class Kind { Text, Tick, Blank };
  Kind kind = Kind::Text;
  QString text;  ///< of a Blank: what is written before the line; may be empty
  std::vector<SmallLine> small;
  bool strong = false;
};

struct Column {
  enum class Kind {
    Text,
    Amount,  ///< set large, to the right, as wide as its widest cell
    Tick,
    Blank  ///< a line to write on, or a text in its place
  };
  Kind kind = Kind::Text;
  QString heading;  ///< may be empty
  int share = 1;    ///< of the width that amounts and ticks leave to texts and blanks
};

/// Cells under the columns; a row is never split over two pages. Of a band (a clean-down line, a heading within the
/// table) the first cell runs over all columns; a second, if any, is a Blank at its right end.
struct Row {
  std::vector<Cell> cells;
  bool band = false;
};

struct Table {
  QString caption;  ///< may be empty; stays with the first row, and stands again above the rows of the next page
  std::vector<Column> columns;
  std::vector<Row> rows;
  bool carried = false;  ///< read in the hand, not on the wall: set smaller
};

/// A paragraph; a strong one is a heading and stays with what follows it.
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
    int end = 0;           ///< when it is ready if it is started at `to`
    int start = 0;         ///< when the plan starts it, within the window
    bool open = false;     ///< nothing bounds it before `from`
  };
  QString caption;
  int length = 1;  ///< of the axis, in any unit: marks and spans are in it
  std::vector<Mark> marks;
  std::vector<Span> spans;
  QStringList notes;  ///< how to read it, and what it does not know
};

using Part = std::variant<Note, Table, Spans>;

struct WorkSheet {
  QString language;             ///< of the document, as words::Language::tag
  QString kind;                 ///< small, above the title: "Prep sheet"
  QString title;                ///< largest: "Black-bean filling"
  QString amount;               ///< beside it, as large: "17.6 kg"; may be empty
  std::vector<SmallLine> head;  ///< beneath, a line each
  std::vector<Cell> fields;     ///< one line of texts and blanks beneath the head: lot, begun, ended, by
  QString running;              ///< on each page: product, lot, day
  QString page_of;              ///< "Page {0} of {1}"
  std::vector<Part> parts;
  QStringList foot;  ///< at the end of the last page: cautions
};

}  // namespace lardiner::facts
