// Bytes that are no picture, or one meant to do harm, end in a message, soon and in little memory.
#include <QElapsedTimer>

#include "hostile_files.h"
#include "scan/read_pictures.h"
#include "show.h"

using namespace lardiner;
using namespace lardiner::scan;

namespace {

// The error's whole text; "read" when there is none.
QString refusal(const QByteArray& bytes, const char* name, const Bounds& bounds = {}) {
  const auto found = read_codes(bytes, QString::fromLatin1(name), bounds);
  return found ? QStringLiteral("read") : problem::text(found.error());
}

const QString kCutShort = QStringLiteral("%1: the file ends before its end\n  copy or send it again");
const QString kUnknown = QStringLiteral(
    "%1: this is no PNG, JPEG, WebP or PDF file\n"
    "  what it is is told by its first bytes, not by its name; save it as one of these");

}  // namespace

TEST_CASE("a file cut short at any eighth is refused", "[scan][hostile][src:practice/scan]") {
  const QImage image = image_of(drawn(kAddress, 4));
  const QByteArray files[] = {file_of(image, "png"), file_of(image, "jpeg"), file_of(image, "webp"),
                              pdf({page_of(drawn(kAddress, 4), 300)})};
  for (const QByteArray& file : files) {
    CHECK(refusal(file, "tub") == QStringLiteral("read"));
    for (int eighth = 1; eighth < 8; ++eighth) {
      INFO(file.left(4).toStdString() << " " << eighth);
      CHECK(refusal(file.left(file.size() * eighth / 8), "tub") == kCutShort.arg(QStringLiteral("tub")));
    }
  }
}

TEST_CASE("an empty file is refused", "[scan][hostile][src:practice/scan]") {
  CHECK(refusal({}, "tub.png") == QStringLiteral("tub.png: the file is empty\n  give a PNG, JPEG, WebP or PDF file"));
}

