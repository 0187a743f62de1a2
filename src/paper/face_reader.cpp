// Reads one TrueType file into a Face: what measuring and the PDF need of it.
#include "paper/face_reader.h"

#include <QFile>

#include "paper/free_type.h"
#include FT_OUTLINE_H
#include FT_TRUETYPE_TABLES_H

namespace lardiner::paper {

namespace {

problem::Error unusable(const QString& file, const QString& why) {
  return {problem::Code::Machine,
          QStringLiteral("the face %1 %2").arg(file, why),
          {},
          QStringLiteral("install Lardiner again: its fonts folder belongs to it")};
}

Glyph glyph_of(FT_Face face, FT_UInt id) {
  Glyph glyph;
  if (FT_Load_Glyph(face, id, FT_LOAD_NO_SCALE) != 0) return glyph;
  FT_BBox ink;
  FT_Outline_Get_CBox(&face->glyph->outline, &ink);
  glyph.id = static_cast<std::uint16_t>(id);
  glyph.advance = static_cast<std::uint16_t>(face->glyph->metrics.horiAdvance);
  glyph.bottom = static_cast<std::int16_t>(ink.yMin);
  glyph.top = static_cast<std::int16_t>(ink.yMax);
  return glyph;
}

std::vector<std::uint16_t> direct_parts(FT_Face face, FT_UInt id) {
  std::vector<std::uint16_t> parts;
  if (FT_Load_Glyph(face, id, FT_LOAD_NO_SCALE | FT_LOAD_NO_RECURSE) != 0) return parts;
  if (face->glyph->format != FT_GLYPH_FORMAT_COMPOSITE) return parts;
  for (FT_UInt n = 0; n < face->glyph->num_subglyphs; ++n) {
    FT_Int part = 0, first = 0, second = 0;
    FT_UInt flags = 0;
    FT_Matrix transform;
    if (FT_Get_SubGlyph_Info(face->glyph, n, &part, &flags, &first, &second, &transform) == 0)
      parts.push_back(static_cast<std::uint16_t>(part));
  }
  return parts;
}

void read_heights(FT_Face from, Face& to) {
  const double em = from->units_per_EM;
  to.units_per_em = from->units_per_EM;
  to.ascent = from->ascender / em;
  to.descent = -from->descender / em;
  if (const auto* os2 = static_cast<const TT_OS2*>(FT_Get_Sfnt_Table(from, FT_SFNT_OS2))) {
    to.x_height = os2->sxHeight / em;
    to.cap_height = os2->sCapHeight / em;
  }
}

}  // namespace

problem::Expected<Face> FaceReader::read(const QString& file) {
  FT_Library raw_library = nullptr;
  if (FT_Init_FreeType(&raw_library) != 0) return tl::unexpected(unusable(file, QStringLiteral("needs more memory")));
  const Library library(raw_library);
  FT_Face raw_face = nullptr;
  if (FT_New_Face(library.get(), QFile::encodeName(file).constData(), 0, &raw_face) != 0)
    return tl::unexpected(unusable(file, QStringLiteral("cannot be read")));
  const OpenFace open(raw_face);
  if (!FT_IS_SFNT(raw_face) || FT_Select_Charmap(raw_face, FT_ENCODING_UNICODE) != 0)
    return tl::unexpected(unusable(file, QStringLiteral("has no Unicode character map")));

  Face face;
  face.file = file;
  face.postscript_name = FT_Get_Postscript_Name(raw_face);
  read_heights(raw_face, face);
  if (face.x_height <= 0 || face.cap_height <= 0)
    return tl::unexpected(unusable(file, QStringLiteral("does not state its x-height and cap height")));

  FT_UInt id = 0;
  for (FT_ULong c = FT_Get_First_Char(raw_face, &id); id != 0; c = FT_Get_Next_Char(raw_face, c, &id)) {
    if (c > 0xFFFF) continue;  // the PDF's codes are of two bytes
    std::uint8_t& block = face.block_of_[c >> 8];
    if (block == Face::kNoBlock) {
      block = static_cast<std::uint8_t>(face.blocks_.size());
      face.blocks_.emplace_back();
    }
    face.blocks_[block][c & 0xFF] = glyph_of(raw_face, id);
  }
  for (FT_Long whole = 0; whole < raw_face->num_glyphs; ++whole)
    for (std::uint16_t part : direct_parts(raw_face, static_cast<FT_UInt>(whole)))
      face.parts_.push_back({static_cast<std::uint16_t>(whole), part});
  return face;
}

}  // namespace lardiner::paper
