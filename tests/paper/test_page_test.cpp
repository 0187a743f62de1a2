// The test page: ticks on the right dots, codes that two readers read, nothing outside the printable area.
#include "paper/test_page.h"

#include <QFile>
#include <set>

#include "paper/one_line.h"
#include "paper/pdf.h"
#include "paper/test_patterns.h"
#include "show.h"
#include "symbol/read.h"
#include "tools.h"

using namespace lardiner;
using namespace lardiner::paper;

namespace {

constexpr int kCodeBytes = 82;

struct Case {
  const char* name;
  int width, height;  // hundredths of a millimetre
  int dpi;
};

const Case kCases[] = {{"lid", 5000, 5000, 203},
                       {"side", 10000, 5000, 203},
                       {"fine", 10000, 5000, 300},
                       {"finest", 6000, 6000, 600},
                       {"case", 10160, 15240, 203}};

TestPageWish wish(const Case& of) {
  static const LabelTemplate inside = [] {
    QFile file(QStringLiteral(LARDINER_SOURCE_DIR "/templates/labels/inside.toml"));
    REQUIRE(file.open(QIODevice::ReadOnly));
    return read_label_template(file.readAll(), QStringLiteral("inside.toml")).value();
  }();
  book::Media medium;
  medium.width = of.width;
  medium.height = of.height;
  medium.dots_per_inch = of.dpi;
  medium.margin = {150, 200, 250, 100};
  const Sheet sheet = sheet_of(medium);
  return {QString::fromLatin1(of.name), sheet.label, sheet.margin, {{QStringLiteral("inside"), &inside}}, kCodeBytes};
}

std::vector<Drawing> labels(const Case& of) {
  auto drawn = test_pages(wish(of), shipped_faces());
  if (!drawn) FAIL(problem::text(drawn.error()).toStdString());
  return *drawn;
}

QByteArray pdf_of(const Case& of) {
  PdfWriter writer(shipped_faces());
  writer.begin({QStringLiteral("test page"), QStringLiteral("en"), wish(of).page});
  for (const Drawing& drawing : labels(of)) writer.add_page(std::nullopt, drawing);
  const auto bytes = writer.finish();
  if (!bytes) FAIL(problem::text(bytes.error()).toStdString());
  return *bytes;
}

// The dots at which a ruler's ticks begin, from the start of the frame.
std::set<int> ticks(const Drawing& page, const TestPageWish& of, bool across, bool far) {
  std::set<int> out;
  const int near_end = (across ? of.margin.top : of.margin.left).value + 2;
  const int far_end = (across ? of.page.height - of.margin.bottom : of.page.width - of.margin.right).value - 2;
  for (const Box& box : page.boxes) {
    const Dots thick = across ? box.width : box.height;
    const int from = (across ? box.y : box.x).value, to = from + (across ? box.height : box.width).value;
    if (thick.value != 1 || (far ? to != far_end : from != near_end)) continue;
    out.insert((across ? box.x - of.margin.left : box.y - of.margin.top).value);
  }
  return out;
}

std::set<int> expected_ticks(double apart, int dpi, int length) {
  std::set<int> out;
  for (int i = 1;; ++i) {
    const int dot = static_cast<int>(std::lround(i * apart * dpi / 25.4));
    if (dot >= length - 2) return out;
    out.insert(dot);
  }
}

symbol::Grey grey(const Picture& picture) {
  const auto* bytes = reinterpret_cast<const char*>(picture.grey.data());
  return {picture.width, picture.height, picture.width, QByteArray(bytes, static_cast<qsizetype>(picture.grey.size()))};
}

bool is_board(const Code& code) { return code.image.modules * code.module.value == kBoardDots; }

}  // namespace

TEST_CASE("the rulers' ticks stand on the dot nearest to each millimetre and eighth of an inch", "[paper][test_page]") {
  for (const Case& of : kCases) {
    CAPTURE(of.name);
    const TestPageWish page = wish(of);
    const Drawing rulers = labels(of).front();
    const int width = (page.page.width - page.margin.left - page.margin.right).value;
    const int height = (page.page.height - page.margin.top - page.margin.bottom).value;
    CHECK(ticks(rulers, page, true, false) == expected_ticks(1, of.dpi, width));
    CHECK(ticks(rulers, page, true, true) == expected_ticks(25.4 / 8, of.dpi, width));
    CHECK(ticks(rulers, page, false, false) == expected_ticks(1, of.dpi, height));
    CHECK(ticks(rulers, page, false, true) == expected_ticks(25.4 / 8, of.dpi, height));
  }
  CHECK(tick(10, Millimetres{1}, Resolution{203}).value == 80);  // 79.92
  CHECK(tick(10, Millimetres{1}, Resolution{300}).value == 118);
  CHECK(tick(8, Millimetres{25.4 / 8}, Resolution{203}).value == 203);
}

