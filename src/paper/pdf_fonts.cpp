// Embeds the used part of the faces in a libharu document, with cures for what libharu 2.3.0 does wrong.
#include "paper/pdf_fonts.h"

#include <QFile>

namespace lardiner::paper {

namespace {

// libharu keeps only the outlines that are marked. It marks the parts of a composite glyph, but not the parts of parts,
// and so loses pieces of letters and fractions: all are marked here.
void mark_glyphs(HPDF_Font font, const Face& face, const std::bitset<0x10000>& used) {
  const auto* font_attr = static_cast<HPDF_FontAttr>(font->attr);
  const auto* face_attr = static_cast<HPDF_TTFontDefAttr>(font_attr->fontdef->attr);
  HPDF_BYTE* marks = face_attr->glyph_tbl.flgs;
  const auto mark = [&](std::uint16_t glyph) {
    if (glyph < face_attr->num_glyphs) marks[glyph] = 1;
  };
  for (char32_t c = 0; c < used.size(); ++c) {
    const Glyph* glyph = used[c] ? face.glyph(c) : nullptr;
    if (!glyph) continue;
    mark(glyph->id);
    for (std::uint16_t part : face.parts(glyph->id)) mark(part);
  }
}

QByteArray hex(unsigned code) { return QByteArray::number(code, 16).rightJustified(4, '0').toUpper(); }

// The codes are Unicode already. Only the used rows of 256 are listed, since a range may not run over the last byte
// (ISO 32000-1:2008, 9.10.3), and at most 100 fit in a block.
QByteArray to_unicode(const std::bitset<0x10000>& used) {
  QByteArrayList rows;
  for (unsigned row = 0; row < 256; ++row) {
    bool any = false;
    for (unsigned low = 0; low < 256 && !any; ++low) any = used[row << 8 | low];
    if (any) rows += '<' + hex(row << 8) + "> <" + hex(row << 8 | 0xFF) + "> <" + hex(row << 8) + '>';
  }
  QByteArray map =
      "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
      "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
      "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
      "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
  constexpr qsizetype kMostInBlock = 100;
  for (qsizetype at = 0; at < rows.size(); at += kMostInBlock) {
    const QByteArrayList block = rows.mid(at, kMostInBlock);
    map += QByteArray::number(block.size()) + " beginbfrange\n" + block.join('\n') + "\nendbfrange\n";
  }
  return map + "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
}

// libharu's own map names its ranges wrongly, so that no reader can copy or search the text.
bool replace_to_unicode(HPDF_Doc document, HPDF_Font font, const std::bitset<0x10000>& used) {
  HPDF_Dict map = HPDF_DictStream_New(document->mmgr, document->xref);
  if (!map) return false;
  map->filter = HPDF_STREAM_FILTER_FLATE_DECODE;
  return HPDF_Stream_WriteStr(map->stream, to_unicode(used).constData()) == HPDF_OK &&
         HPDF_Dict_Add(font, "ToUnicode", map) == HPDF_OK;
}

}  // namespace

bool PdfFonts::embed(HPDF_Doc document, HPDF_Dict resources, UsedCharacters& used) {
  HPDF_Dict fonts = HPDF_Dict_New(document->mmgr);
  if (!fonts || HPDF_Dict_Add(resources, "Font", fonts) != HPDF_OK) return false;
  for (Weight weight : kWeights)
    if (used[weight].any() && !embed(document, fonts, weight, used[weight])) return false;
  return true;
}

bool PdfFonts::embed(HPDF_Doc document, HPDF_Dict fonts, Weight weight, const std::bitset<0x10000>& used) {
  const char*& name = names_[static_cast<std::size_t>(weight)];
  if (!name) name = HPDF_LoadTTFontFromFile(document, QFile::encodeName(faces_[weight].file).constData(), HPDF_TRUE);
  HPDF_Font font = name ? HPDF_GetFont(document, name, "UTF-8") : nullptr;
  if (!font) return false;
  mark_glyphs(font, faces_[weight], used);
  return replace_to_unicode(document, font, used) &&
         HPDF_Dict_Add(fonts, font_name(weight).constData(), font) == HPDF_OK;
}

}  // namespace lardiner::paper
