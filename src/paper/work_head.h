// What stands above the parts of a work sheet on its first page: kind, title and amount, lines beneath, fields.
#pragma once

#include "facts/work_sheet.h"
#include "paper/work_block.h"
#include "paper/work_text.h"

namespace lardiner::paper {

/// Errors: NoRoom, naming a word that is wider than the page's print.
problem::Expected<WorkBlock> set_head(const facts::WorkSheet& sheet, const Frame& frame);

}  // namespace lardiner::paper
