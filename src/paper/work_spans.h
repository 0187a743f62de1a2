// A picture of spans of time as blocks: an axis with its marks, and a row for each span with its bars.
#pragma once

#include "facts/work_sheet.h"
#include "paper/work_block.h"
#include "paper/work_text.h"

namespace lardiner::paper {

/// The axis stands again above the rows of each further page. A row shows the window in which a span can start as an
/// outlined box, without a left end where nothing bounds it; from its planned start a dark bar as long as the work
/// takes; and a thin line from the window's end to when it is ready at the latest. Of marks whose texts would touch,
/// the strong ones come first, in the order of time; a text that has no room is left out, its line is drawn.
/// Errors: NoRoom, naming a word that is wider than its column.
problem::Expected<std::vector<WorkBlock>> set_spans(const facts::Spans& spans, const Frame& frame);

}  // namespace lardiner::paper
