// A work sheet with every text as it will be printed.
#pragma once

#include "facts/work_sheet.h"
#include "paper/face.h"

namespace lardiner::paper {

/// Every text composed (`Faces::printable`). Errors: NoGlyph, Machine, each naming the text it is in.
problem::ExpectedAll<facts::WorkSheet> printable(const facts::WorkSheet& sheet, const Faces& faces);
problem::ExpectedAll<facts::Spans> printable(const facts::Spans& spans, const Faces& faces);

}  // namespace lardiner::paper
