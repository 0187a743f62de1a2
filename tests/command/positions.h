// Where everything stands on the pages of a PDF, as MuPDF reads it from the file: boxes, codes and the ink of letters.
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "paper/face.h"
#include "program.h"

namespace lardiner::command {

/// In dots from the page's top left.
struct Area {
  double left = 0, top = 0, right = 0, bottom = 0;

  bool meets(const Area& other) const;
  bool holds(const Area& other) const;
  Area grown(double by) const { return {left - by, top - by, right + by, bottom + by}; }
};

/// One letter (its advance by the height of its ink), or the place of one box or code.
struct Mark {
  enum class Kind { Box, Code, Letter } kind = Kind::Box;
  Area area;
  bool white = false;
  QString letter;  ///< of a Letter
};

/// The marks of one page, in the order drawn.
struct DrawnPage {
  int number = 0;
  std::vector<Mark> marks;
};

/// Reads all pages of a PDF with `mutool trace`; `dots_per_inch` is the medium's. Letters take their ink from the
/// faces' own glyphs.
std::vector<DrawnPage> drawn_pages(const Folder& folder, const QString& pdf, int dots_per_inch,
                                   const paper::Faces& faces);

/// What no label may do, each fault in words: ink outside `printable`, letters that touch, letters
/// over a code or in its quiet zone of four modules, black letters on a black box, white ones beside it, two codes or a
/// code and a box that meet. `module` is the code's dots a module.
QStringList faults(const DrawnPage& page, const Area& printable, double module);

}  // namespace lardiner::command
