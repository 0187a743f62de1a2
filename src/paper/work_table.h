// A table as blocks: caption and headings with the first row, and again above the rows of each further page.
#pragma once

#include "facts/work_sheet.h"
#include "paper/work_block.h"
#include "paper/work_columns.h"

namespace lardiner::paper {

/// `columns`: of this table, or of several alike that shall look alike. Errors: NoRoom, naming a word that is wider
/// than the page's print.
problem::Expected<std::vector<WorkBlock>> set_table(const facts::Table& table, const Columns& columns,
                                                    const Frame& frame);

/// A heading over what follows it: of a section, a table, a picture.
problem::Expected<WorkBlock> set_heading(const QString& text, const Frame& frame);

/// The one under the other.
WorkBlock joined(WorkBlock upper, const WorkBlock& lower);

}  // namespace lardiner::paper
