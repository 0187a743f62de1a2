// The fallback between families: whole words, one script at a time, the same choice for measuring and for drawing.
#include "paper/spans.h"

#include "paper/lines.h"
#include "show.h"
#include "tools.h"

namespace lardiner::paper {

namespace {

// The text with its families: "A[Keep at 5] N[°С]".
QString divided(const QString& text) {
  QStringList out;
  qsizetype end = 0;
  for (const Span& span : spans(shipped_faces(), text)) {
    CHECK(span.start == end);
    end = span.start + span.size;
    const QChar family = u"ANC"[static_cast<std::size_t>(span.family)];
    out += QStringLiteral("%1[%2]").arg(family).arg(text.mid(span.start, span.size));
  }
  CHECK(end == text.size());
  return out.join(u' ');
}

constexpr TextStyle kStyle{{9}, {203}};

}  // namespace

TEST_CASE("Latin text is of the Latin family throughout, and nothing is no stretch", "[paper][spans]") {
  CHECK(divided(QStringLiteral("Jalapeño butter, 500 g · 1½ cups")) ==
        QStringLiteral("A[Jalapeño butter, 500 g · 1½ cups]"));
  CHECK(divided({}).isEmpty());
}

TEST_CASE("a word with one letter that the Latin family lacks is whole in the next that has all", "[paper][spans]") {
  CHECK(divided(QStringLiteral("Cá sữa tươi")) == QStringLiteral("A[Cá ] N[sữa tươi]"));
  CHECK(divided(QStringLiteral("(Phở-bò)")) == QStringLiteral("N[(Phở-bò)]"));
}

TEST_CASE("a change of script divides a word; figures are Latin beside any script", "[paper][spans]") {
  CHECK(divided(QStringLiteral("含有：牛奶milk")) == QStringLiteral("C[含有：牛奶] A[milk]"));
  CHECK(divided(QStringLiteral("冷藏5°C以下")) == QStringLiteral("C[冷藏] A[5°C] C[以下]"));
  CHECK(divided(QStringLiteral("25 ноября 2026")) == QStringLiteral("A[25 ] N[ноября ] A[2026]"));
  CHECK(divided(QStringLiteral("Γάλα, αυγό")) == QStringLiteral("N[Γάλα, αυγό]"));
}

TEST_CASE("signs go with the script before them, opening ones with the one behind", "[paper][spans]") {
  CHECK(divided(QStringLiteral("牛奶(milk)")) == QStringLiteral("C[牛奶] A[(milk)]"));
  CHECK(divided(QStringLiteral("milk（牛奶），")) == QStringLiteral("A[milk] C[（牛奶），]"));
  CHECK(divided(QStringLiteral("«молоко»!")) == QStringLiteral("N[«молоко»!]"));
}

TEST_CASE("a word that no family has whole is divided where it must be", "[paper][spans]") {
  CHECK(divided(QStringLiteral("½杯")) == QStringLiteral("A[½] C[杯]"));
}

TEST_CASE("a paragraph is as wide as what is drawn of it, whatever its scripts, and breaks inside a stretch",
          "[paper][spans][lines]") {
  const Paragraph paragraph = {{QStringLiteral("Milk, 牛奶, молоко и "), Weight::Bold},
                               {QStringLiteral("sữa tươi, 请勿食用以下熟食, γάλα"), Weight::Regular}};
  const MeasuredText measured(shipped_faces(), paragraph);
  for (int width = 150; width < 700; ++width) {
    const auto lines = measured.lines(kStyle, [&](std::size_t) { return FineDots{width * 1.0}; });
    REQUIRE(lines);
    QString all;
    for (const Line& line : *lines) {
      FineDots x;
      for (const LinePiece& piece : line.pieces) {
        CHECK(piece.x.value == Approx(x.value));
        for (QChar c : piece.text) CHECK(shipped_faces()[piece.face].glyph(c.unicode()) != nullptr);
        x += shipped_faces().width(piece.text, piece.face, kStyle.size, kStyle.resolution);
        all += piece.text;
      }
      CHECK(line.width.value == Approx(x.value));
      CHECK(line.width.value <= width + 1e-6);
    }
    all.remove(u' ');
    CHECK(all == QStringLiteral("Milk,牛奶,молокоиsữatươi,请勿食用以下熟食,γάλα"));
  }
}

TEST_CASE("a hyphen added at a soft hyphen is of the word's own face", "[paper][spans][lines]") {
  const auto lines =
      break_lines(shipped_faces(), {{QStringLiteral("моло\u00ADко"), Weight::Bold}}, kStyle, FineDots{90});
  REQUIRE(lines);
  REQUIRE(lines->size() == 2);
  REQUIRE(lines->front().pieces.size() == 1);
  CHECK(lines->front().pieces[0].text == QStringLiteral("моло-"));
  CHECK(lines->front().pieces[0].face == FaceId::NotoBold);
}

TEST_CASE("a line's runs stand one behind the other, each in its face, as wide together as measured",
          "[paper][spans]") {
  const QString text = QStringLiteral("Контейнер 3 из 12 (桶)");
  std::vector<TextRun> runs;
  add_runs(runs, shipped_faces(), {text, Weight::Bold, {9}, {20}, {100}, Ink::White}, {203});
  QString drawn;
  FineDots x{20};
  for (const TextRun& run : runs) {
    CHECK(run.x.value == Approx(x.value));
    CHECK(run.baseline.value == 100);
    CHECK(run.ink == Ink::White);
    x += shipped_faces().width(run.text, run.face, run.size, {203});
    drawn += run.text;
  }
  CHECK(drawn == text);
  CHECK(x.value - 20 == Approx(width(shipped_faces(), text, Weight::Bold, {9}, {203}).value));
  CHECK(runs.front().face == FaceId::NotoBold);
  CHECK(runs.back().face == FaceId::ScBold);
}

}  // namespace lardiner::paper
