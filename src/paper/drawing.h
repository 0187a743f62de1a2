// The drawing list of a page: boxes, codes and text runs, the one thing that every output format draws.
#pragma once

#include <QByteArray>
#include <QString>
#include <vector>

#include "paper/face.h"
#include "paper/units.h"

namespace lardiner::paper {

enum class Ink { Black, White };

/// A page of whole dots.
struct PageSize {
  Dots width;
  Dots height;
  Resolution resolution;
  friend constexpr bool operator==(PageSize, PageSize) = default;
};

/// A filled rectangle on the dot grid, from the page's top left; a rule is a box one or more dots thick.
struct Box {
  Dots x, y;
  Dots width, height;
  Ink ink = Ink::Black;
};

/// A matrix code's modules: rows from the top, each padded to whole bytes, most significant bit left, 1 is dark.
struct CodeImage {
  int modules = 0;  ///< a side, without the quiet zone
  QByteArray rows;

  int row_bytes() const { return (modules + 7) / 8; }
  /// REQUIRES: 0 <= x < modules and 0 <= y < modules; x from the left, y from the top.
  bool dark(int x, int y) const { return (rows[y * row_bytes() + x / 8] & (0x80 >> x % 8)) != 0; }
};

/// A code on the dot grid; (x, y) is the top left module's. Its quiet zone is the white paper around it: the layout
/// keeps it free.
struct Code {
  Dots x, y;
  Dots module;  ///< dots a module
  CodeImage image;
};

/// A text in one line and one face, from the page's top left to the start of its baseline.
struct TextRun {
  FaceId face = FaceId::AtkinsonRegular;
  Points size;
  FineDots x;
  FineDots baseline;
  QString text;
  Ink ink = Ink::Black;
};

/// Drawn in this order: boxes, codes, texts; within each list as listed.
struct Drawing {
  std::vector<Box> boxes;
  std::vector<Code> codes;
  std::vector<TextRun> texts;
};

}  // namespace lardiner::paper
