// Lines to write on: how captions and blanks share a row, and that a hand has room.
#include "paper/label_blanks.h"

#include "paper/one_line.h"
#include "show.h"
#include "tools.h"

using namespace lardiner;
using namespace lardiner::paper;
using facts::FactId;

namespace {

constexpr Resolution kDots{203};

FactText fact(FactId id, const QStringList& texts) {
  FactText out{id, {}};
  for (const QString& text : texts) out.paragraphs.push_back({{text, Weight::Bold}});
  return out;
}

BlanksShape shape(double width) {
  BlanksShape out{Points{8}, FineDots{64}, kDots, FineDots{12}, FineDots{20}, {}, false};
  out.right = [width](FineDots) { return FineDots{12 + width}; };
  return out;
}

Blanks laid(const std::vector<FactText>& facts, double width = 780) {
  return lay_blanks(shipped_faces(), facts, shape(width));
}

const FactText kMade = fact(FactId::BlankMade, {QStringLiteral("Made ____________ at _______")});
const FactText kBy = fact(FactId::BlankBy, {QStringLiteral("By ____")});

}  // namespace

TEST_CASE("a run of underscores becomes a line to write on, and is not printed itself", "[paper][blanks]") {
  const Blanks blanks = laid({kMade});
  REQUIRE(blanks.texts.size() == 2);
  CHECK(blanks.texts[0].text == QStringLiteral("Made"));
  CHECK(blanks.texts[1].text == QStringLiteral("at"));
  REQUIRE(blanks.boxes.size() == 2);
  CHECK(blanks.lacks_width.value == 0);
}

TEST_CASE("captions and their lines stand side by side without touching, to the end of the row", "[paper][blanks]") {
  const Blanks blanks = laid({kMade, kBy});
  REQUIRE(blanks.boxes.size() == 3);
  double end = 12;
  for (size_t i = 0; i < blanks.boxes.size(); ++i) {
    const TextRun& caption = blanks.texts[i];
    CHECK(caption.x.value >= end);
    end = caption.x.value + width(shipped_faces(), caption.text, Weight::Bold, caption.size, kDots).value;
    CHECK(blanks.boxes[i].x.value >= end);
    end = blanks.boxes[i].x.value + blanks.boxes[i].width.value;
  }
  CHECK(end <= 12 + 780);
  CHECK(end > 12 + 780 - 2);
}

TEST_CASE("a longer run is a wider line, and each is at least 1.7 mm for an underscore", "[paper][blanks]") {
  for (const double row : {480.0, 780.0}) {
    const Blanks blanks = laid({kMade}, row);
    REQUIRE(blanks.boxes.size() == 2);
    const int day = blanks.boxes[0].width.value, time = blanks.boxes[1].width.value;
    CHECK(day > time);
    CHECK(day >= 12 * 1.7 / 25.4 * 203 - 1);
    CHECK(time >= 7 * 1.7 / 25.4 * 203 - 1);
  }
}

TEST_CASE("what finds no room in a row begins the next, each as high as a hand needs", "[paper][blanks]") {
  const Blanks one = laid({kMade, kBy}), two = laid({kMade, kBy}, 380);
  CHECK(one.bottom.value == 20 + 64);
  CHECK(two.bottom.value == 20 + 2 * 64);
  CHECK(two.boxes[0].y == two.boxes[1].y);
  CHECK((two.boxes[2].y - two.boxes[0].y).value == 64);
}

TEST_CASE("a reading that takes two rows shares neither with the next", "[paper][blanks]") {
  const FactText readings = fact(
      FactId::Readings, {QStringLiteral("cook to 165 °F for 15 s: _______ at _______"), QStringLiteral("cool: ___")});
  const Blanks broken = laid({readings}, 430);
  REQUIRE(broken.texts.size() == 3);
  CHECK(broken.boxes[0].y < broken.boxes[1].y);
  CHECK(broken.boxes[1].y < broken.boxes[2].y);
  const Blanks whole = laid({readings}, 780);  // where both are whole they may share one
  REQUIRE(whole.boxes.size() == 3);
  CHECK(whole.boxes[0].y == whole.boxes[2].y);
}

TEST_CASE("a caption that leaves no room to write refuses the row", "[paper][blanks]") {
  const Blanks blanks =
      laid({fact(FactId::Readings, {QStringLiteral("COOK TO 165 °F (74 °C) for 15 s: _______")})}, 300);
  CHECK(blanks.lacks_width.value > 0);
  CHECK(blanks.lacking == FactId::Readings);
  CHECK(laid({fact(FactId::Readings, {QStringLiteral("COOK: _______")})}, 300).lacks_width.value == 0);
}

TEST_CASE("readings stand one under the other; a caption in two languages has one line", "[paper][blanks]") {
  const QStringList two{QStringLiteral("USE BY ____________"), QStringLiteral("USAR HASTA ____________")};
  const Blanks date = laid({fact(FactId::BlankDate, two)});
  CHECK(date.boxes.size() == 1);
  REQUIRE(date.texts.size() == 1);
  CHECK(date.texts[0].text == QStringLiteral("USE BY · USAR HASTA"));
  CHECK(laid({fact(FactId::Readings, {QStringLiteral("one: _______"), QStringLiteral("two: _______")})}).boxes.size() ==
        2);
}

TEST_CASE("the date's caption is white on black within its row", "[paper][blanks]") {
  BlanksShape dark = shape(780);
  dark.dark = true;
  const Blanks blanks =
      lay_blanks(shipped_faces(), {fact(FactId::BlankDate, {QStringLiteral("USE BY ____________")})}, dark);
  REQUIRE(blanks.boxes.size() == 2);
  REQUIRE(blanks.texts.size() == 1);
  const Box &black = blanks.boxes[0], &line = blanks.boxes[1];
  const double end =
      blanks.texts[0].x.value + width(shipped_faces(), blanks.texts[0].text, Weight::Bold, Points{8}, kDots).value;
  CHECK(blanks.texts[0].ink == Ink::White);
  CHECK(blanks.texts[0].x.value > black.x.value);
  CHECK(end < black.x.value + black.width.value);
  CHECK(black.height.value == 64);
  CHECK(line.x.value > black.x.value + black.width.value);
}
