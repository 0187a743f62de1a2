// Sheets and rolls in whole dots: page, label, margins and places.
#include "paper/sheet.h"

#include <algorithm>
#include <cmath>
#include <random>

#include "paper/pdf.h"
#include "paper/sheet_guide.h"
#include "show.h"
#include "tools.h"

using namespace lardiner;
using namespace lardiner::paper;

namespace {

// Labels of 99.1 by 57 mm, two by four on Letter.
book::Media letter(int dpi = 203) {
  book::Media medium;
  medium.width = 9910;
  medium.height = 5700;
  medium.dots_per_inch = dpi;
  medium.margin = {100, 200, 300, 400};
  medium.sheet = book::Sheet{21590, 27940, 2, 4, 650, 2270, 254, 137};
  return medium;
}

PageSize dots(int width, int height, int dpi) { return {{width}, {height}, {dpi}}; }

problem::Expected<QByteArray> page_with(PageSize page, const PdfWriter::Placed& label) {
  PdfWriter writer(shipped_faces());
  writer.begin({QStringLiteral("sheet"), QStringLiteral("en"), page});
  writer.add_page({label});
  return writer.finish();
}

}  // namespace

TEST_CASE("a roll's page is its label", "[paper][sheet]") {
  book::Media roll;
  roll.width = 10000;
  roll.height = 5000;
  const Sheet sheet = sheet_of(roll);
  CHECK(sheet.page == dots(799, 399, 203));  // 799.2 and 399.6: what the medium really offers
  CHECK(sheet.label == sheet.page);
  CHECK(sheet.places == std::vector<Placement>{{{0}, {0}, false}});
  CHECK(sheet.margin == Insets{});
}

TEST_CASE("a turned label is laid out as it is read, and its margins turn with it", "[paper][sheet][src:rfc-8011]") {
  book::Media roll;
  roll.width = 5000;
  roll.height = 10000;
  roll.turned = true;
  roll.margin = {127, 254, 381, 508};
  roll.dots_per_inch = 200;
  const Sheet sheet = sheet_of(roll);
  CHECK(sheet.page == dots(393, 787, 200));
  CHECK(sheet.label == dots(787, 393, 200));
  CHECK(sheet.places == std::vector<Placement>{{{0}, {0}, true}});
  // Anti-clockwise, the top of what is read lies at the left of the medium.
  CHECK(sheet.margin == Insets{{40}, {10}, {20}, {30}});
}

TEST_CASE("margins are whole dots that cover them", "[paper][sheet]") {
  CHECK(sheet_of(letter()).margin == Insets{{8}, {16}, {24}, {32}});  // 7.99, 15.98, 23.98 and 31.97 dots
  book::Media medium = letter();
  medium.margin = {1, 0, 0, 0};
  CHECK(sheet_of(medium).margin == Insets{{1}, {0}, {0}, {0}});
}

TEST_CASE("the places of a sheet run by rows from the top left", "[paper][sheet]") {
  const Sheet sheet = sheet_of(letter(254));  // ten dots a millimetre
  CHECK(sheet.page == dots(2159, 2794, 254));
  CHECK(sheet.label == dots(991, 570, 254));
  // Across 65 and 1081.4, down 227, 810.7, 1394.4 and 1978.1.
  CHECK(sheet.places == std::vector<Placement>{{{65}, {227}, false},
                                               {{1081}, {227}, false},
                                               {{65}, {811}, false},
                                               {{1081}, {811}, false},
                                               {{65}, {1394}, false},
                                               {{1081}, {1394}, false},
                                               {{65}, {1978}, false},
                                               {{1081}, {1978}, false}});
}

TEST_CASE("no place is off by more than half a dot, however many rows there are", "[paper][sheet][property]") {
  std::mt19937 random(3);
  const auto some = [&](int least, int most) {
    return least + static_cast<int>(random() % static_cast<unsigned>(most - least + 1));
  };
  for (int round = 0; round < 200; ++round) {
    book::Media medium;
    medium.width = some(800, 4000);
    medium.height = some(500, 3000);
    medium.dots_per_inch = std::vector{203, 300, 600}[static_cast<std::size_t>(round) % 3];
    medium.turned = round % 2 == 1;
    book::Sheet paper{0, 0, some(1, 5), some(1, 40), some(0, 900), some(0, 900), some(0, 300), some(0, 300)};
    paper.paper_width = paper.left + paper.columns * medium.width + (paper.columns - 1) * paper.gap_across;
    paper.paper_height = paper.top + paper.rows * medium.height + (paper.rows - 1) * paper.gap_down;
    medium.sheet = paper;
    const Sheet sheet = sheet_of(medium);
    CAPTURE(round, medium.width, medium.height, medium.dots_per_inch, paper.left, paper.top);
    REQUIRE(sheet.places.size() == static_cast<std::size_t>(paper.labels()));
    const double dot = medium.dots_per_inch / 2540.0;
    const Dots wide = medium.turned ? sheet.label.height : sheet.label.width;
    const Dots high = medium.turned ? sheet.label.width : sheet.label.height;
    for (int n = 0; n < paper.labels(); ++n) {
      const Placement& at = sheet.places[static_cast<std::size_t>(n)];
      const int row = n / paper.columns, column = n % paper.columns;
      const double x = (paper.left + column * (medium.width + paper.gap_across)) * dot;
      const double y = (paper.top + row * (medium.height + paper.gap_down)) * dot;
      // The last ones give way to the page's whole dots by at most one.
      CHECK(std::abs(at.x.value - x) <= (column + 1 == paper.columns ? 1.0 : 0.5) + 1e-9);
      CHECK(std::abs(at.y.value - y) <= (row + 1 == paper.rows ? 1.0 : 0.5) + 1e-9);
      CHECK(at.x + wide <= sheet.page.width);
      CHECK(at.y + high <= sheet.page.height);
      if (column > 0) CHECK(at.x - sheet.places[static_cast<std::size_t>(n) - 1].x >= wide);
      if (row > 0) CHECK(at.y - sheet.places[static_cast<std::size_t>(n - paper.columns)].y >= high);
    }
  }
}

