// What was chosen for a label, in figures: read off its drawing, so that it is what is printed.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "paper/drawing.h"
#include "paper/face.h"

namespace lardiner::paper {

/// One size of type on a label.
struct TypeSize {
  QString sample;  ///< the first words set in it
  FaceId face = FaceId::AtkinsonRegular;
  Points size;
  FineDots x_height;
};

/// The sizes of type of a drawing, the largest first; equal faces and sizes once.
std::vector<TypeSize> type_sizes(const Faces& faces, const Drawing& drawing, Resolution resolution);

/// A code as it stands on its label.
struct CodeFigures {
  int version = 0;  ///< ISO/IEC 18004
  int modules = 0;  ///< a side
  Dots module;
  double quiet_zone = 0;  ///< modules free all round: to the nearest ink or edge
};

/// Of the drawing's only code; nothing where it has none.
std::optional<CodeFigures> code_figures(const Faces& faces, const Drawing& drawing, PageSize page);

}  // namespace lardiner::paper
