// Every glyph that a shipped face may print is drawn in the PDF as FreeType draws it from the face's own file; and the
// figures of lots can be told from letters.
#include <ft2build.h>

#include <QDir>
#include <QFile>
#include <QtEndian>
#include <algorithm>
#include <cmath>
#include <set>
#include FT_FREETYPE_H

#include "paper/pdf.h"
#include "show.h"
#include "tools.h"

namespace lardiner::paper {

namespace {

constexpr int kPixels = 48;
// A cell holds the widest glyph with its overhang, and the highest with its accents.
constexpr int kCell = 114;
constexpr int kX = 16, kY = 70;
constexpr double kWithin = 0.05;  // poppler places large glyphs at whole pixels, rounding down
constexpr std::size_t kInRow = 14;
constexpr std::size_t kOnPage = kInRow * kInRow;
// A canvas on which a dot is a point, and a pixel of the rendering.
constexpr PageSize kCanvas{{1600}, {1600}, {72}};
// Both are FreeType's outlines smoothed by FreeType, so poppler 22 differs by nothing at all; another may round the
// grey edges otherwise. The smallest part of any glyph that could go missing, a dot, is over 1.5 % of its ink.
constexpr double kTolerance = 0.01;

/// Ink from 0 to 255 on a cell whose baseline starts at (kX, kY).
using Cell = std::vector<int>;

/// The pictures of single glyphs, drawn by FreeType itself.
class Reference {
 public:
  explicit Reference(const QString& file) {
    REQUIRE(FT_Init_FreeType(&library_) == 0);
    REQUIRE(FT_New_Face(library_, file.toUtf8().constData(), 0, &face_) == 0);
    REQUIRE(FT_Set_Pixel_Sizes(face_, 0, kPixels) == 0);
  }
  ~Reference() {
    FT_Done_Face(face_);
    FT_Done_FreeType(library_);
  }
  Reference(const Reference&) = delete;
  Reference& operator=(const Reference&) = delete;

  Cell draw(char32_t c) {
    Cell ink(static_cast<std::size_t>(kCell * kCell), 0);
    REQUIRE(FT_Load_Char(face_, c, FT_LOAD_NO_HINTING | FT_LOAD_RENDER) == 0);
    const FT_GlyphSlot slot = face_->glyph;
    for (int row = 0; row < static_cast<int>(slot->bitmap.rows); ++row)
      for (int column = 0; column < static_cast<int>(slot->bitmap.width); ++column) {
        const int at = (kY - slot->bitmap_top + row) * kCell + kX + slot->bitmap_left + column;
        ink.at(static_cast<std::size_t>(at)) = slot->bitmap.buffer[row * slot->bitmap.pitch + column];
      }
    return ink;
  }

