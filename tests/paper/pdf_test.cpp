// The file as a whole: sound in every reader, small, the same bytes each time, and refused rather than wrong.
#include "paper/pdf.h"

#include <random>
#include <thread>

#include "show.h"
#include "tools.h"

namespace lardiner::paper {

namespace {

constexpr PageSize kLid{{400}, {400}, {203}};

PdfSettings settings(const QString& title = QStringLiteral("Chilli-lime butter, Crème ½")) {
  return {title, QStringLiteral("es-MX"), kLid};
}

TextRun text(Weight weight, double size, double x, double baseline, const QString& words, Ink ink = Ink::Black) {
  return {face_of(Family::Atkinson, weight), {size}, {x}, {baseline}, words, ink};
}

CodeImage code_image(unsigned seed, int modules) {
  std::mt19937 random(seed);
  CodeImage image{modules, {}};
  for (int n = 0; n < modules * ((modules + 7) / 8); ++n) image.rows += static_cast<char>(random() & 0xFF);
  return image;
}

Drawing lid_form() {
  Drawing form;
  form.boxes = {{{0}, {62}, {400}, {54}}};
  form.texts = {text(Weight::ExtraBold, 12, 16, 46, QStringLiteral("Chilli-lime butter")),
                text(Weight::Bold, 7, 16, 100, QStringLiteral("USE BY"), Ink::White),
                text(Weight::ExtraBold, 12, 106, 100, QStringLiteral("TUE 01 DEC"), Ink::White),
                text(Weight::Bold, 9, 16, 148, QStringLiteral("CONTAINS milk")),
                text(Weight::Regular, 6.5, 16, 180, QStringLiteral("Keep at 5 °C (41 °F) or below"))};
  return form;
}

Drawing lid_of(int number, int count) {
  Drawing own;
  own.codes = {{{236}, {212}, {3}, code_image(static_cast<unsigned>(number), 41)}};
  own.texts = {text(Weight::Regular, 6.5, 16, 294, QStringLiteral("Tub %1 of %2").arg(number).arg(count)),
               text(Weight::Bold, 6.5, 16, 380, QStringLiteral("A26329CLB7 · MR"))};
  return own;
}

QByteArray lids(PdfWriter& writer, int count) {
  writer.begin(settings());
  const PdfWriter::Form form = writer.add_form(lid_form());
  for (int n = 1; n <= count; ++n) writer.add_page(form, lid_of(n, count));
  const problem::Expected<QByteArray> pdf = writer.finish();
  if (!pdf) FAIL(problem::text(pdf.error()).toStdString());
  return *pdf;
}

QByteArray lids(int count) {
  PdfWriter writer(shipped_faces());
  return lids(writer, count);
}

// The error of a document with one page.
problem::Error refusal(const Drawing& drawing) {
  PdfWriter writer(shipped_faces());
  writer.begin(settings());
  writer.add_page({}, drawing);
  const problem::Expected<QByteArray> pdf = writer.finish();
  REQUIRE_FALSE(pdf);
  return pdf.error();
}

bool is_accepted(const Drawing& drawing) {
  PdfWriter writer(shipped_faces());
  writer.begin(settings());
  writer.add_page({}, drawing);
  return writer.finish().has_value();
}

// Nothing on any output but what is expected.
void check_silent(const QString& program, const QStringList& arguments) {
  const Ran ran = run(program, arguments);
  INFO(program.toStdString() << " " << arguments.join(u' ').toStdString());
  CHECK(ran.status == 0);
  CHECK(ran.err == "");
}

}  // namespace

TEST_CASE("four independent readers find nothing wrong with the file", "[paper][pdf]") {
  const Folder folder;
  const QString file = folder.write(QStringLiteral("lids.pdf"), lids(300));
  const Ran checked = run(QStringLiteral("qpdf"), {QStringLiteral("--check"), file});
  CHECK(checked.status == 0);
  CHECK(checked.err == "");
  CHECK(checked.out.contains("No syntax or stream encoding errors found"));
  const QString picture = folder.path(QStringLiteral("page.pgm"));
  check_silent(QStringLiteral("mutool"),
               {QStringLiteral("draw"), QStringLiteral("-q"), QStringLiteral("-N"), QStringLiteral("-r"),
                QStringLiteral("36"), QStringLiteral("-o"), picture, file});
  check_silent(QStringLiteral("pdftoppm"), {QStringLiteral("-r"), QStringLiteral("36"), QStringLiteral("-gray"), file,
                                            folder.path(QStringLiteral("p"))});
  check_silent(QStringLiteral("pdftotext"), {file, folder.path(QStringLiteral("text"))});
  check_silent(QStringLiteral("gs"), {QStringLiteral("-q"), QStringLiteral("-dNOPAUSE"), QStringLiteral("-dBATCH"),
                                      QStringLiteral("-sDEVICE=nullpage"), QStringLiteral("-dPDFSTOPONERROR"), file});
}

TEST_CASE("the file states its title and language, embeds its faces and bears no date", "[paper][pdf]") {
  const Folder folder;
  const QByteArray pdf = lids(2);
  const QString file = folder.write(QStringLiteral("lids.pdf"), pdf);
  const QString about =
      QString::fromUtf8(run(QStringLiteral("pdfinfo"), {QStringLiteral("-enc"), QStringLiteral("UTF-8"), file}).out);
  CHECK(about.contains(QStringLiteral("Chilli-lime butter, Crème ½\n")));
  CHECK(about.contains(QStringLiteral("Pages:           2\n")));
  CHECK_FALSE(about.contains(QStringLiteral("Date")));
  CHECK(pdf.contains("/Lang (es-MX)"));
  const QString fonts = QString::fromUtf8(run(QStringLiteral("pdffonts"), {file}).out);
  CHECK(fonts.count(QStringLiteral("Identity-H       yes yes yes")) == 3);
}

TEST_CASE("a face that is not used is not in the file", "[paper][pdf]") {
  Drawing page;
  page.texts = {text(Weight::Bold, 10, 10, 50, QStringLiteral("HOLD"))};
  PdfWriter writer(shipped_faces());
  writer.begin(settings());
  writer.add_page({}, page);
  const problem::Expected<QByteArray> pdf = writer.finish();
  REQUIRE(pdf);
  CHECK(pdf->count("/FontFile2") == 1);
  CHECK(pdf->contains("AtkinsonHyperlegibleNext-Bold"));
  CHECK(pdf->size() < 8000);
}

TEST_CASE("a page without any drawing is a valid page", "[paper][pdf]") {
  PdfWriter writer(shipped_faces());
  writer.begin(settings());
  writer.add_page(writer.add_form({}), {});
  const problem::Expected<QByteArray> pdf = writer.finish();
  REQUIRE(pdf);
  const Folder folder;
  const QString file = folder.write(QStringLiteral("blank.pdf"), *pdf);
  check_silent(QStringLiteral("qpdf"), {QStringLiteral("--check"), file});
  check_silent(QStringLiteral("mutool"), {QStringLiteral("draw"), QStringLiteral("-q"), QStringLiteral("-N"),
                                          QStringLiteral("-o"), folder.path(QStringLiteral("page.pgm")), file});
}

TEST_CASE("what labels share is in the file once: a further label takes less than 800 bytes", "[paper][pdf]") {
  const qsizetype few = lids(100).size();
  const qsizetype more = lids(300).size();
  CHECK((more - few) / 200 < 800);
  CHECK(few > 0);
}

TEST_CASE("thousands of batches in one file each keep their own shared drawing", "[paper][pdf]") {
  PdfWriter writer(shipped_faces());
  writer.begin(settings());
  for (int batch = 1; batch <= 4500; ++batch) {
    Drawing shared;
    shared.texts = {text(Weight::Bold, 8, 10, 50, QStringLiteral("Batch %1").arg(batch))};
    const PdfWriter::Form form = writer.add_form(shared);
    if (batch % 500 == 1)
      for (int tub : {1, 2}) {
        Drawing own;
        own.texts = {text(Weight::Regular, 8, 10, 90, QStringLiteral("Tub %1").arg(tub))};
        writer.add_page(form, own);
      }
  }
  const problem::Expected<QByteArray> pdf = writer.finish();
  REQUIRE(pdf);
  const Folder folder;
  const QString file = folder.write(QStringLiteral("batches.pdf"), *pdf);
  QByteArray wanted;
  for (int batch = 1; batch <= 4500; batch += 500)
    for (int tub : {1, 2}) wanted += "Batch " + QByteArray::number(batch) + "\nTub " + QByteArray::number(tub) + "\n\f";
  const Ran ran = run(QStringLiteral("pdftotext"), {QStringLiteral("-raw"), file, QStringLiteral("-")});
  CHECK(ran.err == "");
  CHECK(ran.out == wanted);
  check_silent(QStringLiteral("qpdf"), {QStringLiteral("--check"), file});
}

TEST_CASE("the same drawings give the same bytes", "[paper][pdf]") {
  const QByteArray once = lids(40);
  CHECK(lids(40) == once);
  SECTION("from a writer that wrote another document before") {
    PdfWriter writer(shipped_faces());
    writer.begin(settings(QStringLiteral("another")));
    Drawing other;
    other.texts = {text(Weight::ExtraBold, 30, 10, 90, QStringLiteral("HOLD É"))};
    writer.add_page({}, other);
    REQUIRE(writer.finish());
    CHECK(lids(writer, 40) == once);
  }
  SECTION("from a writer whose last document was refused, and one was dropped") {
    PdfWriter writer(shipped_faces());
    writer.begin(settings());
    Drawing off;
    off.boxes = {{{399}, {0}, {2}, {1}}};
    writer.add_page({}, off);
    REQUIRE_FALSE(writer.finish());
    writer.begin(settings());
    writer.add_page({}, lid_form());
    CHECK(lids(writer, 40) == once);
  }
  SECTION("on two threads at once") {
    std::array<QByteArray, 2> pdfs;
    std::thread first([&] { pdfs[0] = lids(400); });
    std::thread second([&] { pdfs[1] = lids(400); });
    first.join();
    second.join();
    CHECK(pdfs[0] == lids(400));
    CHECK(pdfs[1] == pdfs[0]);
  }
}

TEST_CASE("40,000 pages are one file, and one more is refused", "[paper][pdf]") {
  PdfWriter writer(shipped_faces());
  writer.begin(settings());
  const PdfWriter::Form form = writer.add_form(lid_form());
  Drawing own;
  for (int n = 1; n <= PdfWriter::kMostPages; ++n) {
    own.texts = {text(Weight::Regular, 6.5, 16, 294, QStringLiteral("Tub %1").arg(n))};
    writer.add_page(form, own);
  }
  SECTION("40,000 pages") {
    const problem::Expected<QByteArray> pdf = writer.finish();
    REQUIRE(pdf);
    const Folder folder;
    const QString file = folder.write(QStringLiteral("lids.pdf"), *pdf);
    const Ran ran = run(QStringLiteral("pdftotext"), {QStringLiteral("-f"), QStringLiteral("39999"),
                                                      QStringLiteral("-raw"), file, QStringLiteral("-")});
    CHECK(ran.err == "");
    CHECK(ran.out.contains("Tub 39999\n"));
    CHECK(ran.out.contains("Tub 40000\n"));
    CHECK(ran.out.count('\f') == 2);
  }
  SECTION("40,001 pages") {
    writer.add_page(form, own);
    const problem::Expected<QByteArray> pdf = writer.finish();
    REQUIRE_FALSE(pdf);
    CHECK(problem::text(pdf.error()) ==
          QStringLiteral("40001 pages are more than the 40000 of one PDF\n  divide the run into several files"));
  }
}

TEST_CASE("a document without pages is refused", "[paper][pdf]") {
  PdfWriter writer(shipped_faces());
  writer.begin(settings());
  const problem::Expected<QByteArray> pdf = writer.finish();
  REQUIRE_FALSE(pdf);
  CHECK(pdf.error().what == QStringLiteral("a PDF needs at least one page"));
}

TEST_CASE("what does not lie wholly on the page is refused, what touches its edge is not", "[paper][pdf]") {
  const auto box = [](int x, int y, int width, int height) {
    Drawing drawing;
    drawing.boxes = {{{x}, {y}, {width}, {height}}};
    return drawing;
  };
  CHECK(is_accepted(box(0, 0, 400, 400)));
  CHECK(refusal(box(0, 0, 401, 400)).what ==
        QStringLiteral("a box of 401 by 400 dots at 0, 0 does not lie on the page of 400 by 400 dots"));
  CHECK(refusal(box(1, 390, 10, 11)).code == problem::Code::NoRoom);
  CHECK(refusal(box(-1, 0, 10, 10)).code == problem::Code::NoRoom);
  CHECK(refusal(box(10, 10, 0, 10)).code == problem::Code::NoRoom);

  const auto code = [](int x, int y, CodeImage image) {
    Drawing drawing;
    drawing.codes = {{{x}, {y}, {4}, image}};
    return drawing;
  };
  CHECK(is_accepted(code(276, 276, code_image(1, 31))));
  CHECK(refusal(code(277, 276, code_image(1, 31))).what ==
        QStringLiteral("a code of 124 dots at 277, 276 does not lie on the page of 400 by 400 dots"));
  CHECK(refusal(code(0, 0, {31, QByteArray(5, 'x')})).what ==
        QStringLiteral("a code of 31 modules has 5 bytes of rows"));

  const auto words = [](double x, double baseline, const QString& what) {
    Drawing drawing;
    drawing.texts = {text(Weight::Bold, 12, x, baseline, what)};
    return drawing;
  };
  const double width = shipped_faces().width(QStringLiteral("Égypte"), FaceId::AtkinsonBold, {12}, {203}).value;
  CHECK(is_accepted(words(400 - width, 200, QStringLiteral("Égypte"))));
  CHECK(refusal(words(400.1 - width, 200, QStringLiteral("Égypte"))).what ==
        QStringLiteral("\"Égypte\" does not lie on the page"));
  CHECK(refusal(words(-0.1, 200, QStringLiteral("Égypte"))).code == problem::Code::NoRoom);
  CHECK(is_accepted(words(0, 25, QStringLiteral("x"))));
  CHECK(refusal(words(0, 25, QStringLiteral("É"))).code == problem::Code::NoRoom);
  CHECK(is_accepted(words(0, 399, QStringLiteral("x"))));
  CHECK(refusal(words(0, 399, QStringLiteral("g"))).code == problem::Code::NoRoom);
}

TEST_CASE("a character without a glyph is refused, not printed as a box", "[paper][pdf]") {
  Drawing drawing;
  drawing.texts = {text(Weight::Regular, 10, 10, 50, QStringLiteral("2♨ cups"))};
  const problem::Error error = refusal(drawing);
  CHECK(error.code == problem::Code::NoGlyph);
  CHECK(error.what == QStringLiteral("\"2♨ cups\" has U+2668, which the label faces do not have"));
}

}  // namespace lardiner::paper
