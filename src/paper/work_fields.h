// Fields in a line over the whole width: texts, and captions with lines to write on.
#pragma once

#include "facts/work_sheet.h"
#include "paper/work_block.h"
#include "paper/work_text.h"

namespace lardiner::paper {

/// As many lines as they need; lines to write on share what is left over. Errors: NoRoom, naming a word.
problem::Expected<WorkBlock> set_fields(const std::vector<facts::Cell>& fields, const Frame& frame);

}  // namespace lardiner::paper