 private:
  FT_Library library_ = nullptr;
  FT_Face face_ = nullptr;
};

/// How much two pictures differ, as a part of the ink of the second, which has some.
double difference(const Cell& one, const Cell& other) {
  double ink = 0, differs = 0;
  for (std::size_t n = 0; n < other.size(); ++n) {
    ink += other[n];
    differs += std::abs(one[n] - other[n]);
  }
  REQUIRE(ink > 0);
  return differs / ink;
}

/// The characters as they come out of a PDF of ours, in cells, rendered by poppler.
std::vector<Cell> printed(const Faces& faces, FaceId face, const std::vector<char32_t>& characters) {
  std::vector<Drawing> pages((characters.size() + kOnPage - 1) / kOnPage);
  const auto left = [](std::size_t n) { return kCell * static_cast<int>(n % kOnPage % kInRow); };
  const auto top = [](std::size_t n) { return kCell * static_cast<int>(n % kOnPage / kInRow); };
  for (std::size_t n = 0; n < characters.size(); ++n)
    pages[n / kOnPage].texts.push_back({face,
                                        {kPixels},
                                        {kX + left(n) + kWithin},
                                        {kY + top(n) + kWithin},
                                        QString::fromUcs4(&characters[n], 1),
                                        Ink::Black});
  PdfWriter writer(faces);
  writer.begin({QStringLiteral("glyphs"), QStringLiteral("en"), kCanvas});
  for (const Drawing& page : pages) writer.add_page({}, page);
  const problem::Expected<QByteArray> pdf = writer.finish();
  if (!pdf) FAIL(problem::text(pdf.error()).toStdString());
  const Folder folder;
  const QString file = folder.write(QStringLiteral("glyphs.pdf"), *pdf);
  const Ran ran = run(QStringLiteral("pdftoppm"), {QStringLiteral("-gray"), QStringLiteral("-r"), QStringLiteral("72"),
                                                   file, folder.path(QStringLiteral("page"))});
  REQUIRE(ran.status == 0);
  CHECK(ran.err == "");

  std::vector<Cell> cells;
  Picture drawn;
  const auto digits = static_cast<int>(QString::number(pages.size()).size());
  for (std::size_t n = 0; n < characters.size(); ++n) {
    if (n % kOnPage == 0)
      drawn = picture(folder.read(QStringLiteral("page-%1.pgm").arg(n / kOnPage + 1, digits, 10, QLatin1Char('0'))));
    Cell& cell = cells.emplace_back();
    for (int y = 0; y < kCell; ++y)
      for (int x = 0; x < kCell; ++x) cell.push_back(255 - drawn.at(left(n) + x, top(n) + y));
  }
  return cells;
}

std::set<char32_t> badly_printed(const Faces& faces, FaceId face) {
  const std::vector<char32_t> characters = visible_characters(face);
  const std::vector<Cell> cells = printed(faces, face, characters);
  Reference reference(shipped_faces()[face].file);
  std::set<char32_t> bad;
  for (std::size_t n = 0; n < characters.size(); ++n)
    if (difference(cells[n], reference.draw(characters[n])) > kTolerance) bad.insert(characters[n]);
  return bad;
}

/// A copy of the shipped faces in which some glyphs of one are empty, as glyphs are that a subset left out.
class LossyFaces {
 public:
  LossyFaces(FaceId face, const std::set<std::uint16_t>& lost) {
    for (const QString& name : QDir(shipped()).entryList({QStringLiteral("*.ttf")}))
      REQUIRE(QFile::copy(shipped() + u'/' + name, folder_.path(name)));
    const QString path = folder_.path(shipped_faces()[face].file.section(u'/', -1));
    QFile file(path);
    REQUIRE(file.open(QIODevice::ReadOnly));
    QByteArray bytes = file.readAll();
    file.close();
    REQUIRE(QFile::remove(path));
    for (std::uint16_t glyph : lost) empty(bytes, glyph);
    folder_.write(path.section(u'/', -1), bytes);
  }
  Faces faces() const { return Faces::load(folder_.path(QStringLiteral("."))).value(); }

 private:
  static QString shipped() { return QStringLiteral(LARDINER_SOURCE_DIR "/fonts"); }

  static qsizetype table(const QByteArray& bytes, const char* tag) {
    for (qsizetype at = 12; at < 12 + 16 * qFromBigEndian<quint16>(bytes.constData() + 4); at += 16)
      if (bytes.mid(at, 4) == tag) return qFromBigEndian<quint32>(bytes.constData() + at + 8);
    FAIL("no table");
    return 0;
  }

  // No contours and no instructions (OpenType, glyf: a simple glyph's header).
  static void empty(QByteArray& bytes, std::uint16_t glyph) {
    const bool long_offsets = qFromBigEndian<qint16>(bytes.constData() + table(bytes, "head") + 50) != 0;
    const char* loca = bytes.constData() + table(bytes, "loca");
    const qsizetype offset =
        long_offsets ? qFromBigEndian<quint32>(loca + 4 * glyph) : 2 * qFromBigEndian<quint16>(loca + 2 * glyph);
    const qsizetype at = table(bytes, "glyf") + offset;
    for (qsizetype byte : {at, at + 1, at + 10, at + 11}) bytes[byte] = '\0';
  }

