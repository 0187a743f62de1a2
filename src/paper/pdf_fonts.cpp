// Embeds the used part of the faces in a libharu document (ISO 32000-1:2008, 9.7: Type 0 fonts with TrueType outlines).
// The codes in the pages are the characters' Unicode values, two bytes each.
#include "paper/pdf_fonts.h"

#include <QFile>

namespace lardiner::paper {

namespace {

struct UsedGlyph {
  unsigned character;
  const Glyph* glyph;
};

std::vector<UsedGlyph> used_glyphs(const Face& face, const std::bitset<0x10000>& used) {
  std::vector<UsedGlyph> glyphs;
  for (char32_t c : face.characters())
    if (used[c]) glyphs.push_back({c, face.glyph(c)});
  return glyphs;
}

// One face of the document: each function adds an object or returns false (nullptr), as libharu failed.
class Embedding {
 public:
  Embedding(HPDF_Doc document, const Face& face, HPDF_FontDef loaded, std::vector<UsedGlyph> glyphs)
      : doc_(document),
        face_(face),
        loaded_(loaded),
        attr_(static_cast<HPDF_TTFontDefAttr>(loaded->attr)),
        glyphs_(std::move(glyphs)),
        name_(attr_->tag_name + face.postscript_name) {}  // the tag ends in a plus sign

  HPDF_Dict font();

 private:
  HPDF_Dict descendant();
  HPDF_Dict descriptor();
  HPDF_Dict outlines();
  HPDF_Dict stream(const QByteArray& bytes);
  HPDF_Array widths();
  HPDF_Array ink_box();
  HPDF_Dict system_info();
  void mark_glyphs();
  QByteArray glyph_map() const;
  QByteArray to_unicode() const;

  HPDF_Dict indirect_dict();
  bool add(HPDF_Dict dict, const char* key, void* object) { return HPDF_Dict_Add(dict, key, object) == HPDF_OK; }
  bool add(HPDF_Dict dict, const char* key, const char* name) { return HPDF_Dict_AddName(dict, key, name) == HPDF_OK; }
  bool add(HPDF_Dict dict, const char* key, int number) { return HPDF_Dict_AddNumber(dict, key, number) == HPDF_OK; }
  // A length of the face in PDF's thousandths of an em.
  int thousandths(double ems) const { return static_cast<int>(std::lround(ems * 1000)); }
  int thousandths_of_units(int units) const { return thousandths(static_cast<double>(units) / face_.units_per_em); }

