// Codes written and read back: by this layer, and by a reader that shares nothing with it.
#include <QFile>
#include <QProcess>
#include <QTemporaryDir>
#include <algorithm>
#include <array>
#include <random>
#include <string>
#include <thread>

#include "bitmap.h"
#include "show.h"

using namespace lardiner::symbol;

namespace {

const QByteArray kAddress =
    QByteArrayLiteral("https://id.example/01/00400000000077/10/CLB261125A01M/21/A0100001?7003=2612011040");

Matrix encoded(const QByteArray& content, ErrorCorrection level = ErrorCorrection::M) {
  return encode_qr(content, level).value();
}

// The whole picture turned by a quarter.
Grey turned(const Grey& page) {
  Grey out = white(page.height, page.width);
  for (int y = 0; y < page.height; ++y)
    for (int x = 0; x < page.width; ++x)
      out.bytes[x * out.stride + page.height - 1 - y] = page.bytes[y * page.stride + x];
  return out;
}

// What zbarimg reads from the bitmap, without the line end.
QByteArray read_by_zbar(const Grey& page) {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("code.pgm"));
  QFile file(path);
  REQUIRE(file.open(QIODevice::WriteOnly));
  file.write(QStringLiteral("P5\n%1 %2\n255\n").arg(page.width).arg(page.height).toLatin1() + page.bytes);
  file.close();
  QProcess zbar;
  zbar.start(QStringLiteral("zbarimg"),
             {QStringLiteral("--quiet"), QStringLiteral("--nodbus"), QStringLiteral("--raw"), path});
  if (!zbar.waitForStarted()) FAIL("the independent reader zbarimg is not there: install zbar-tools");
  REQUIRE(zbar.waitForFinished());
  return zbar.readAllStandardOutput().trimmed();
}

// The modules of an EAN-13, 1 for dark (GS1 General Specifications, figures 5.2.1-2 and 5.2.1-5).
std::string ean13_bars(const std::string& digits) {
  const std::array<std::string, 10> kRight = {"1110010", "1100110", "1101100", "1000010", "1011100",
                                              "1001110", "1010000", "1000100", "1001000", "1110100"};
  const std::array<std::string, 10> kReversed = {"000000", "001011", "001101", "001110", "010011",
                                                 "011001", "011100", "010101", "010110", "011010"};
  const auto digit = [&](size_t at) { return static_cast<size_t>(digits[at] - '0'); };
  std::string bars = "101";
  for (size_t at = 1; at <= 6; ++at) {
    std::string pattern = kRight[digit(at)];
    if (kReversed[digit(0)][at - 1] == '1') {
      std::reverse(pattern.begin(), pattern.end());
    } else {
      for (char& module : pattern) module = module == '1' ? '0' : '1';
    }
    bars += pattern;
  }
  bars += "01010";
  for (size_t at = 7; at <= 12; ++at) bars += kRight[digit(at)];
  return bars + "101";
}

}  // namespace

TEST_CASE("what is written is read, at every level and size", "[symbol][loop][src:iso-18004/7]") {
  for (const ErrorCorrection level : {ErrorCorrection::L, ErrorCorrection::M, ErrorCorrection::Q, ErrorCorrection::H})
    for (const int dots : {2, 3, 4, 7}) {
      const std::vector<Found> codes = read_codes(drawn(encoded(kAddress, level), dots));
      REQUIRE(codes.size() == 1);
      CHECK(codes[0].text == QString::fromLatin1(kAddress));
      CHECK(codes[0].bytes == kAddress);
      CHECK(codes[0].format == QStringLiteral("QRCode"));
    }
}

TEST_CASE("every byte is kept as it is", "[symbol][loop][src:iso-18004/7]") {
  QByteArray all;
  for (int byte = 0; byte < 256; ++byte) all += static_cast<char>(byte);
  for (const QByteArray& content :
       {all, QByteArrayLiteral("jalape\xc3\xb1o \xe2\x82\xac"), QByteArrayLiteral("\x80\x9f")}) {
    const std::vector<Found> codes = read_codes(drawn(encoded(content), 3));
    REQUIRE(codes.size() == 1);
    CHECK(codes[0].bytes == content);
  }
}

TEST_CASE("text of every length is read", "[symbol][loop][src:iso-18004/7]") {
  std::mt19937 random(18004);
  std::uniform_int_distribution<int> letter('!', '~');
  for (int length = 1; length <= 300; length += 7) {
    QByteArray content;
    while (content.size() < length) content += static_cast<char>(letter(random));
    INFO(content.toStdString());
    const std::vector<Found> codes = read_codes(drawn(encoded(content), 3));
    REQUIRE(codes.size() == 1);
    REQUIRE(codes[0].bytes == content);
  }
}

TEST_CASE("an independent reader reads the same", "[symbol][loop][src:iso-18004/7]") {
  CHECK(read_by_zbar(drawn(encoded(kAddress), 4)) == kAddress);
  CHECK(read_by_zbar(drawn(encoded(kAddress, ErrorCorrection::H), 3)) == kAddress);
  CHECK(read_by_zbar(drawn(encoded(QByteArrayLiteral("01234567")), 5)) == QByteArrayLiteral("01234567"));
  CHECK(read_by_zbar(white(200, 200)).isEmpty());
}

TEST_CASE("all codes of a page are found, from the top and then from the left", "[symbol][read][src:practice/loop]") {
  Grey page = white(600, 500);
  draw(page, encoded(QByteArrayLiteral("third")), 40, 300, 4);
  draw(page, encoded(QByteArrayLiteral("second")), 300, 40, 5);
  draw(page, encoded(QByteArrayLiteral("first")), 40, 40, 4);
  const std::vector<Found> codes = read_codes(page);
  REQUIRE(codes.size() == 3);
  CHECK(codes[0].text == QStringLiteral("first"));
  CHECK(codes[1].text == QStringLiteral("second"));
  CHECK(codes[2].text == QStringLiteral("third"));
  CHECK((codes[1].corners[0] - QPoint(300, 40)).manhattanLength() <= 4);
  CHECK((codes[1].corners[2] - QPoint(404, 144)).manhattanLength() <= 4);
}

