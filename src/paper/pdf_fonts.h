// Embeds the used part of the faces in a libharu document, with cures for what libharu 2.3.0 does wrong.
#pragma once

#include <hpdf.h>

#include <array>

#include "paper/face.h"
#include "paper/pdf_content.h"

namespace lardiner::paper {

class PdfFonts {
 public:
  explicit PdfFonts(const Faces& faces) : faces_(faces) {}

  /// Adds each weight that is used to `resources` under its `font_name`. Returns false when libharu failed; its error
  /// is in the document. The files are read when first needed and kept with the document's faces.
  bool embed(HPDF_Doc document, HPDF_Dict resources, UsedCharacters& used);

 private:
  bool embed(HPDF_Doc document, HPDF_Dict fonts, Weight weight, const std::bitset<0x10000>& used);

  const Faces& faces_;
  std::array<const char*, kWeights.size()> names_{};  // libharu's, once loaded
};

}  // namespace lardiner::paper
