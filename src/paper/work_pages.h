// A work sheet on pages: what hands read on a wall at a metre.
#pragma once

#include <vector>

#include "facts/work_sheet.h"
#include "paper/drawing.h"
#include "paper/face.h"
#include "problem/error.h"

namespace lardiner::paper {

/// The paper of an office's printer, upright.
enum class Paper { A4, Letter };

/// The size of a page in dots of 300 to the inch. Sources: ISO 216 (210 x 297 mm), ANSI/ASME Y14.1 (8.5 x 11 in).
PageSize page_size(Paper paper);

/// The sheet on as many pages as it needs, each with its title or running line and "page n of N". No row is split, no
/// heading stands alone at a page's end, nothing is clipped. Errors: NoGlyph; NoRoom where a row is taller than a page
/// or a word wider than its column, naming it.
problem::ExpectedAll<std::vector<Drawing>> lay_out(const facts::WorkSheet& sheet, Paper paper, const Faces& faces);

/// A picture of spans of time by itself, at the width of an A4 page's print.
struct SpansPicture {
  Drawing drawing;
  PageSize size;
};
problem::ExpectedAll<SpansPicture> spans_picture(const facts::Spans& spans, const Faces& faces);

}  // namespace lardiner::paper