TEST_CASE("a turned code is read, and its first corner is its own top left", "[symbol][read][src:practice/loop]") {
  Grey page = drawn(encoded(kAddress), 4);
  for (int quarter = 0; quarter < 4; ++quarter, page = turned(page)) {
    const std::vector<Found> codes = read_codes(page);
    REQUIRE(codes.size() == 1);
    CHECK(codes[0].bytes == kAddress);
    const QPoint corner = codes[0].corners[0];
    CHECK((corner.x() > page.width / 2) == (quarter == 1 || quarter == 2));
    CHECK((corner.y() > page.height / 2) == (quarter == 2 || quarter == 3));
  }
}

TEST_CASE("rows with bytes to spare are read", "[symbol][read][src:practice/loop]") {
  const Grey tight = drawn(encoded(kAddress), 3);
  Grey loose{tight.width, tight.height, tight.width + 13, {}};
  for (int y = 0; y < tight.height; ++y)
    loose.bytes += tight.bytes.mid(y * tight.stride, tight.width) + QByteArray(13, '\0');
  REQUIRE(read_codes(loose).size() == 1);
}

TEST_CASE("an empty page and a code without its finder give nothing", "[symbol][read][src:practice/loop]") {
  CHECK(read_codes(white(1, 1)).empty());
  CHECK(read_codes(white(300, 200)).empty());
  Grey page = drawn(encoded(kAddress), 4);
  blacken(page, 0, 0, 100, page.height);
  CHECK(read_codes(page).empty());
}

TEST_CASE("a lost corner of a fifteenth is corrected, half of the code is not", "[symbol][read][src:iso-18004/7]") {
  const Matrix code = encoded(kAddress, ErrorCorrection::Q);
  Grey page = drawn(code, 4);
  blacken(page, page.width - (kQuietZone + 11) * 4, page.height - (kQuietZone + 5) * 4, 11 * 4, 5 * 4);
  REQUIRE(read_codes(page).size() == 1);
  CHECK(read_codes(page)[0].bytes == kAddress);
  blacken(page, page.width / 2, page.height / 3, page.width / 3, page.height / 2);
  CHECK(read_codes(page).empty());
}

TEST_CASE("a supplier's EAN-13 is read", "[symbol][read][src:gs1-genspecs/5.2]") {
  Grey page = white(113 * 3, 120);
  const std::string bars = ean13_bars("9520123456788");
  for (size_t at = 0; at < bars.size(); ++at)
    if (bars[at] == '1') blacken(page, 3 * (11 + static_cast<int>(at)), 10, 3, 100);
  const std::vector<Found> codes = read_codes(page);
  REQUIRE(codes.size() == 1);
  CHECK(codes[0].text == QStringLiteral("9520123456788"));
  CHECK(codes[0].format == QStringLiteral("EAN-13"));
}

TEST_CASE("threads encode at once and get the same codes", "[symbol][qr][src:practice/loop]") {
  const Matrix wanted = encoded(kAddress);
  std::vector<int> same(4, 0);
  std::vector<std::thread> threads;
  for (size_t at = 0; at < same.size(); ++at)
    threads.emplace_back([&, at] {
      for (int run = 0; run < 50; ++run) same[at] += encoded(kAddress) == wanted ? 1 : 0;
    });
  for (std::thread& thread : threads) thread.join();
  CHECK(same == std::vector<int>(4, 50));
}

TEST_CASE("a matrix is rows of whole bytes with light padding", "[symbol][qr][src:practice/loop]") {
  const Matrix code = encoded(QByteArrayLiteral("a"));
  CHECK(code.size == 21);
  CHECK(code.stride() == 3);
  CHECK(code.bits.size() == 63);
  for (int row = 0; row < 21; ++row) CHECK((code.bits[static_cast<size_t>(row * 3 + 2)] & 7) == 0);
  CHECK(code.bits[0] == 0b11111110);  // the finder's upper edge and its separator
  CHECK(code.dark(0, 0));
  CHECK_FALSE(code.dark(7, 0));
}

TEST_CASE("ink is dark by what is said to be dark", "[symbol][read][src:practice/loop]") {
  const Grey page = drawn(encoded(kAddress), 3);
  for (const Threshold threshold : {Threshold::Neighbourhood, Threshold::Picture, Threshold::Middle})
    CHECK(read_codes(page, {threshold, Kinds::Square}).size() == 1);
  Grey pale = page;
  for (char& tone : pale.bytes) tone = tone == '\0' ? '\xa0' : '\xff';
  CHECK(read_codes(pale, {Threshold::Picture, Kinds::Square}).size() == 1);
  CHECK(read_codes(pale, {Threshold::Middle, Kinds::Square}).empty());
}

TEST_CASE("square codes alone are read where only these are asked for", "[symbol][read][src:practice/loop]") {
  Grey page = white(113 * 3, 120);
  const std::string bars = ean13_bars("9520123456788");
  for (size_t at = 0; at < bars.size(); ++at)
    if (bars[at] == '1') blacken(page, 3 * (11 + static_cast<int>(at)), 10, 3, 100);
  CHECK(read_codes(page, {Threshold::Neighbourhood, Kinds::All}).size() == 1);
  CHECK(read_codes(page, {Threshold::Neighbourhood, Kinds::Square}).empty());
}
