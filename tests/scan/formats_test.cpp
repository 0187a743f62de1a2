// Every kind of picture file, of any depth, gives its codes.
#include <QtEndian>

#include "pictures.h"
#include "scan/file_kind.h"
#include "scan/read_pictures.h"
#include "show.h"

using namespace lardiner::scan;
namespace symbol = lardiner::symbol;

namespace {

const QString kName = QStringLiteral("tub.png");

Codes read(const QByteArray& bytes) { return read_codes(bytes, kName, Bounds{}).value(); }

void check_reads_address(const QByteArray& bytes) {
  const Codes found = read(bytes);
  REQUIRE(found.codes.size() == 1);
  CHECK(found.codes[0].text == QString::fromLatin1(kAddress));
  CHECK(found.codes[0].format == QStringLiteral("QRCode"));
  CHECK(found.codes[0].page == 1);
  CHECK(found.codes[0].pass == QStringLiteral("plain"));
  CHECK(found.stopped.isEmpty());
}

// The JPEG with an EXIF entry that says how the camera was held (Exif 2.3, tag 0x0112).
QByteArray with_orientation(QByteArray jpeg, char orientation) {
  QByteArray exif("Exif\0\0MM\0\x2a\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0", 25);
  exif += orientation;
  exif += QByteArray(6, '\0');
  QByteArray length(2, '\0');
  qToBigEndian<quint16>(static_cast<quint16>(exif.size() + 2), length.data());
  return jpeg.insert(2, "\xff\xe1" + length + exif);
}

}  // namespace

TEST_CASE("a file is told by its first bytes", "[scan][formats][src:practice/scan]") {
  const QImage image = image_of(drawn(kAddress, 4));
  CHECK(kind_of(file_of(image, "png")) == FileKind::Png);
  CHECK(kind_of(file_of(image, "jpeg")) == FileKind::Jpeg);
  CHECK(kind_of(file_of(image, "webp")) == FileKind::WebP);
  CHECK(kind_of("%PDF-1.7\n") == FileKind::Pdf);
  CHECK(kind_of(file_of(image, "bmp")) == FileKind::Other);
  CHECK(kind_of({}) == FileKind::Other);
}

TEST_CASE("PNG, JPEG and WebP are read, whatever the name says", "[scan][formats][src:practice/scan]") {
  const QImage image = image_of(drawn(kAddress, 4));
  for (const char* format : {"png", "jpeg", "webp"}) {
    INFO(format);
    check_reads_address(file_of(image, format));
  }
}

TEST_CASE("every depth and colour becomes grey", "[scan][formats][src:practice/scan]") {
  const QImage image = image_of(drawn(kAddress, 4));
  for (const QImage::Format format : {QImage::Format_Mono, QImage::Format_Indexed8, QImage::Format_Grayscale8,
                                      QImage::Format_RGB32, QImage::Format_Grayscale16, QImage::Format_RGBA64}) {
    INFO(int(format));
    check_reads_address(file_of(image.convertToFormat(format), "png"));
  }
}

TEST_CASE("what is transparent lies over white", "[scan][formats][src:practice/scan]") {
  const symbol::Grey code = drawn(kAddress, 4);
  QImage image(code.width, code.height, QImage::Format_ARGB32);
  for (int y = 0; y < code.height; ++y)
    for (int x = 0; x < code.width; ++x)
      image.setPixel(x, y, row(code, y)[x] == 0 ? qRgba(0, 0, 0, 255) : qRgba(0, 0, 0, 0));
  check_reads_address(file_of(image, "png"));
  check_reads_address(file_of(image, "webp", 100));
}

TEST_CASE("a picture is turned upright as its camera says", "[scan][formats][src:practice/scan]") {
  symbol::Grey page = white(800, 400);
  draw(page, kAddress, 40, 40, 5);
  const QByteArray jpeg = file_of(image_of(page), "jpeg");
  const Codes as_stored = read(jpeg), turned = read(with_orientation(jpeg, 6));
  REQUIRE(as_stored.codes.size() == 1);
  REQUIRE(turned.codes.size() == 1);
  CHECK((as_stored.codes[0].corners[0] - QPoint(40, 40)).manhattanLength() <= 6);
  CHECK((turned.codes[0].corners[0] - QPoint(400 - 40, 40)).manhattanLength() <= 6);  // a quarter to the right
}

TEST_CASE("a supplier's EAN-13 is told as what it is", "[scan][formats][src:gs1-genspecs/5.2]") {
  // 9520123456788, modules from the left guard to the right one.
  const QByteArray bars(
      "10101100010011011010011100110010011011011110101010101110010011101010000100010010010001001000101");
  symbol::Grey page = white(113 * 3, 120);
  for (int at = 0; at < bars.size(); ++at)
    for (int y = 10; bars[at] == '1' && y < 110; ++y) std::fill_n(row(page, y) + 3 * (11 + at), 3, quint8{0});
  const Codes found = read(png(page));
  REQUIRE(found.codes.size() == 1);
  CHECK(found.codes[0].text == QStringLiteral("9520123456788"));
  CHECK(found.codes[0].format == QStringLiteral("EAN-13"));
}

TEST_CASE("a picture without a code is no error", "[scan][formats][src:practice/scan]") {
  const Codes found = read(png(white(400, 300)));
  CHECK(found.codes.empty());
  CHECK(found.pages == 1);
  CHECK(found.stopped.isEmpty());
}
