// The picture of a lineage on a page: nothing lost unsaid, nothing clipped or touched, lines that meet only where they
// belong together.
#include "paper/lineage_drawing.h"

#include "paper/lineage_layers.h"
#include "paper/pdf.h"
#include "paper/svg.h"
#include "work_sheets.h"

namespace lardiner::paper {

namespace {

using facts::LineagePicture;

LineagePicture picture(const std::vector<std::pair<int, int>>& into, int lots, std::size_t asked) {
  LineagePicture out;
  out.language = QStringLiteral("en");
  out.title = QStringLiteral("What is in it, and where it went");
  for (int i = 0; i < lots; ++i)
    out.nodes.push_back({QStringLiteral("Lime and pecan butter"), QStringLiteral("A26330CLB%1").arg(i),
                         QStringLiteral("Thu 26 Nov 2026")});
  for (const auto& [from, to] : into)
    out.edges.push_back({static_cast<std::size_t>(from), static_cast<std::size_t>(to), false});
  out.asked = asked;
  out.notes << QStringLiteral("Left to right: what went into what.");
  out.more = [](int count) { return QStringLiteral("More lots: %1").arg(count); };
  return out;
}

LineageDrawing drawn(const LineagePicture& picture, Paper paper = Paper::A4) {
  auto made = lineage_drawing(picture, paper, shipped_faces());
  if (!made) FAIL(problem::text(made.error()).toStdString());
  return *made;
}

// A lineage by chance: each lot is made of earlier ones.
LineagePicture by_chance(unsigned seed, int lots) {
  Chance chance(seed);
  std::vector<std::pair<int, int>> into;
  for (int i = 1; i < lots; ++i)
    for (int inputs = 1 + chance.below(2); inputs > 0; --inputs)
      into.push_back({std::max(0, i - 1 - chance.below(9)), i});
  return picture(into, lots, static_cast<std::size_t>(lots / 2));
}

std::size_t column_of(const Layers& layers, std::size_t node) {
  for (std::size_t c = 0; c < layers.columns.size(); ++c)
    for (const Slot& slot : layers.columns[c])
      if (slot.kind == Slot::Kind::Lot && slot.node == node) return c;
  return 999;
}

int counted(const Layers& layers) {
  int count = 0;
  for (const auto& column : layers.columns)
    for (const Slot& slot : column) count += slot.kind == Slot::Kind::Lot ? 1 : slot.more;
  return count;
}

}  // namespace

TEST_CASE("every lot stands left of what it went into", "[paper][lineage]") {
  const Layers made = layers(picture({{0, 2}, {1, 2}, {2, 3}, {0, 3}}, 4, 2), {});
  CHECK(column_of(made, 0) == 0);
  CHECK(column_of(made, 1) == 0);
  CHECK(column_of(made, 2) == 1);
  CHECK(column_of(made, 3) == 2);
  CHECK(made.links.size() == 5);  // the longest in two parts
}

TEST_CASE("no lot of a lineage is lost: shown or counted, and the one asked for always shown", "[paper][lineage]") {
  for (unsigned seed = 1; seed <= 20; ++seed) {
    const LineagePicture any = by_chance(seed, 60);
    for (const Most most : {Most{7, 9}, Most{3, 4}, Most{1, 2}}) {
      const Layers made = layers(any, most);
      CAPTURE(seed, most.columns, most.lots);
      CHECK(counted(made) == 60);
      CHECK(made.columns.size() <= most.columns);
      CHECK(column_of(made, any.asked) < made.columns.size());
    }
  }
}

TEST_CASE("lots in the order that crosses least are put so that their lines do not cross", "[paper][lineage]") {
  const Layers made = layers(picture({{0, 5}, {1, 4}, {2, 3}}, 6, 0), {});
  for (const Link& one : made.links)
    for (const Link& other : made.links) CHECK_FALSE((one.from < other.from && one.to > other.to));
}

TEST_CASE("a lineage that goes in a circle is drawn all the same", "[paper][lineage]") {
  CHECK(counted(layers(picture({{0, 1}, {1, 0}, {1, 2}}, 3, 1), {})) == 3);
}

TEST_CASE("a lineage fits its page, its letters apart and never below nine points, on both papers",
          "[paper][lineage]") {
  for (const Paper paper : {Paper::A4, Paper::Letter})
    for (unsigned seed = 1; seed <= 6; ++seed) {
      CAPTURE(seed);
      const LineageDrawing made = drawn(by_chance(seed, static_cast<int>(seed * 12)), paper);
      CHECK(made.size.width > made.size.height);
      const Rect print{0, 0, static_cast<double>(made.size.width.value), static_cast<double>(made.size.height.value)};
      for (std::size_t i = 0; i < made.drawing.texts.size(); ++i) {
        const TextRun& run = made.drawing.texts[i];
        CHECK(run.size.value >= 9);
        CHECK(ink(run, kPrint).within(print));
        for (std::size_t other = i + 1; other < made.drawing.texts.size(); ++other)
          CHECK_FALSE(ink(run, kPrint).meets(ink(made.drawing.texts[other], kPrint)));
      }
      for (const Box& box : made.drawing.boxes) CHECK(rect(box).within(print));
    }
}

TEST_CASE("a long lineage is summed up, and the sum is printed", "[paper][lineage]") {
  std::vector<std::pair<int, int>> into;
  for (int i = 1; i <= 220; ++i) into.push_back({0, i});
  const QString text = read(drawn(picture(into, 221, 0)).drawing);
  const auto more = QRegularExpression(QStringLiteral("Morelots:([0-9]+)")).match(text);
  REQUIRE(more.hasMatch());
  CHECK(more.captured(1).toInt() + text.count(QStringLiteral("A26330CLB")) == 221);
}

TEST_CASE("an assumed link is dashed, a certain one is not", "[paper][lineage]") {
  LineagePicture one = picture({{0, 1}}, 2, 1);
  const std::size_t certain = drawn(one).drawing.boxes.size();
  one.edges.front().assumed = true;
  CHECK(drawn(one).drawing.boxes.size() > certain);
}

TEST_CASE("the same picture becomes PDF and SVG; a letter that no face has and a word too wide are refused",
          "[paper][lineage]") {
  LineagePicture one = picture({{0, 1}, {1, 2}}, 3, 1);
  const LineageDrawing made = drawn(one);
  const auto svg_file = svg(shipped_faces(), made.drawing, made.size, one.title);
  REQUIRE(svg_file);
  CHECK(svg_file->startsWith("<svg"));
  PdfWriter writer(shipped_faces());
  writer.begin({one.title, one.language, made.size});
  writer.add_page(std::nullopt, made.drawing);
  CHECK(writer.finish());

  one.nodes[0].name = QString(120, u'm');
  const auto wide = lineage_drawing(one, Paper::A4, shipped_faces());
  REQUIRE_FALSE(wide);
  CHECK(wide.error().front().code == problem::Code::NoRoom);
  CHECK(wide.error().front().what.contains(one.nodes[0].name));
  one.nodes[0].name = QStringLiteral("\u0E01");
  CHECK(lineage_drawing(one, Paper::A4, shipped_faces()).error().front().code == problem::Code::NoGlyph);
}

}  // namespace lardiner::paper
