// What is printed is what can be read: text comes back out of the PDF, and every glyph is drawn whole.
#include <ft2build.h>

#include <cmath>
#include FT_FREETYPE_H
#include FT_OUTLINE_H

#include "paper/pdf.h"
#include "show.h"
#include "tools.h"

namespace lardiner::paper {

namespace {

// A canvas on which a dot is a point.
constexpr PageSize kCanvas{{1600}, {1600}, {72}};

// The characters of a face that a text may have, without those that print nothing and those that composing replaces.
std::vector<char32_t> accepted(FaceId face) {
  std::vector<char32_t> all;
  for (char32_t c : shipped_faces()[face].characters()) {
    const QString text = QString::fromUcs4(&c, 1);
    if (shipped_faces().prints(c) && !is_invisible(static_cast<char16_t>(c)) && !QChar::isSpace(c) &&
        text.normalized(QString::NormalizationForm_C) == text)
      all.push_back(c);
  }
  return all;
}

QString written(const Folder& folder, const std::vector<Drawing>& pages) {
  PdfWriter writer(shipped_faces());
  writer.begin({QStringLiteral("text"), QStringLiteral("en"), kCanvas});
  for (const Drawing& page : pages) writer.add_page({}, page);
  const problem::Expected<QByteArray> pdf = writer.finish();
  if (!pdf) FAIL(problem::text(pdf.error()).toStdString());
  return folder.write(QStringLiteral("text.pdf"), *pdf);
}

// Each text a line of its own, as pdftotext reads them.
QStringList extracted(FaceId face, const QStringList& lines) {
  constexpr qsizetype kOnPage = 38;
  std::vector<Drawing> pages(static_cast<std::size_t>((lines.size() + kOnPage - 1) / kOnPage));
  for (qsizetype n = 0; n < lines.size(); ++n)
    pages[static_cast<std::size_t>(n / kOnPage)].texts.push_back(
        {face, {20}, {10}, {40.0 * static_cast<double>(n % kOnPage + 1)}, lines[n], Ink::Black});
  const Folder folder;
  const Ran ran =
      run(QStringLiteral("pdftotext"), {QStringLiteral("-raw"), QStringLiteral("-nopgbrk"), QStringLiteral("-enc"),
                                        QStringLiteral("UTF-8"), written(folder, pages), QStringLiteral("-")});
  CHECK(ran.status == 0);
  CHECK(ran.err == "");
  return QString::fromUtf8(ran.out).split(u'\n', Qt::SkipEmptyParts);
}

// The pictures of single glyphs, drawn by FreeType itself.
class Reference {
 public:
  explicit Reference(const QString& file) {
    REQUIRE(FT_Init_FreeType(&library_) == 0);
    REQUIRE(FT_New_Face(library_, file.toUtf8().constData(), 0, &face_) == 0);
  }
  ~Reference() {
    FT_Done_Face(face_);
    FT_Done_FreeType(library_);
  }
  Reference(const Reference&) = delete;
  Reference& operator=(const Reference&) = delete;

  // Ink from 0 to 255 on a cell whose baseline starts at (x, y).
  std::vector<int> draw(char32_t c, int pixels, int cell, int x, int y) {
    std::vector<int> ink(static_cast<std::size_t>(cell * cell), 0);
    REQUIRE(FT_Set_Pixel_Sizes(face_, 0, static_cast<FT_UInt>(pixels)) == 0);
    REQUIRE(FT_Load_Char(face_, c, FT_LOAD_NO_HINTING | FT_LOAD_RENDER) == 0);
    const FT_GlyphSlot slot = face_->glyph;
    for (int row = 0; row < static_cast<int>(slot->bitmap.rows); ++row)
      for (int column = 0; column < static_cast<int>(slot->bitmap.width); ++column) {
        const int at = (y - slot->bitmap_top + row) * cell + x + slot->bitmap_left + column;
        ink.at(static_cast<std::size_t>(at)) = slot->bitmap.buffer[row * slot->bitmap.pitch + column];
      }
    return ink;
  }