  Folder folder_;
};

}  // namespace

TEST_CASE("every glyph of every face is drawn whole, as FreeType draws it", "[paper][pdf][glyphs]") {
  const FaceId face = GENERATE(from_range(kFaces));
  CHECK(visible_characters(face).size() >= 300);
  for (char32_t c : badly_printed(shipped_faces(), face)) {
    CAPTURE(shipped_faces()[face].postscript_name.toStdString(), static_cast<unsigned>(c));
    FAIL_CHECK("a glyph differs");
  }
}

TEST_CASE("the comparison finds each glyph of which a part is left out", "[paper][pdf][glyphs]") {
  const FaceId face = GENERATE(FaceId::AtkinsonBold, FaceId::NotoRegular);
  const Face& whole = shipped_faces()[face];
  // All accents and other parts that are no letters themselves.
  std::set<std::uint16_t> letters, lost;
  for (char32_t c : visible_characters(face)) letters.insert(whole.glyph(c)->id);
  std::set<char32_t> expected;
  for (char32_t c : visible_characters(face))
    for (std::uint16_t part : whole.parts(whole.glyph(c)->id))
      if (!letters.contains(part)) {
        lost.insert(part);
        expected.insert(c);
      }
  REQUIRE(expected.size() > 50);
  CHECK(badly_printed(LossyFaces(face, lost).faces(), face) == expected);
}

TEST_CASE("the comparison finds a glyph that stands for another", "[paper][pdf][glyphs]") {
  const std::vector<char32_t> letters = {U'O', U'0', U'Q', U'l', U'I', U'1', U'i', U'5', U'S', U'8', U'B', U'2', U'Z'};
  for (FaceId face : kFaces) {
    const std::vector<Cell> cells = printed(shipped_faces(), face, letters);
    Reference reference(shipped_faces()[face].file);
    for (std::size_t one = 0; one < letters.size(); ++one)
      for (std::size_t other = 0; other < letters.size(); ++other)
        CHECK((difference(cells[one], reference.draw(letters[other])) <= kTolerance) == (one == other));
  }
}

TEST_CASE("figures stand in columns: one width in all weights of the family that sets them", "[paper][face][glyphs]") {
  for (FaceId face : kFaces)
    for (char32_t digit = U'1'; digit <= U'9'; ++digit)
      CHECK(shipped_faces()[face].glyph(digit)->advance == shipped_faces()[face].glyph(U'0')->advance);
  CHECK(shipped_faces()[FaceId::AtkinsonBold].glyph(U'0')->advance ==
        shipped_faces()[FaceId::AtkinsonRegular].glyph(U'0')->advance);
}

TEST_CASE("0 and O, and 1, l and I, are unlike each other in lots and figures", "[paper][face][glyphs]") {
  // Of the letter's ink, laid upon each other at the left edge of their ink.
  constexpr double kLeastDifference = 0.4;
  const auto at_left = [](const Cell& cell) {
    int first = kCell;
    for (int n = 0; n < kCell * kCell; ++n)
      if (cell[static_cast<std::size_t>(n)] > 127) first = std::min(first, n % kCell);
    Cell moved(cell.begin() + first, cell.end());
    moved.resize(cell.size(), 0);
    return moved;
  };
  for (FaceId face : {FaceId::AtkinsonRegular, FaceId::AtkinsonBold, FaceId::AtkinsonExtraBold}) {
    Reference reference(shipped_faces()[face].file);
    const std::vector<std::pair<char32_t, char32_t>> pairs = {{U'0', U'O'}, {U'1', U'l'}, {U'1', U'I'}, {U'l', U'I'}};
    for (const auto& [one, other] : pairs) {
      CAPTURE(static_cast<char>(one), static_cast<char>(other));
      CHECK(difference(at_left(reference.draw(one)), at_left(reference.draw(other))) > kLeastDifference);
    }
  }
  // Not every face would do.
  Reference other(shipped_faces()[FaceId::ScBold].file);
  CHECK(difference(at_left(other.draw(U'l')), at_left(other.draw(U'I'))) < kLeastDifference);
}

}  // namespace lardiner::paper