  HPDF_Doc doc_;
  const Face& face_;
  HPDF_FontDef loaded_;
  HPDF_TTFontDefAttr attr_;
  std::vector<UsedGlyph> glyphs_;
  QByteArray name_;
};

HPDF_Dict Embedding::indirect_dict() {
  HPDF_Dict dict = HPDF_Dict_New(doc_->mmgr);
  return dict && HPDF_Xref_Add(doc_->xref, dict) == HPDF_OK ? dict : nullptr;
}

HPDF_Dict Embedding::font() {
  HPDF_Dict font = indirect_dict();
  HPDF_Array descendants = HPDF_Array_New(doc_->mmgr);
  const bool well = font && descendants && add(font, "Type", "Font") && add(font, "Subtype", "Type0") &&
                    add(font, "BaseFont", name_.constData()) && add(font, "Encoding", "Identity-H") &&
                    add(font, "DescendantFonts", descendants) && HPDF_Array_Add(descendants, descendant()) == HPDF_OK &&
                    add(font, "ToUnicode", stream(to_unicode()));
  return well ? font : nullptr;
}

HPDF_Dict Embedding::descendant() {
  HPDF_Dict font = indirect_dict();
  const bool well = font && add(font, "Type", "Font") && add(font, "Subtype", "CIDFontType2") &&
                    add(font, "BaseFont", name_.constData()) && add(font, "CIDSystemInfo", system_info()) &&
                    add(font, "FontDescriptor", descriptor()) && add(font, "W", widths()) &&
                    add(font, "CIDToGIDMap", stream(glyph_map()));
  return well ? font : nullptr;
}

HPDF_Dict Embedding::system_info() {
  HPDF_Dict info = HPDF_Dict_New(doc_->mmgr);
  const bool well = info && add(info, "Registry", HPDF_String_New(doc_->mmgr, "Adobe", nullptr)) &&
                    add(info, "Ordering", HPDF_String_New(doc_->mmgr, "Identity", nullptr)) &&
                    add(info, "Supplement", 0);
  return well ? info : nullptr;
}

HPDF_Dict Embedding::descriptor() {
  // ISO 32000-1:2008, table 123: bit 6, a face of the standard Latin letters.
  constexpr int kNonsymbolic = 32;
  // No TrueType face states its stems; used only to imitate a missing face, and this one is embedded.
  constexpr int kStem = 80;
  HPDF_Dict dict = indirect_dict();
  const bool well = dict && add(dict, "Type", "FontDescriptor") && add(dict, "FontName", name_.constData()) &&
                    add(dict, "Flags", kNonsymbolic) && add(dict, "FontBBox", ink_box()) &&
                    add(dict, "ItalicAngle", 0) && add(dict, "Ascent", thousandths(face_.ascent)) &&
                    add(dict, "Descent", -thousandths(face_.descent)) &&
                    add(dict, "CapHeight", thousandths(face_.cap_height)) && add(dict, "StemV", kStem) &&
                    add(dict, "FontFile2", outlines());
  return well ? dict : nullptr;
}

HPDF_Array Embedding::ink_box() {
  HPDF_Array box = HPDF_Array_New(doc_->mmgr);
  if (!box) return nullptr;
  const HPDF_TTF_FontHeader& head = attr_->header;
  for (int edge : {head.x_min, head.y_min, head.x_max, head.y_max})
    if (HPDF_Array_AddNumber(box, thousandths_of_units(edge)) != HPDF_OK) return nullptr;
  return box;
}

HPDF_Dict Embedding::outlines() {
  HPDF_Dict data = HPDF_DictStream_New(doc_->mmgr, doc_->xref);
  if (!data) return nullptr;
  data->filter = HPDF_STREAM_FILTER_FLATE_DECODE;
  mark_glyphs();
  const bool well = HPDF_TTFontDef_SaveFontData(loaded_, data->stream) == HPDF_OK &&
                    add(data, "Length1", static_cast<int>(attr_->length1));
  return well ? data : nullptr;
}

// libharu keeps only the outlines that are marked. Parts of parts are marked too: without them letters with accents and
// fractions lose pieces, ä prints as a.
void Embedding::mark_glyphs() {
  const auto mark = [this](std::uint16_t glyph) {
    if (glyph < attr_->num_glyphs) attr_->glyph_tbl.flgs[glyph] = 1;
  };
  for (const UsedGlyph& used : glyphs_) {
    mark(used.glyph->id);
    for (std::uint16_t part : face_.parts(used.glyph->id)) mark(part);
  }
}

HPDF_Dict Embedding::stream(const QByteArray& bytes) {
  HPDF_Dict dict = HPDF_DictStream_New(doc_->mmgr, doc_->xref);
  if (!dict) return nullptr;
  dict->filter = HPDF_STREAM_FILTER_FLATE_DECODE;
  const HPDF_STATUS status = HPDF_Stream_Write(dict->stream, reinterpret_cast<const HPDF_BYTE*>(bytes.constData()),
                                               static_cast<HPDF_UINT>(bytes.size()));
  return status == HPDF_OK ? dict : nullptr;
}

// Runs of following codes: first [width width …] (9.7.4.3).
HPDF_Array Embedding::widths() {
  HPDF_Array all = HPDF_Array_New(doc_->mmgr);
  HPDF_Array run = nullptr;
  HPDF_STATUS status = all ? HPDF_OK : HPDF_FAILD_TO_ALLOC_MEM;
  for (std::size_t n = 0; n < glyphs_.size() && status == HPDF_OK; ++n) {
    if (n == 0 || glyphs_[n].character != glyphs_[n - 1].character + 1) {
      run = HPDF_Array_New(doc_->mmgr);
      status = HPDF_Array_AddNumber(all, static_cast<HPDF_INT32>(glyphs_[n].character));
      if (status == HPDF_OK) status = HPDF_Array_Add(all, run);
    }
    if (status == HPDF_OK) status = HPDF_Array_AddNumber(run, thousandths_of_units(glyphs_[n].glyph->advance));
  }
  return status == HPDF_OK ? all : nullptr;
}

// Two bytes a code, from code 0 to the last used one (9.7.4.2).
QByteArray Embedding::glyph_map() const {
  QByteArray map(2 * (static_cast<qsizetype>(glyphs_.back().character) + 1), '\0');
  for (const UsedGlyph& used : glyphs_) {
    const qsizetype at = 2 * static_cast<qsizetype>(used.character);
    map[at] = static_cast<char>(used.glyph->id >> 8);
    map[at + 1] = static_cast<char>(used.glyph->id & 0xFF);
  }
  return map;
}

QByteArray hex(unsigned code) { return QByteArray::number(code, 16).rightJustified(4, '0').toUpper(); }

// Only the used rows of 256 are listed: a range may not run over its last byte (9.10.3), and a block holds at most 100.
QByteArray Embedding::to_unicode() const {
  QByteArrayList rows;
  for (const UsedGlyph& used : glyphs_) {
    const unsigned first = used.character & 0xFF00U;
    const QByteArray row = '<' + hex(first) + "> <" + hex(first | 0xFFU) + "> <" + hex(first) + '>';
    if (rows.isEmpty() || rows.back() != row) rows += row;
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

}  // namespace

// libharu tags the names of cut faces in the order in which it loads them; here a face has its tag for good, so that
// equal documents are equal bytes whatever was loaded before.
HPDF_FontDef PdfFonts::loaded(HPDF_Doc document, FaceId face) {
  HPDF_FontDef& loaded = loaded_[index(face)];
  if (loaded) return loaded;
  const QByteArray file = QFile::encodeName(faces_[face].file);
  const char* name = HPDF_LoadTTFontFromFile(document, file.constData(), HPDF_TRUE);
  loaded = name ? HPDF_GetFontDef(document, name) : nullptr;
  QByteArray tag = "HPDFAA";
  tag.back() = static_cast<char>('A' + index(face));
  if (loaded) HPDF_TTFontDef_SetTagName(loaded, tag.data());
  return loaded;
}

bool PdfFonts::embed(HPDF_Doc document, HPDF_Dict resources, const UsedCharacters& used) {
  HPDF_Dict fonts = HPDF_Dict_New(document->mmgr);
  if (!fonts || HPDF_Dict_Add(resources, "Font", fonts) != HPDF_OK) return false;
  for (FaceId face : kFaces) {
    if (used[face].none()) continue;
    HPDF_FontDef from = loaded(document, face);
    if (!from) return false;
    Embedding embedding(document, faces_[face], from, used_glyphs(faces_[face], used[face]));
    if (HPDF_Dict_Add(fonts, font_name(face).constData(), embedding.font()) != HPDF_OK) return false;
  }
  return true;
}

}  // namespace lardiner::paper
