// All codes of all pages of a PDF, and forty codes in one picture.
#include <set>

#include "pdfs.h"
#include "scan/read_pictures.h"
#include "show.h"

using namespace lardiner::scan;
namespace symbol = lardiner::symbol;

namespace {

Codes read(const QByteArray& bytes) { return read_codes(bytes, QStringLiteral("sheet.pdf"), Bounds{}).value(); }

QByteArray content(int label) { return kAddress + QByteArray::number(label); }

// A sheet of labels at 300 dots per inch, five across.
symbol::Grey sheet(int labels) {
  constexpr int kAcross = 5, kPitch = 300, kPixels = 5;
  symbol::Grey page = white(kAcross * kPitch, (labels + kAcross - 1) / kAcross * kPitch);
  for (int label = 0; label < labels; ++label)
    draw(page, content(label), label % kAcross * kPitch + 40, label / kAcross * kPitch + 40, kPixels);
  return page;
}

std::set<QString> texts(const Codes& found) {
  std::set<QString> all;
  for (const Code& code : found.codes) all.insert(code.text);
  return all;
}

}  // namespace

TEST_CASE("a picture with forty labels gives forty answers", "[scan][pages][src:practice/scan]") {
  const Codes found = read(png(sheet(40)));
  CHECK(found.codes.size() == 40);
  CHECK(texts(found).size() == 40);
  for (size_t at = 0; at < found.codes.size(); ++at)
    CHECK(found.codes[at].text == QString::fromLatin1(content(int(at))));
}

TEST_CASE("damaged labels beside good ones are read too", "[scan][pages][src:practice/scan]") {
  symbol::Grey page = sheet(20);
  const symbol::Grey hard = damaged({.pixels = 5, .dark = 150, .light = 175, .noise = 6});
  const int left = 2 * 300, top = 2 * 300;
  for (int y = 0; y < std::min(300, hard.height); ++y)
    for (int x = 0; x < std::min(300, hard.width); ++x) row(page, top + y)[left + x] = row(hard, y)[x];
  const Codes found = read(png(page));
  CHECK(found.codes.size() == 20);
  CHECK(texts(found).count(QString::fromLatin1(kAddress)) == 1);
}

TEST_CASE("two labels with the same content are two answers", "[scan][pages][src:practice/scan]") {
  symbol::Grey page = white(800, 400);
  draw(page, kAddress, 60, 60, 5);
  draw(page, kAddress, 460, 100, 5);
  CHECK(read(png(page)).codes.size() == 2);
}

TEST_CASE("all pages of a PDF are read, and each code says its page and place", "[scan][pages][src:practice/scan]") {
  const Codes found =
      read(pdf({page_of(sheet(7), 300), page_of(white(600, 600), 300), page_of(drawn(kAddress, 6), 300)}));
  CHECK(found.pages == 3);
  REQUIRE(found.codes.size() == 8);
  for (size_t at = 0; at < 7; ++at) {
    CHECK(found.codes[at].page == 1);
    CHECK(found.codes[at].text == QString::fromLatin1(content(int(at))));
  }
  CHECK(found.codes[7].page == 3);
  CHECK((found.codes[7].corners[0] - QPoint(48, 48)).manhattanLength() <= 6);
  CHECK(found.stopped.isEmpty());
}

TEST_CASE("a code too fine for 300 dots per inch is read at 600", "[scan][pages][src:practice/scan]") {
  const Codes found = read(pdf({page_of(drawn(kAddress, 4), 1200)}));
  REQUIRE(found.codes.size() == 1);
  CHECK(found.codes[0].text == QString::fromLatin1(kAddress));
  CHECK(found.codes[0].pass == QStringLiteral("600 dots per inch"));
  CHECK((found.codes[0].corners[0] - QPoint(8, 8)).manhattanLength() <= 4);
}

TEST_CASE("a PDF without a code is no error", "[scan][pages][src:practice/scan]") {
  const Codes found = read(empty_pages(2, "200", "300"));
  CHECK(found.pages == 2);
  CHECK(found.codes.empty());
}

TEST_CASE("when time is up, what was not read is said", "[scan][pages][src:practice/scan]") {
  const auto found = read_codes(pdf({page_of(sheet(5), 300)}), QStringLiteral("sheet.pdf"), Bounds{.seconds = 0});
  REQUIRE(found);
  CHECK(found->codes.empty());
  CHECK(found->stopped == QStringLiteral("0 seconds were not enough beyond page 0"));
}
