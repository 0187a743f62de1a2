// The picture of a lot's lineage: columns of lots from inputs to outputs, with lines between them.
#pragma once

#include "facts/lineage_picture.h"
#include "paper/drawing.h"
#include "paper/face.h"
#include "paper/work_pages.h"

namespace lardiner::paper {

struct LineageDrawing {
  Drawing drawing;
  PageSize size;  ///< the paper, on its side
};

/// One page on its side. Names, lots and days are never smaller than 9 points; lots for which there is no room are
/// summed up. The lot asked for has a heavy frame; assumed links are dashed. Each line enters a lot at a place of its
/// own; where lines cross without meeting, the upright one is interrupted. Errors: NoGlyph; NoRoom, naming a word that
/// is wider than a column, or notes that leave no room.
problem::ExpectedAll<LineageDrawing> lineage_drawing(const facts::LineagePicture& picture, Paper paper,
                                                     const Faces& faces);

}  // namespace lardiner::paper
