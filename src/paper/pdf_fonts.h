// Embeds the used part of the faces in a libharu document.
#pragma once

#include <hpdf.h>

#include <array>
#include <bitset>

#include "paper/face.h"
#include "paper/pdf_content.h"

namespace lardiner::paper {

/// libharu reads the faces and cuts out the used outlines; the dictionaries around them are written here, since those
/// of libharu 2.3.0 lose parts of composite glyphs, map the text back wrongly (nobody can copy or search it), and
/// describe all 65,536 codes, which takes longer than everything else on a label.
class PdfFonts {
 public:
  explicit PdfFonts(const Faces& faces) : faces_(faces) {}

  /// Adds each face that is used to `resources` under its `font_name`. Returns false when libharu failed; its error
  /// is in the document. A file is read when a document first needs it and kept with the document's faces.
  bool embed(HPDF_Doc document, HPDF_Dict resources, const UsedCharacters& used);

 private:
  HPDF_FontDef loaded(HPDF_Doc document, FaceId face);

  const Faces& faces_;
  std::array<HPDF_FontDef, kFaces.size()> loaded_{};
};

}  // namespace lardiner::paper
