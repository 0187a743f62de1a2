// A page that shows whether a printer puts a sheet's labels where they are: to be held against a sheet of labels.
#pragma once

#include "paper/drawing.h"
#include "paper/face.h"
#include "paper/sheet.h"

namespace lardiner::paper {

/// On the sheet's page: the outline of each place with its number, from 1, as a start position counts them; a cross
/// 10 mm from both edges at each of the paper's corners; along the top and the left edge a ruler in millimetres from
/// the paper's corner, numbered each 10 mm. Lines lie on whole dots, each at its exact length from the edge, rounded
/// once.
Drawing sheet_guide(const Sheet& sheet, const Faces& faces);

}  // namespace lardiner::paper