TEST_CASE("random bytes are refused", "[scan][hostile][src:practice/scan]") {
  std::mt19937 random(5);
  QByteArray bytes;
  while (bytes.size() < 20'000) bytes += static_cast<char>(random() % 256);
  CHECK(refusal(bytes, "tub.png") == kUnknown.arg(QStringLiteral("tub.png")));
  const QByteArray heads[] = {"\x89PNG\r\n\x1a\n", "\xff\xd8\xff", "RIFFaaaaWEBP", "%PDF-1.4\n"};
  for (const QByteArray& head : heads) CHECK(refusal(head + bytes, "tub") == kCutShort.arg(QStringLiteral("tub")));
}

TEST_CASE("a file under a wrong name is read, text under a right one is refused",
          "[scan][hostile][src:practice/scan]") {
  CHECK(refusal(file_of(image_of(drawn(kAddress, 4)), "jpeg"), "tub.pdf") == QStringLiteral("read"));
  CHECK(refusal("Butter, 25 November", "tub.png") == kUnknown.arg(QStringLiteral("tub.png")));
}

TEST_CASE("whole files with damaged content are refused", "[scan][hostile][src:practice/scan]") {
  const QString damaged_text =
      QStringLiteral("tub: the file is damaged and cannot be read\n  copy or send it again, or take the picture again");
  CHECK(refusal(png_of_size(400, 300), "tub") == damaged_text);
  CHECK(refusal("%PDF-1.4\nnothing\n%%EOF\n", "tub") == damaged_text);
  CHECK(refusal("\xff\xd8\xff\xda" + QByteArray("\0\x02", 2) + "abc\xff\xd9", "tub") == damaged_text);
}

TEST_CASE("a picture beyond the bounds is refused before it is decoded", "[scan][hostile][src:practice/scan]") {
  CHECK(refusal(png_of_size(60'000, 60'000), "bomb.png") ==
        QStringLiteral("bomb.png: the picture has 60000 x 60000 pixels, more than 100 million in all\n"
                       "  take the picture again, or make it smaller"));
  const QByteArray file = png(white(100, 100));
  CHECK(refusal(file, "tub", {.most_pixels = 10'000}) == QStringLiteral("read"));
  CHECK(refusal(file, "tub", {.most_pixels = 9'999}) ==
        QStringLiteral("tub: the picture has 100 x 100 pixels, more than 0 million in all\n"
                       "  take the picture again, or make it smaller"));
  CHECK(refusal(file, "tub", {.most_bytes = file.size() - 1}) ==
        QStringLiteral("tub: the file has %1 bytes, more than %2\n  take the picture again, or make it smaller")
            .arg(file.size())
            .arg(file.size() - 1));
}

TEST_CASE("a JPEG that goes over its picture without end is refused", "[scan][hostile][src:practice/scan]") {
  QByteArray file = file_of(image_of(white(2000, 2000)), "jpeg");
  const qsizetype scan = file.indexOf("\xff\xda");
  const QByteArray again = file.mid(scan, file.size() - 2 - scan);
  file.chop(2);
  for (int more = 0; more < 500; ++more) file += again;
  file += "\xff\xd9";
  CHECK(refusal(file, "tub.jpg") ==
        QStringLiteral("tub.jpg: the picture is stored in 501 layers, which take too long to decode\n"
                       "  save it again as a plain JPEG or PNG"));
}

TEST_CASE("a PDF with a huge page, or one without a size, is refused", "[scan][hostile][src:practice/scan]") {
  const QString large = QStringLiteral(
      "bomb.pdf: page 1 has no size, or more than 100 million pixels at 300 dots per inch\n  print it on a usual size "
      "of paper");
  CHECK(refusal(empty_pages(1, "14400", "14400"), "bomb.pdf") == large);
  CHECK(refusal(empty_pages(1, "999999999", "999999999"), "bomb.pdf") == large);
  CHECK(refusal(empty_pages(1, "612", "792"), "page.pdf") == QStringLiteral("read"));
}

TEST_CASE("a PDF of 10,000 pages is refused", "[scan][hostile][src:practice/scan]") {
  CHECK(refusal(empty_pages(10'000, "200", "200"), "bomb.pdf") ==
        QStringLiteral("bomb.pdf: the PDF has 10000 pages, more than 500\n  divide it into smaller files"));
  CHECK(refusal(empty_pages(3, "72", "72"), "three.pdf", {.most_pages = 3}) == QStringLiteral("read"));
  CHECK(refusal(empty_pages(3, "72", "72"), "three.pdf", {.most_pages = 2}) ==
        QStringLiteral("three.pdf: the PDF has 3 pages, more than 2\n  divide it into smaller files"));
}

TEST_CASE("a PDF that opens only with a password is refused", "[scan][hostile][src:practice/scan]") {
  const QByteArray lock = "/Encrypt << /Filter /Standard /V 1 /R 2 /P -4 /O <" + QByteArray(64, '1') + "> /U <" +
                          QByteArray(64, '2') +
                          "> >> /ID [<00112233445566778899aabbccddeeff> <00112233445566778899aabbccddeeff>]";
  CHECK(refusal(pdf({page_of(drawn(kAddress, 4), 300)}, lock), "locked.pdf") ==
        QStringLiteral("locked.pdf: the PDF opens only with a password\n  save it without one"));
}

TEST_CASE("a page that shows itself over and over ends", "[scan][hostile][src:practice/scan]") {
  // A form that draws itself.
  const QByteArray file = with_table(
      {object(1, "<< /Type /Catalog /Pages 2 0 R >>"), object(2, "<< /Type /Pages /Count 1 /Kids [3 0 R] >>"),
       object(3,
              "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 200 200] /Contents 4 0 R /Resources << /XObject << /F 5 0 R "
              ">> >> >>"),
       object(4, stream("", "/F Do")),
       object(5, stream("/Type /XObject /Subtype /Form /BBox [0 0 200 200] /Resources << /XObject << /F 5 0 R >> >>",
                        "/F Do /F Do"))},
      {});
  QElapsedTimer timer;
  timer.start();
  CHECK(refusal(file, "loop.pdf") == QStringLiteral("read"));
  CHECK(timer.elapsed() < 20'000);
}