 private:
  FT_Library library_ = nullptr;
  FT_Face face_ = nullptr;
};

}  // namespace

TEST_CASE("every character that a face prints can be copied out of the PDF again", "[paper][pdf][text]") {
  const FaceId face = GENERATE(from_range(kFaces));
  QStringList lines;
  for (char32_t c : accepted(face)) {
    if (lines.isEmpty() || lines.back().size() >= 14) lines += QString();
    lines.back() += QString::fromUcs4(&c, 1);
  }
  CHECK(lines.size() >= 20);
  CHECK(extracted(face, lines) == lines);
}

TEST_CASE("label text is copied out of the PDF letter for letter", "[paper][pdf][text]") {
  const QStringList lines = {QStringLiteral("Keep at 5 °C (41 °F) or below"),
                             QStringLiteral("½ cup · 1¼ tsp · 2¾ oz · −18 °C – 0 °F"),
                             QStringLiteral("Jalapeño, crème brûlée, Süß, Smørrebrød"),
                             QStringLiteral("“Hold” at most 30 min ‘here’"),
                             QStringLiteral("¿Leche, huevo, trigo, sésamo?"),
                             QStringLiteral("A26329CLB7 · MR (1 of 24) \\ 100 %")};
  CHECK(extracted(FaceId::AtkinsonRegular, lines) == lines);
  CHECK(extracted(FaceId::AtkinsonExtraBold, lines) == lines);
}

TEST_CASE("every glyph of every face is drawn whole, as FreeType draws it", "[paper][pdf][text]") {
  constexpr int kPixels = 48;
  constexpr int kCell = 114;
  constexpr int kX = 16, kY = 70;
  constexpr double kWithin = 0.05;  // poppler places large glyphs at whole pixels, rounding down
  constexpr int kInRow = 14;
  const FaceId face = GENERATE(from_range(kFaces));
  const std::vector<char32_t> characters = accepted(face);
  REQUIRE(characters.size() >= 300);
  std::vector<Drawing> pages((characters.size() + kInRow * kInRow - 1) / (kInRow * kInRow));
  const auto cell_of = [](std::size_t n) { return static_cast<int>(n % (kInRow * kInRow)); };
  for (std::size_t n = 0; n < characters.size(); ++n)
    pages[n / (kInRow * kInRow)].texts.push_back({face,
                                                  {kPixels},
                                                  {kX + kCell * (cell_of(n) % kInRow) + kWithin},
                                                  {kY + kCell * (cell_of(n) / kInRow) + kWithin},
                                                  QString::fromUcs4(&characters[n], 1),
                                                  Ink::Black});
  const Folder folder;
  const QString pdf = written(folder, pages);
  const Ran ran = run(QStringLiteral("pdftoppm"), {QStringLiteral("-gray"), QStringLiteral("-r"), QStringLiteral("72"),
                                                   pdf, folder.path(QStringLiteral("page"))});
  REQUIRE(ran.status == 0);
  CHECK(ran.err == "");

  // Both are FreeType's outlines smoothed by FreeType, so poppler 22 differs by nothing at all; another may round the
  // grey edges otherwise. The smallest part of any glyph that could go missing, a dot, is over 3 % of its ink.
  constexpr double kTolerance = 0.01;
  Reference reference(shipped_faces()[face].file);
  for (std::size_t page = 0; page < pages.size(); ++page) {
    const Picture drawn = picture(folder.read(QStringLiteral("page-%1.pgm").arg(page + 1)));
    for (std::size_t n = page * kInRow * kInRow; n < std::min(characters.size(), (page + 1) * kInRow * kInRow); ++n) {
      const std::vector<int> wanted = reference.draw(characters[n], kPixels, kCell, kX, kY);
      double ink = 0, difference = 0;
      for (int y = 0; y < kCell; ++y)
        for (int x = 0; x < kCell; ++x) {
          const int here = 255 - drawn.at(kCell * (cell_of(n) % kInRow) + x, kCell * (cell_of(n) / kInRow) + y);
          const int there = wanted[static_cast<std::size_t>(y * kCell + x)];
          ink += there;
          difference += std::abs(here - there);
        }
      REQUIRE(ink > 0);
      if (difference > kTolerance * ink)
        FAIL_CHECK("U+" << std::hex << static_cast<unsigned>(characters[n]) << " differs by " << 100 * difference / ink
                        << " %");
    }
  }
}

}  // namespace lardiner::paper
