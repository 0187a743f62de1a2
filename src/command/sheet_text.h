// A work sheet as plain text, for a terminal of fixed-width letters.
#pragma once

#include <QString>

#include "facts/work_sheet.h"

namespace lardiner::command {

/// Everything that the sheet says, in its order; tables in columns, a box to tick as [ ], a line to write on as ____.
/// Lines are as long as the longest row needs; long texts are broken in their column. Ends with a newline.
QString text(const facts::WorkSheet& sheet);

}  // namespace lardiner::command
