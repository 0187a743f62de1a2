// How wide the columns of a table are, and in which sizes its rows are set so that all of them fit.
#pragma once

#include "facts/work_sheet.h"
#include "paper/work_text.h"

namespace lardiner::paper {

struct ColumnPlace {
  int x = 0, width = 0;
};

struct Columns {
  RowSizes sizes;
  std::vector<ColumnPlace> places;  ///< one for each column of the table
};

/// The type of a cell's text in a column of this kind.
Type type_of(const facts::Cell& cell, facts::Column::Kind column, const RowSizes& sizes);
/// That of a line beneath a text: a large one is as large as the items.
Type type_of(const facts::SmallLine& line, const RowSizes& sizes);
/// Where there are no items: a large one is as small as any.
Type type_of(const facts::SmallLine& line);

/// What a cell needs beside its words: the box to tick before them, the least line to write on behind them.
int beside_words(facts::Cell::Kind kind);

/// In the largest sizes, or the smallest of a table that is carried. Amounts stand whole on one line and texts in
/// columns of some words' width; where there is no room for that, the sizes give way, then the widths, down to the
/// widest word. Refused: a word that still does not fit, or a row of more cells than columns.
problem::Expected<Columns> columns_of(const facts::Table& table, const Frame& frame);

}  // namespace lardiner::paper