TEST_CASE("what leaves its label is refused even where the page has room for it", "[paper][sheet][refused]") {
  const PageSize page = dots(900, 900, 203), label = dots(300, 200, 203);
  const auto with = [&](const Box& box, Placement at) {
    return page_with(page, {std::nullopt, Drawing{{box}, {}, {}}, label, at});
  };
  CHECK(with({{290}, {190}, {10}, {10}}, {{100}, {100}, false}));
  const auto outside = with({{290}, {190}, {11}, {10}}, {{100}, {100}, false});
  REQUIRE_FALSE(outside);
  CHECK(problem::text(outside.error()) ==
        "a box of 11 by 10 dots at 290, 190 does not lie on the page of 300 by 200 dots\n"
        "  this is a fault of Lardiner's layout: please report it");
}

TEST_CASE("a label that leaves its page is refused", "[paper][sheet][refused]") {
  const PageSize page = dots(900, 400, 203), label = dots(300, 200, 203);
  const auto at = [&](int x, int y, bool turned) {
    const auto pdf = page_with(page, {std::nullopt, {}, label, {{x}, {y}, turned}});
    return pdf ? QString() : problem::text(pdf.error());
  };
  CHECK(at(600, 200, false) == "");
  CHECK(at(601, 200, false) ==
        "a label of 300 by 200 dots at 601, 200 does not lie on the page of 900 by 400 dots\n"
        "  this is a fault of Lardiner's layout: please report it");
  CHECK(at(700, 100, true) == "");
  CHECK(at(700, 101, true) ==
        "a label of 200 by 300 dots at 700, 101 does not lie on the page of 900 by 400 dots\n"
        "  this is a fault of Lardiner's layout: please report it");
}

TEST_CASE("the guide shows each place's outline and number, a cross in each corner and rulers from the paper's corner",
          "[paper][sheet][guide]") {
  const Sheet sheet = sheet_of(letter(254));  // ten dots a millimetre; lines of two dots
  const Drawing guide = sheet_guide(sheet, shipped_faces());
  const auto has = [&](int x, int y, int width, int height) {
    return std::any_of(guide.boxes.begin(), guide.boxes.end(), [&](const Box& box) {
      return box.x.value == x && box.y.value == y && box.width.value == width && box.height.value == height;
    });
  };
  for (const Placement& place : sheet.places) {
    const int x = place.x.value, y = place.y.value;
    CHECK(has(x, y, 991, 2));
    CHECK(has(x, y + 568, 991, 2));
    CHECK(has(x, y, 2, 570));
    CHECK(has(x + 989, y, 2, 570));
  }
  for (const int x : {100, 2059})
    for (const int y : {100, 2694}) {
      CHECK(has(x - 50, y - 1, 100, 2));
      CHECK(has(x - 1, y - 50, 2, 100));
    }
  CHECK(has(9, 50, 2, 10));     // 1 mm from the left
  CHECK(has(1999, 50, 2, 24));  // 200 mm
  CHECK(has(50, 2649, 16, 2));  // 265 mm from the top
  QStringList texts;
  for (const TextRun& text : guide.texts) texts << text.text;
  CHECK(texts.mid(0, 8) == QStringList{"1", "2", "3", "4", "5", "6", "7", "8"});
  CHECK(texts.count("200") == 2);
}

TEST_CASE("the guide of any sheet can be drawn", "[paper][sheet][guide]") {
  const int dpi = GENERATE(203, 600);
  book::Media medium = letter(dpi);
  medium.turned = GENERATE(true, false);
  if (dpi == 203) medium.sheet.reset();
  const Sheet sheet = sheet_of(medium);
  PdfWriter writer(shipped_faces());
  writer.begin({QStringLiteral("guide"), QStringLiteral("en"), sheet.page});
  writer.add_page({}, sheet_guide(sheet, shipped_faces()));
  const auto pdf = writer.finish();
  if (!pdf) FAIL(problem::text(pdf.error()).toStdString());
  const Folder folder;
  const QString file = folder.write(QStringLiteral("guide.pdf"), *pdf);
  const QByteArray text = run(QStringLiteral("pdftotext"), {file, QStringLiteral("-")}).out;
  CHECK(text.contains(dpi == 203 ? "90" : "270"));
}
