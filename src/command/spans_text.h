// Start windows as plain text: a bar of letters for each.
#pragma once

#include <QString>

#include "facts/work_sheet.h"

namespace lardiner::command {

/// A bar for each span, with a key to its letters; notes and marks as they are. Ends with a newline.
QString text(const facts::Spans& spans);

/// What the letters of a bar say.
QString bar_key();

}  // namespace lardiner::command
