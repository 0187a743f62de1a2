// What a label printer gets: at its resolution each module and box covers exactly its dots, in three renderers.
#include <random>

#include "paper/pdf.h"
#include "show.h"
#include "tools.h"

namespace lardiner::paper {

namespace {

struct Medium {
  const char* name;
  PageSize size;
};

constexpr PageSize whole_dots(Millimetres width, Millimetres height, int dpi) {
  const Resolution r{dpi};
  const auto dots = [r](Millimetres mm) { return Dots{static_cast<int>(fine_dots(mm, r).value)}; };
  return {dots(width), dots(height), r};
}

// The quiet zone, ISO/IEC 18004:2015, 6.3.8: four modules.
constexpr int kQuiet = 4;

CodeImage random_code(std::mt19937& random, int modules) {
  CodeImage image{modules, QByteArray(modules * ((modules + 7) / 8), '\0')};
  for (int y = 0; y < modules; ++y)
    for (int x = 0; x < modules; ++x)
      if (random() % 2) {
        char& byte = image.rows.data()[y * ((modules + 7) / 8) + x / 8];
        byte = static_cast<char>(byte | 0x80 >> (x % 8));
      }
  return image;
}

bool is_dark(const CodeImage& image, int x, int y) {
  return (image.rows[y * ((image.modules + 7) / 8) + x / 8] & (0x80 >> (x % 8))) != 0;
}

// What the page must look like, dot for dot.
Picture expected(PageSize size, const Drawing& drawing) {
  Picture picture{size.width.value, size.height.value, {}};
  picture.grey.assign(static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height), 255);
  const auto fill = [&](int left, int top, int width, int height, unsigned char grey) {
    for (int y = top; y < top + height; ++y)
      for (int x = left; x < left + width; ++x)
        picture
            .grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(picture.width) + static_cast<std::size_t>(x)] =
            grey;
  };
  for (const Box& box : drawing.boxes)
    fill(box.x.value, box.y.value, box.width.value, box.height.value, box.ink == Ink::Black ? 0 : 255);
  for (const Code& code : drawing.codes)
    for (int y = 0; y < code.image.modules; ++y)
      for (int x = 0; x < code.image.modules; ++x)
        if (is_dark(code.image, x, y))
          fill(code.x.value + x * code.module.value, code.y.value + y * code.module.value, code.module.value,
               code.module.value, 0);
  return picture;
}

// Boxes at the edges and a rule of one dot, a white box on black, and a code of `module` dots at an uneven place.
Drawing drawing_of(PageSize size, int module, std::mt19937& random) {
  Drawing drawing;
  drawing.boxes = {{{0}, {31}, size.width, {23}, Ink::Black},
                   {{7}, {40}, {11}, {5}, Ink::White},
                   {{3}, {67}, {90}, {1}, Ink::Black},
                   {{0}, size.height - Dots{3}, {3}, {3}, Ink::Black},
                   {{size.width.value - 1}, {0}, {1}, {17}, Ink::Black}};
  const int modules = 29 + 4 * static_cast<int>(random() % 5);
  const int room = size.width.value - (modules + kQuiet) * module - kQuiet * module;
  const int x = kQuiet * module + static_cast<int>(random() % static_cast<unsigned>(room));
  drawing.codes = {{{x}, {75 + static_cast<int>(random() % 60)}, {module}, random_code(random, modules)}};
  return drawing;
}

// The number of dots that differ.
int differing(const Picture& drawn, const Picture& wanted) {
  REQUIRE(drawn.width == wanted.width);
  REQUIRE(drawn.height == wanted.height);
  int count = 0;
  for (std::size_t n = 0; n < wanted.grey.size(); ++n) count += drawn.grey[n] != wanted.grey[n];
  return count;
}

}  // namespace

TEST_CASE("every module and every box covers exactly its dots on the printer's grid",
          "[paper][pdf][raster][src:practice]") {
  const auto medium = GENERATE(Medium{"50 x 50 mm, 203 dpi", whole_dots({50}, {50}, 203)},
                               Medium{"50 x 50 mm, 400 dots", PageSize{{400}, {400}, {203}}},
                               Medium{"100 x 50 mm, 203 dpi", whole_dots({100}, {50}, 203)},
                               Medium{"4 x 6 in, 203 dpi", whole_dots({101.6}, {152.4}, 203)},
                               Medium{"50 x 50 mm, 300 dpi", whole_dots({50}, {50}, 300)});
  std::mt19937 random(20261125);
  PdfWriter writer(shipped_faces());
  writer.begin({QStringLiteral("grid"), QStringLiteral("en"), medium.size});
  std::vector<Picture> wanted;
  for (int module : {2, 3, 4, 5}) {
    const Drawing drawing = drawing_of(medium.size, module, random);
    wanted.push_back(expected(medium.size, drawing));
    writer.add_page({}, drawing);
  }
  const problem::Expected<QByteArray> pdf = writer.finish();
  REQUIRE(pdf);
  const Folder folder;
  const QString file = folder.write(QStringLiteral("grid.pdf"), *pdf);
  for (const Renderer& renderer : renderers())
    for (int page = 1; page <= 4; ++page) {
      INFO(medium.name << ", " << renderer.name.toStdString() << ", " << page + 1 << " dots a module");
      CHECK(differing(renderer.draw(folder, file, page, medium.size.resolution.dots_per_inch),
                      wanted[static_cast<std::size_t>(page) - 1]) == 0);
    }
}

