// What is printed is what can be read: text comes back out of the PDF, whatever its scripts.
#include "paper/one_line.h"
#include "paper/pdf.h"
#include "show.h"
#include "tools.h"

namespace lardiner::paper {

namespace {

// A canvas on which a dot is a point.
constexpr PageSize kCanvas{{1600}, {1600}, {72}};

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

}  // namespace

TEST_CASE("every character that a face prints can be copied out of the PDF again", "[paper][pdf][text]") {
  const FaceId face = GENERATE(from_range(kFaces));
  QStringList lines;
  for (char32_t c : visible_characters(face)) {
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

TEST_CASE("Greek, Russian, Vietnamese, Chinese and Latin in one line come back as they were written",
          "[paper][pdf][text]") {
  const QString text = QStringLiteral("Milk 牛奶, γάλα/молоко · sữa tươi ở 5 °C（41 °F）以下 · ẰẮ Ộ ỹ · 2026");
  REQUIRE(shipped_faces().printable(text.normalized(QString::NormalizationForm_D)) == text);
  Drawing page;
  for (Weight weight : kWeights) {
    const double y = 40.0 * (1 + static_cast<int>(weight));
    add_runs(page.texts, shipped_faces(), {text, weight, {20}, {10}, {y}, Ink::Black}, kCanvas.resolution);
  }
  const Folder folder;
  const QString file = written(folder, {page});
  const Ran ran =
      run(QStringLiteral("pdftotext"), {QStringLiteral("-raw"), QStringLiteral("-nopgbrk"), QStringLiteral("-enc"),
                                        QStringLiteral("UTF-8"), file, QStringLiteral("-")});
  CHECK(ran.err == "");
  CHECK(QString::fromUtf8(ran.out).split(u'\n', Qt::SkipEmptyParts) == QStringList{text, text, text});
  const Ran mutool = run(QStringLiteral("mutool"), {QStringLiteral("draw"), QStringLiteral("-q"), QStringLiteral("-N"),
                                                    QStringLiteral("-F"), QStringLiteral("text"), file});
  CHECK(mutool.err == "");
  CHECK(QString::fromUtf8(mutool.out).split(u'\n', Qt::SkipEmptyParts).mid(0, 3) == QStringList{text, text, text});
  CHECK(run(QStringLiteral("qpdf"), {QStringLiteral("--check"), file}).status == 0);
}

TEST_CASE("equal documents are equal bytes, whatever scripts were printed before", "[paper][pdf][text]") {
  const auto page = [](const QString& text) {
    Drawing drawing;
    add_runs(drawing.texts, shipped_faces(), {text, Weight::Bold, {20}, {10}, {40}, Ink::Black}, kCanvas.resolution);
    return drawing;
  };
  const auto printed = [](PdfWriter& writer, const Drawing& drawing) {
    writer.begin({QStringLiteral("text"), QStringLiteral("en"), kCanvas});
    writer.add_page({}, drawing);
    return writer.finish().value();
  };
  PdfWriter first(shipped_faces()), second(shipped_faces());
  const QByteArray latin = printed(first, page(QStringLiteral("milk")));
  const QByteArray mixed = printed(first, page(QStringLiteral("milk 牛奶 молоко")));
  CHECK(printed(second, page(QStringLiteral("молоко"))).size() > 0);
  CHECK(printed(second, page(QStringLiteral("牛奶"))).size() > 0);
  CHECK(printed(second, page(QStringLiteral("milk 牛奶 молоко"))) == mixed);
  CHECK(printed(second, page(QStringLiteral("milk"))) == latin);
  CHECK(latin.count("/FontFile2") == 1);
  CHECK(mixed.count("/FontFile2") == 3);
}

}  // namespace lardiner::paper
