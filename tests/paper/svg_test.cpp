// SVG shows what the PDF shows: the same list, drawn by an independent renderer of each.
#include "paper/svg.h"

#include <QRegularExpression>

#include "paper/one_line.h"
#include "paper/pdf.h"
#include "show.h"
#include "tools.h"

namespace lardiner::paper {

namespace {

constexpr PageSize kSize{{399}, {239}, {203}};

CodeImage chequers(int modules) {
  CodeImage image{modules, QByteArray(modules * ((modules + 7) / 8), '\0')};
  for (int y = 0; y < modules; ++y)
    for (int x = 0; x < modules; ++x)
      if ((x * y + x / 3) % 2 == 0) {
        char& byte = image.rows.data()[y * ((modules + 7) / 8) + x / 8];
        byte = static_cast<char>(byte | 0x80 >> (x % 8));
      }
  return image;
}

void write(Drawing& drawing, const char* text, Weight weight, double size, double baseline, Ink ink = Ink::Black) {
  add_runs(drawing.texts, shipped_faces(),
           {QString::fromUtf8(text), weight, Points{size}, FineDots{12.4}, FineDots{baseline}, ink}, kSize.resolution);
}

// Black and white boxes, a code, letters of every family and weight.
Drawing drawing() {
  Drawing out;
  out.boxes = {{{0}, {60}, kSize.width, {50}, Ink::Black}, {{300}, {70}, {11}, {5}, Ink::White}};
  out.codes = {{{270}, {120}, {3}, chequers(29)}};
  write(out, "Chilli-lime butter, 500 g", Weight::Regular, 11, 45);
  write(out, "TUE 01 DEC", Weight::ExtraBold, 14, 98, Ink::White);
  write(out, "Годен до · Ắt Ộ", Weight::Bold, 10, 150);
  write(out, "8 °C (46 °F) ½", Weight::Regular, 10, 190);
  return out;
}

// Four pixels a dot, by a renderer that reads both formats.
Picture drawn(const Folder& folder, const QString& file) {
  const QString out = folder.path(QStringLiteral("page.pgm"));
  const Ran ran =
      run(QStringLiteral("mutool"), {QStringLiteral("draw"), QStringLiteral("-q"), QStringLiteral("-N"),
                                     QStringLiteral("-r"), QString::number(4 * kSize.resolution.dots_per_inch),
                                     QStringLiteral("-c"), QStringLiteral("gray"), QStringLiteral("-o"), out, file});
  INFO(ran.err.toStdString());
  REQUIRE(ran.status == 0);
  return picture(folder.read(QStringLiteral("page.pgm")));
}

Picture as_pdf(const Drawing& drawing) {
  PdfWriter writer(shipped_faces());
  writer.begin({QStringLiteral("one list"), QStringLiteral("en"), kSize});
  writer.add_page({}, drawing);
  const auto pdf = writer.finish();
  REQUIRE(pdf);
  const Folder folder;
  return drawn(folder, folder.write(QStringLiteral("drawing.pdf"), *pdf));
}

Picture as_svg(const Drawing& drawing) {
  const auto bytes = svg(shipped_faces(), drawing, kSize, QStringLiteral("A label"));
  REQUIRE(bytes);
  const Folder folder;
  return drawn(folder, folder.write(QStringLiteral("drawing.svg"), *bytes));
}

// The share of the page's dots that are plainly lighter or darker: edges are smoothed in different ways.
double differing(const Picture& one, const Picture& other) {
  REQUIRE(std::abs(one.width - other.width) <= 1);
  REQUIRE(std::abs(one.height - other.height) <= 1);
  const int width = std::min(one.width, other.width), height = std::min(one.height, other.height);
  constexpr int kPlainly = 128;
  int count = 0;
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) count += std::abs(one.at(x, y) - other.at(x, y)) > kPlainly;
  return static_cast<double>(count) / (width * height);
}

// Less than the ink of one module.
constexpr double kSame = 0.00008;

}  // namespace

TEST_CASE("an SVG shows what the PDF of the same drawing shows", "[paper][svg][raster][src:svg]") {
  CHECK(differing(as_svg(drawing()), as_pdf(drawing())) < kSame);
}

TEST_CASE("one module, one letter or one thin box more or less in the SVG is seen", "[paper][svg][raster]") {
  const Picture pdf = as_pdf(drawing());
  Drawing changed = drawing();
  SECTION("a module") { changed.codes.front().image.rows.data()[0] ^= '\x10'; }
  SECTION("a letter") { changed.texts.front().text.replace(u'm', u'n'); }
  SECTION("a box") { changed.boxes.back().height = Dots{1}; }
  SECTION("a place") { changed.texts.back().x += FineDots{2}; }
  CHECK(differing(as_svg(changed), pdf) > kSame);
}

TEST_CASE("an SVG names what it shows, is as large as the label, and calls for nothing from elsewhere",
          "[paper][svg][src:svg]") {
  const auto bytes = svg(shipped_faces(), drawing(), kSize, QStringLiteral("Salt & <lime>"));
  REQUIRE(bytes);
  const QString text = QString::fromUtf8(*bytes);
  CHECK(text.contains(QStringLiteral("aria-label=\"Salt &amp; &lt;lime&gt;\" width=\"49.924mm\" height=\"29.904mm\"")));
  CHECK(text.count(QStringLiteral("http")) == 1);  // the namespace
  CHECK_FALSE(text.contains(QRegularExpression(QStringLiteral("href=\"[^#]"))));
  CHECK(svg(shipped_faces(), drawing(), kSize, {}) == svg(shipped_faces(), drawing(), kSize, {}));
}

TEST_CASE("a character that the face lacks is refused in an SVG as in a PDF", "[paper][svg]") {
  Drawing one;
  one.texts = {{FaceId::AtkinsonBold, Points{10}, FineDots{5}, FineDots{50}, QStringLiteral("Ж"), Ink::Black}};
  const auto refused = svg(shipped_faces(), one, kSize, {});
  REQUIRE_FALSE(refused);
  CHECK(refused.error().code == problem::Code::NoGlyph);
  one.texts.front().face = FaceId::NotoBold;
  CHECK(svg(shipped_faces(), one, kSize, {}));
}

}  // namespace lardiner::paper
