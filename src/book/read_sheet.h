// A sheet of labels in the book: its paper, columns and rows, margins and gaps.
#pragma once

#include "book/kitchen.h"
#include "book/tables.h"
#include "reader/fields.h"

namespace lardiner::book {

/// The sheet's keys of a medium whose label size has been read. Refuses each key that lacks, a paper that nobody knows,
/// and labels that do not fit on their paper.
Sheet read_sheet(reader::Fields& fields, const Media& label, const Context& context);

/// Of a roll: none of the sheet's keys.
void refuse_sheet_keys(reader::Fields& fields);

/// Of a form that nobody knows: they may be right.
void pass_sheet_keys(reader::Fields& fields);

}  // namespace lardiner::book
