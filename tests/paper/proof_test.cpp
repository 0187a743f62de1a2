// The proof shows every label and says what was really chosen: figures recomputed here from the layout.
#include "paper/proof.h"

#include <QXmlStreamReader>

#include "label_runs.h"
#include "paper/proof_table.h"

using namespace lardiner;
using namespace lardiner::paper;

namespace {

CodeImage code_of(const QByteArray& uri) {
  const auto matrix = symbol::encode_qr(uri, symbol::strongest_correction(uri));
  REQUIRE(matrix);
  return {matrix->size,
          QByteArray(reinterpret_cast<const char*>(matrix->bits.data()), static_cast<qsizetype>(matrix->bits.size()))};
}

struct Proofed {
  facts::LabelRun run;
  LabelLayout layout;
  QString page;
};

Proofed proofed(unsigned seed, const book::Media& on) {
  Chance chance(seed);
  for (int round = 0; round < 50; ++round) {
    Proofed out{chance.run(book::Purpose::Inside, false), {}, {}};
    const auto layout = lay_out(out.run, template_of(out.run), on, shipped_faces());
    if (!layout || out.run.containers.size() < 2) continue;
    out.layout = *layout;
    Proof proof(shipped_faces(), on, QStringLiteral("Test Lane & Sons: proof of lid.pdf"));
    proof.add_run(out.run.title, out.layout);
    for (const auto& container : out.run.containers)
      proof.add_label(own_drawing(out.layout, container, code_of(container.uri), shipped_faces()));
    const auto bytes = proof.finish();
    REQUIRE(bytes);
    out.page = QString::fromUtf8(*bytes);
    return out;
  }
  FAIL("no run by chance fits");
  return {};
}

// How often an element with this attribute stands in the page, which must be well-formed.
int elements(const QString& page, const QString& name, const QString& attribute) {
  QXmlStreamReader xml(page);
  int count = 0;
  while (!xml.atEnd()) {
    xml.readNext();
    count += xml.isStartElement() && xml.name() == name && xml.attributes().hasAttribute(attribute);
  }
  INFO(xml.errorString().toStdString());
  REQUIRE_FALSE(xml.hasError());
  return count;
}

}  // namespace

TEST_CASE("a proof shows every label of the run as a picture", "[paper][proof]") {
  const Proofed one = proofed(3, medium(10000, 5000));
  CHECK(elements(one.page, QStringLiteral("svg"), QStringLiteral("aria-label")) ==
        static_cast<int>(one.run.containers.size()));
  CHECK(one.page.contains(QStringLiteral("<h1>Test Lane &amp; Sons: proof of lid.pdf</h1>")));
  CHECK(one.page.contains(one.run.title.toHtmlEscaped()));
}

TEST_CASE("a proof says each size of type in points, millimetres and dots of the printer", "[paper][proof]") {
  const Proofed one = proofed(3, medium(10000, 5000));
  const auto sizes = type_sizes(shipped_faces(), one.layout.shared, one.layout.size.resolution);
  REQUIRE(sizes.size() > 2);
  for (const TypeSize& size : sizes) {
    // A point is 1/72 inch, an inch 25.4 mm and 203 dots.
    const double points = size.size.value;
    const QString cells = QStringLiteral("<td class=\"n\">%1</td><td class=\"n\">%2</td><td class=\"n\">%3</td>")
                              .arg(QString::number(points, 'f', 2), QString::number(points * 25.4 / 72, 'f', 2),
                                   QString::number(points * 203 / 72, 'f', 1));
    INFO(cells.toStdString());
    CHECK(one.page.contains(cells));
  }
}

TEST_CASE("a proof says the code's version, module and quiet zone", "[paper][proof][src:iso-18004]") {
  const Proofed one = proofed(3, medium(10000, 5000));
  const CodeImage code = code_of(one.run.containers.front().uri);
  const int version = (code.modules - 17) / 4, dots = one.layout.code->module.value;
  const QString said = QStringLiteral("QR version %1, %2 × %2 modules of %3 dots (%4 mm)")
                           .arg(version)
                           .arg(code.modules)
                           .arg(dots)
                           .arg(QString::number(dots * 25.4 / 203, 'f', 3));
  INFO(said.toStdString());
  CHECK(one.page.contains(said));
}

TEST_CASE("the quiet zone of a proof is measured to the nearest ink or edge", "[paper][proof]") {
  const PageSize page{{300}, {300}, {203}};
  Drawing drawing;
  drawing.codes = {{{100}, {100}, {3}, code_of("https://tl.test/01/00401000000015")}};
  const int side = 3 * drawing.codes.front().image.modules;
  const auto free = [&] { return code_figures(shipped_faces(), drawing, page)->quiet_zone; };
  CHECK(free() == Approx(std::min(100, 300 - 100 - side) / 3.0));
  drawing.boxes = {{{0}, {70}, {300}, {15}, Ink::Black}};
  CHECK(free() == Approx(5));
  drawing.texts = {{FaceId::AtkinsonRegular, Points{10}, FineDots{110}, FineDots{97}, QStringLiteral("x"), Ink::Black}};
  CHECK(free() == Approx(1).margin(0.2));  // an x may reach a little below its line
  CHECK_FALSE(code_figures(shipped_faces(), {}, page));
}

TEST_CASE("a proof says what gave way, and that nothing did where nothing had to", "[paper][proof]") {
  CHECK(proofed(3, medium(20000, 20000)).page.contains(QStringLiteral("<p>Gave way: nothing</p>")));
  int gave_way = 0;
  for (unsigned seed = 1; seed < 12; ++seed) {
    const Proofed tight = proofed(seed, medium(5000, 5000));
    for (const BlockSize& block : tight.layout.blocks)
      if (block.is_shrunk()) {
        const QString said =
            QStringLiteral("%1 pt instead of %2")
                .arg(QString::number(block.size.value, 'f', 2), QString::number(block.preferred.value, 'f', 2));
        INFO(said.toStdString());
        CHECK(tight.page.contains(said));
        ++gave_way;
      }
  }
  CHECK(gave_way > 0);
}
