// One row of a table as a block: texts on one baseline, boxes to tick and lines to write on.
#pragma once

#include "paper/work_block.h"
#include "paper/work_columns.h"

namespace lardiner::paper {

/// A row of cells, with a thin rule beneath; as low as its small lines allow. REQUIRES: `columns` of its table.
WorkBlock set_row(const facts::Row& row, const facts::Table& table, const Columns& columns, const Frame& frame);

/// A band over the whole width, heavy rules around a strong one. Refused: a word wider than the band.
problem::Expected<WorkBlock> set_band(const facts::Row& row, const Frame& frame);

/// The columns' headings over a rule; without words the rule alone.
WorkBlock set_headings(const facts::Table& table, const Columns& columns, const Frame& frame);

/// A line to write on, from x on; its text, if any, before it, and small lines beneath that. The first baseline is at
/// `baseline`. REQUIRES: each word fits the width.
struct Blank {
  const facts::Cell& cell;
  Type type;
  double x = 0, width = 0;
};
void draw_blank(Drawing& to, const Blank& blank, const Frame& frame, double baseline);

}  // namespace lardiner::paper