namespace {

constexpr int kLabelWidth = 3000, kLabelHeight = 2500;

// Labels of 30 by 25 mm, alone on a roll or three by two on a paper of 101.3 by 60.7 mm, which no resolution divides.
book::Media medium_of(bool sheet, bool turned, int dpi) {
  book::Media medium;
  medium.width = kLabelWidth;
  medium.height = kLabelHeight;
  medium.turned = turned;
  medium.dots_per_inch = dpi;
  if (sheet) medium.sheet = book::Sheet{10130, 6070, 3, 2, 317, 433, 123, 257};
  return medium;
}

// The label's dots at its place, turned there.
void paste(Picture& page, const Picture& label, Placement at) {
  for (int y = 0; y < label.height; ++y)
    for (int x = 0; x < label.width; ++x) {
      const int left = at.x.value + (at.turned ? y : x);
      const int down = at.y.value + (at.turned ? label.width - 1 - x : y);
      page.grey[static_cast<std::size_t>(down) * static_cast<std::size_t>(page.width) +
                static_cast<std::size_t>(left)] = label.at(x, y);
    }
}

Drawing label_drawing(PageSize size, int module, std::mt19937& random) {
  const auto some = [&](int below) { return static_cast<int>(random() % static_cast<unsigned>(below)); };
  Drawing drawing;
  drawing.boxes = {{{0}, {3}, size.width, {5}, Ink::Black},
                   {{7}, {5}, {11}, {1}, Ink::White},
                   {{0}, size.height - Dots{3}, {3}, {3}, Ink::Black},
                   {{size.width.value - 1}, {0}, {1}, {17}, Ink::Black}};
  const int modules = 29 + 4 * some(2);
  const int room = std::min(size.width.value, size.height.value) - modules * module - 12;
  drawing.codes = {{{some(room)}, {12 + some(room)}, {module}, random_code(random, modules)}};
  return drawing;
}

}  // namespace

TEST_CASE("on a sheet and turned a quarter, every module and box still covers exactly its dots",
          "[paper][pdf][sheet][raster][src:practice][src:iso-32000]") {
  const bool on_sheet = GENERATE(true, false);
  const bool turned = GENERATE(true, false);
  const int dpi = GENERATE(203, 300, 600);
  const Sheet sheet = sheet_of(medium_of(on_sheet, turned, dpi));
  CAPTURE(on_sheet, turned, dpi);
  std::mt19937 random(20261126);
  PdfWriter writer(shipped_faces());
  writer.begin({QStringLiteral("sheet"), QStringLiteral("en"), sheet.page});
  std::vector<Picture> wanted;
  for (const int module : {2, 3, 5}) {
    std::vector<PdfWriter::Placed> labels;
    wanted.push_back(expected(sheet.page, {}));
    for (const Placement& place : sheet.places) {
      const Drawing drawing = label_drawing(sheet.label, module, random);
      paste(wanted.back(), expected(sheet.label, drawing), place);
      Drawing shared{drawing.boxes, {}, {}}, own{{}, drawing.codes, {}};
      labels.push_back({writer.add_form(shared, sheet.label), own, sheet.label, place});
    }
    writer.add_page(labels);
  }
  const problem::Expected<QByteArray> pdf = writer.finish();
  if (!pdf) FAIL(problem::text(pdf.error()).toStdString());
  const Folder folder;
  const QString file = folder.write(QStringLiteral("sheet.pdf"), *pdf);
  for (const Renderer& renderer : renderers())
    for (int page = 1; page <= 3; ++page) {
      INFO(renderer.name.toStdString() << ", page " << page);
      CHECK(differing(renderer.draw(folder, file, page, dpi), wanted[static_cast<std::size_t>(page) - 1]) == 0);
    }
}

TEST_CASE("a renderer that smooths edges keeps every module pure black or white",
          "[paper][pdf][raster][src:practice]") {
  const PageSize size{{400}, {400}, {203}};
  std::mt19937 random(7);
  const Drawing drawing = drawing_of(size, 3, random);
  PdfWriter writer(shipped_faces());
  writer.begin({QStringLiteral("grid"), QStringLiteral("en"), size});
  writer.add_page({}, drawing);
  const problem::Expected<QByteArray> pdf = writer.finish();
  REQUIRE(pdf);
  const Folder folder;
  const QString file = folder.write(QStringLiteral("grid.pdf"), *pdf);
  const Ran ran =
      run(QStringLiteral("pdftoppm"), {QStringLiteral("-gray"), QStringLiteral("-singlefile"), QStringLiteral("-r"),
                                       QStringLiteral("203"), file, folder.path(QStringLiteral("page"))});
  REQUIRE(ran.status == 0);
  const Picture drawn = picture(folder.read(QStringLiteral("page.pgm")));
  const Picture wanted = expected(size, drawing);
  const Code& code = drawing.codes.front();
  int grey = 0;
  for (int y = 0; y < code.image.modules * code.module.value; ++y)
    for (int x = 0; x < code.image.modules * code.module.value; ++x)
      grey += drawn.at(code.x.value + x, code.y.value + y) != wanted.at(code.x.value + x, code.y.value + y);
  CHECK(grey == 0);
}

}  // namespace lardiner::paper
