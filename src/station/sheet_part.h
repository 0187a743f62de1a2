// A work sheet as a page shows it: what it says, without what a hand would tick or write.
#pragma once

#include "facts/work_sheet.h"
#include "station/pages.h"

namespace lardiner::station {

/// What of a row with a line to write on is for paper alone: all of it, or the cell.
enum class ForPaper { Row, Cell };

/// Rows of "HEAD" (TEXT, SIZE) and of "PIECE" (NOTE), in it of "TITLED" (CAPTION) and of "ROW" (MARK, WHAT, REST).
void add_sheet(Part& page, const facts::WorkSheet& sheet, ForPaper left_out);

}  // namespace lardiner::station
