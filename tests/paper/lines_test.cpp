// Lines: never too wide, as full as they can be, broken only where reading allows it.
#include "paper/lines.h"

#include <random>

#include "show.h"
#include "tools.h"

namespace lardiner::paper {

namespace {

constexpr TextStyle kStyle{{7}, {203}};

FineDots width_of(const QString& text, Weight weight = Weight::Regular) {
  return width(shipped_faces(), text, weight, kStyle.size, kStyle.resolution);
}

FineDots width_in(FaceId face, const QString& text) {
  return shipped_faces().width(text, face, kStyle.size, kStyle.resolution);
}

QString text_of(const Line& line) {
  QString text;
  for (const LinePiece& piece : line.pieces) text += piece.text;
  return text;
}

QStringList broken(const Paragraph& paragraph, FineDots width) {
  const auto lines = break_lines(shipped_faces(), paragraph, kStyle, width);
  if (!lines) FAIL("too long: " << lines.error().word.toStdString());
  QStringList texts;
  for (const Line& line : *lines) texts += text_of(line);
  return texts;
}

QStringList broken(const QString& text, FineDots width) { return broken({{text, Weight::Regular}}, width); }

}  // namespace

TEST_CASE("a paragraph is broken at spaces, which are dropped at the line's end", "[paper][lines]") {
  CHECK(broken(QStringLiteral("Keep at five or"), width_of(QStringLiteral("Keep at five"))) ==
        QStringList{QStringLiteral("Keep at five"), QStringLiteral("or")});
  CHECK(broken(QStringLiteral("Keep at five or"), width_of(QStringLiteral("Keep at five")) - FineDots{0.01}) ==
        QStringList{QStringLiteral("Keep at"), QStringLiteral("five or")});
}

TEST_CASE("a text that fits stays one line, and nothing gives no line", "[paper][lines]") {
  CHECK(broken(QStringLiteral("Keep cold"), width_of(QStringLiteral("Keep cold"))) ==
        QStringList{QStringLiteral("Keep cold")});
  CHECK(broken(QString(), {100}).isEmpty());
  CHECK(broken(Paragraph{}, {100}).isEmpty());
}

TEST_CASE("a number stays with its unit over a no-break space", "[paper][lines]") {
  const QString text = QStringLiteral("Keep at 5\u00A0°C or below");
  for (int width = 60; width < 300; ++width) {
    const auto lines = break_lines(shipped_faces(), {{text, Weight::Regular}}, kStyle, {width * 1.0});
    if (!lines) continue;
    int whole = 0;
    for (const Line& line : *lines) whole += text_of(line).contains(QStringLiteral("5\u00A0°C"));
    CHECK(whole == 1);
  }
}

TEST_CASE("a word that is wider than the line is reported, never cut", "[paper][lines]") {
  const auto lines =
      break_lines(shipped_faces(), {{QStringLiteral("with Worcestershire sauce"), Weight::Regular}}, kStyle, {120});
  REQUIRE_FALSE(lines);
  CHECK(lines.error().word == QStringLiteral("Worcestershire"));
  CHECK(lines.error().width.value == Approx(width_of(QStringLiteral("Worcestershire")).value));
  CHECK(lines.error().width > FineDots{120});
}

TEST_CASE("a hyphen between words is a place to break", "[paper][lines]") {
  CHECK(broken(QStringLiteral("Chilli-lime"), width_of(QStringLiteral("Chilli-"))) ==
        QStringList{QStringLiteral("Chilli-"), QStringLiteral("lime")});
}

TEST_CASE("at a soft hyphen the line ends in a hyphen that fits too", "[paper][lines]") {
  const QString text = QStringLiteral("Butter\u00ADmilch");
  CHECK(broken(text, width_of(QStringLiteral("Buttermilch"))) == QStringList{QStringLiteral("Buttermilch")});
  CHECK(broken(text, width_of(QStringLiteral("Butter-"))) ==
        QStringList{QStringLiteral("Butter-"), QStringLiteral("milch")});
  const auto lines = break_lines(shipped_faces(), {{text, Weight::Regular}}, kStyle,
                                 width_of(QStringLiteral("Butter-")) - FineDots{0.01});
  REQUIRE_FALSE(lines);
  CHECK(lines.error().word == QStringLiteral("Buttermilch"));
}

TEST_CASE("strong and regular runs share a line, each at its place", "[paper][lines]") {
  const Paragraph paragraph = {{QStringLiteral("500\u00A0g"), Weight::Bold},
                               {QStringLiteral(" (1\u00A0lb 1.6\u00A0oz)"), Weight::Regular}};
  const auto lines = break_lines(shipped_faces(), paragraph, kStyle, {1000});
  REQUIRE(lines);
  REQUIRE(lines->size() == 1);
  const Line& line = lines->front();
  REQUIRE(line.pieces.size() == 2);
  CHECK(line.pieces[0].text == QStringLiteral("500\u00A0g"));
  CHECK(line.pieces[0].face == FaceId::AtkinsonBold);
  CHECK(line.pieces[0].x.value == 0);
  CHECK(line.pieces[1].face == FaceId::AtkinsonRegular);
  CHECK(line.pieces[1].x.value == Approx(width_of(QStringLiteral("500\u00A0g"), Weight::Bold).value));
  CHECK(line.width.value == Approx(line.pieces[1].x.value + width_of(line.pieces[1].text).value));
}

TEST_CASE("a word that changes its weight inside is still one word", "[paper][lines]") {
  const Paragraph paragraph = {{QStringLiteral("for a "), Weight::Regular},
                               {QStringLiteral("butter"), Weight::Bold},
                               {QStringLiteral("milk"), Weight::Regular}};
  CHECK(broken(paragraph, {130}) == QStringList{QStringLiteral("for a"), QStringLiteral("buttermilk")});
}

TEST_CASE("whatever the words, lines lose no text, fit their width, and leave no room for the next word",
          "[paper][lines]") {
  std::mt19937 seeded(20261125);
  const auto random = [&seeded] { return static_cast<int>(seeded() >> 1U); };
  for (int round = 0; round < 400; ++round) {
    QStringList words;
    Paragraph paragraph;
    for (int n = 0, count = 1 + random() % 30; n < count; ++n) {
      QString word;
      for (int letters = 1 + random() % 9; letters > 0; --letters)
        word += QChar(u'a' + static_cast<char16_t>(random() % 26));
      words += word;
      paragraph.push_back({n == 0 ? word : u' ' + word, random() % 3 == 0 ? Weight::Bold : Weight::Regular});
    }
    const FineDots width{150.0 + random() % 300};
    const auto lines = break_lines(shipped_faces(), paragraph, kStyle, width);
    REQUIRE(lines);
    QStringList texts;
    for (const Line& line : *lines) {
      CHECK(line.width.value <= width.value + 1e-6);
      const LinePiece& last = line.pieces.back();
      CHECK(line.width.value == Approx(last.x.value + width_in(last.face, last.text).value));
      texts += text_of(line);
    }
    CHECK(texts.join(u' ') == words.join(u' '));
    for (std::size_t n = 1; n < lines->size(); ++n) {
      const LinePiece& next = (*lines)[n].pieces.front();
      const QString word = next.text.section(u' ', 0, 0);
      const double room = width.value - (*lines)[n - 1].width.value;
      CHECK(room < width_in(next.face, u' ' + word).value);
    }
  }
}

}  // namespace lardiner::paper