TEST_CASE("nothing of the test page stands in the medium's margin", "[paper][test_page]") {
  for (const Case& of : kCases) {
    CAPTURE(of.name);
    const TestPageWish page = wish(of);
    const int left = page.margin.left.value, right = (page.page.width - page.margin.right).value;
    const int top = page.margin.top.value, bottom = (page.page.height - page.margin.bottom).value;
    const auto inside = [&](double x, double y, double width, double height) {
      return x >= left && y >= top && x + width <= right && y + height <= bottom;
    };
    for (const Drawing& drawing : labels(of)) {
      for (const Box& box : drawing.boxes) REQUIRE(inside(box.x.value, box.y.value, box.width.value, box.height.value));
      for (const Code& code : drawing.codes) {
        const int side = code.image.modules * code.module.value;
        REQUIRE(inside(code.x.value, code.y.value, side, side));
      }
      for (const TextRun& text : drawing.texts) {
        const double em = fine_dots(text.size, page.page.resolution).value;
        const double wide = width(shipped_faces(), text.text, Weight::Bold, text.size, page.page.resolution).value;
        CAPTURE(text.text);
        REQUIRE(inside(text.x.value, text.baseline.value - 0.75 * em,
                       text.face == FaceId::AtkinsonRegular ? wide * 0.9 : wide, 0.75 * em + 0.25 * em));
      }
    }
  }
}

TEST_CASE("each code is read at its printed size by two readers, from 2 dots a module up, and says what it is",
          "[paper][test_page][loop]") {
  for (const Case& of : kCases) {
    CAPTURE(of.name);
    const std::vector<Drawing> drawn = labels(of);
    const Folder folder;
    const QString pdf = folder.write(QStringLiteral("test.pdf"), pdf_of(of));
    int module = 2;
    for (size_t i = 0; i < drawn.size(); ++i) {
      std::set<QByteArray> expected, ours, theirs;
      for (const Code& code : drawn[i].codes)
        if (!is_board(code)) {
          CHECK(code.module.value == module);
          expected.insert(test_code_content(Resolution{of.dpi}, module++, kCodeBytes));
        }
      if (expected.empty()) continue;
      const Picture picture = renderers().front().draw(folder, pdf, static_cast<int>(i) + 1, of.dpi);
      for (const symbol::Found& found : symbol::read_codes(grey(picture))) ours.insert(found.bytes);
      const Ran zbar =
          run(QStringLiteral("zbarimg"), {QStringLiteral("-q"), QStringLiteral("--raw"), QStringLiteral("-S*.disable"),
                                          QStringLiteral("-Sqrcode.enable"), folder.path(QStringLiteral("page.pbm"))});
      for (const QByteArray& line : zbar.out.split('\n'))
        if (!line.isEmpty()) theirs.insert(line);
      CHECK(ours == expected);
      CHECK(theirs == expected);
    }
    CHECK(module > 4);  // the medium's own 3 dots are among them
  }
}

TEST_CASE("a test code holds as many bytes as a label's, and its words when these are longer", "[paper][test_page]") {
  CHECK(test_code_content(Resolution{203}, 3, 0) == "Lardiner test page 203 dpi, 3 dots a module");
  for (const int bytes : {50, 75, 84, 120}) {
    const QByteArray text = test_code_content(Resolution{300}, 4, bytes);
    CHECK(text.size() == bytes);
    CHECK(text.startsWith("Lardiner test page 300 dpi, 4 dots a module"));
  }
}

TEST_CASE("the staircase fires each dot of the printable width by itself, once", "[paper][test_page]") {
  Drawing page;
  draw_lines(page, {Dots{10}, Dots{333}}, Dots{5});
  std::multiset<int> fired;
  int whole = 0, bottom = 0;
  for (const Box& box : page.boxes) {
    bottom = std::max(bottom, (box.y + box.height).value);
    if (box.width.value == 1) fired.insert(box.x.value);
    if (box.width.value == 323 && box.height.value == 1) ++whole;
  }
  CHECK(fired.size() == 323);
  for (int x = 10; x < 333; ++x) REQUIRE(fired.count(x) == 1);
  CHECK(whole == 7);
  CHECK(bottom <= 5 + lines_height());
}

TEST_CASE("a checkerboard's squares alternate from the top left", "[paper][test_page]") {
  const CodeImage board = checkerboard(20);
  const int stride = 3;
  for (int y = 0; y < 20; ++y)
    for (int x = 0; x < 20; ++x)
      REQUIRE(((board.rows.at(y * stride + x / 8) >> (7 - x % 8)) & 1) == ((x + y) % 2 == 0 ? 1 : 0));
}

TEST_CASE("the page tells each template's smallest type in whole dots of x-height", "[paper][test_page]") {
  const TestPageWish page = wish(kCases[0]);
  const Points size = smallest_type(*page.templates.front().label, shipped_faces(), Resolution{203});
  const double x = fine_dots(size, Resolution{203}).value * shipped_faces().least_x_height(Weight::Regular);
  CHECK(x >= 1.2 / 25.4 * 203);
  QStringList texts;
  for (const Drawing& drawing : labels(kCases[0]))
    for (const TextRun& run : drawing.texts) texts << run.text;
  CHECK(texts.join(u' ').contains(QStringLiteral("%1 pt").arg(QString::number(size.value, 'f', 1))));
  CHECK(texts.contains(QStringLiteral("0 O 1 l I 8 B 5 S")));
}

TEST_CASE("the same medium gives the same bytes", "[paper][test_page]") {
  CHECK(pdf_of(kCases[1]) == pdf_of(kCases[1]));
}

TEST_CASE("refused: a medium too small for the test page", "[paper][test_page]") {
  const auto drawn = test_pages(wish({"dot", 1500, 1000, 203}), shipped_faces());
  REQUIRE(!drawn);
  CHECK(problem::text({drawn.error()}) ==
        QStringLiteral("the test page does not fit on dot\n  print it on a larger medium of the same printer"));
}
